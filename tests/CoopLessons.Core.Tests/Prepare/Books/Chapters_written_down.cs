using CoopLessons.Core.Prepare.Books;
using CsCheck;

namespace CoopLessons.Core.Tests.Prepare.Books;

public class Chapters_written_down
{
    private static readonly string[] Names = ["", "The weir", "Part 2"];

    private static IReadOnlyList<BookChapter> Read(string text)
    {
        Assert.True(ChapterText.TryRead(text, out var chapters, out var fault), fault);
        return chapters;
    }

    [Fact]
    public void As_numbers_are_so_many_chapters() => Assert.Equal(
        [new("", 120), new("", 140), new("", 90), new("", 125)], Read("12 14, 9\n\n12.5"));

    [Fact]
    public void By_name_have_their_length_behind_it() => Assert.Equal(
        [new("The mill wheel", 140), new("Part 2: The weir", 80), new("1812", 70)], Read("The mill wheel 14\nPart 2: The weir:  8\n1812: 7"));

    [Fact]
    public void As_a_number_of_equal_ones_are_that_many() => Assert.Equal([new("", 100), new("", 100), new("", 100)], Read("3 x 10"));

    [Fact]
    public void Of_nothing_are_none() => Assert.Empty(Read(" \n "));

    [Theory]
    [InlineData("12\nThe weir", "Line 2: write the pages or minutes behind the name")]
    [InlineData("The weir 0", "“0” is no length")]
    [InlineData("12 1000", "“1000” is no length")]
    [InlineData("12.55", "“12.55” is no length")]
    [InlineData("1.2.3", "“1.2.3” is no length")]
    [InlineData("0 x 10", "from 1 to 200")]
    [InlineData("201 x 10", "from 1 to 200")]
    [InlineData("101 x 1\n100 x 1", "at most 200 chapters here; these are 201")]
    public void That_cannot_be_read_say_in_which_line(string text, string why)
    {
        Assert.False(ChapterText.TryRead(text, out var chapters, out var fault));
        Assert.Empty(chapters);
        Assert.Contains(why, fault, StringComparison.Ordinal);
    }

    [Fact]
    public void With_too_long_a_name_are_not_taken()
    {
        Assert.False(ChapterText.TryRead(new string('n', 81) + " 4", out _, out var fault));
        Assert.Contains("at most 80 signs", fault, StringComparison.Ordinal);
    }

    [Fact]
    public void Are_read_again_as_they_were_written() => Gen.Select(Gen.Int[1, 9990], Gen.Int[0, 2].Select(i => Names[i])).Select((t, n) => new BookChapter(n, t)).Array[0, 60].Sample(chapters =>
        Assert.Equal(chapters, Read(ChapterText.Of(chapters))), iter: 200);

    [Theory]
    [InlineData(new int[] { }, "")]
    [InlineData(new[] { 7 }, "chapter 7")]
    [InlineData(new[] { 9, 7, 8 }, "chapters 7–9")]
    [InlineData(new[] { 1, 2, 3, 7 }, "chapters 1–3, 7")]
    [InlineData(new[] { 2, 4 }, "chapters 2, 4")]
    public void Are_told_in_runs(int[] numbers, string told) => Assert.Equal(told, LengthWords.Chapters(numbers));
}
