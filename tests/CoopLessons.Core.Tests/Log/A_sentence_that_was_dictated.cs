using CoopLessons.Core.Log;

namespace CoopLessons.Core.Tests.Log;

public class A_sentence_that_was_dictated
{
    private static readonly (Guid Id, string Name)[] s_children =
        [(new Guid(1, 0, 0, new byte[8]), "Heron"), (new Guid(2, 0, 0, new byte[8]), "Linnet"), (new Guid(3, 0, 0, new byte[8]), "Mary Finch")];

    [Theory]
    [InlineData("forty minutes baking bread with Linnet", 40, "Linnet", "baking bread")]
    [InlineData("baked bread 40 min with Linnet", 40, "Linnet", "baked bread")]
    [InlineData("baked bread, 40min, Heron and Linnet", 40, "Heron, Linnet", "baked bread")]
    [InlineData("half an hour of spelling", 30, "", "of spelling")]
    [InlineData("a half hour of spelling", 30, "", "of spelling")]
    [InlineData("an hour and a half at the mill", 90, "", "at the mill")]
    [InlineData("two and a half hours at the mill", 150, "", "at the mill")]
    [InlineData("one and a half hours at the mill", 90, "", "at the mill")]
    [InlineData("a quarter of an hour piano", 15, "", "piano")]
    [InlineData("three quarters of an hour piano", 45, "", "piano")]
    [InlineData("an hour and a quarter piano", 75, "", "piano")]
    [InlineData("an hour and twenty-five minutes piano", 85, "", "piano")]
    [InlineData("1 h 30 piano", 90, "", "piano")]
    [InlineData("1h30 piano", 90, "", "piano")]
    [InlineData("2h piano", 120, "", "piano")]
    [InlineData("1.5 hours piano", 90, "", "piano")]
    [InlineData("1,25 hours piano", 75, "", "piano")]
    [InlineData("ninety minutes with MARY finch in the garden", 90, "Mary Finch", "in the garden")]
    [InlineData("nineteen minutes reading for Héron", 19, "Heron", "reading")]
    [InlineData("one minute", 1, "", "")]
    public void Gives_its_length_and_its_children(string said, int minutes, string names, string rest)
    {
        var heard = SaidEntry.Of(said, s_children);
        Assert.Equal(minutes, heard.Minutes);
        Assert.Equal(names, string.Join(", ", s_children.Where(c => heard.Learners.Contains(c.Id)).Select(c => c.Name)));
        Assert.Equal(rest, string.Join(' ', heard.Rest));
    }

    [Theory]
    [InlineData("chapter 40 of the mill book", "chapter 40 of the mill book")]
    [InlineData("counted one hundred beans", "counted one hundred beans")]
    [InlineData("saw two herons", "saw two herons")]
    [InlineData("0 minutes", "0 minutes")]
    [InlineData("1441 minutes", "1441 minutes")]
    [InlineData("30 hours", "30 hours")]
    [InlineData("1.33 hours of rain", "1.33 hours of rain")]
    [InlineData("read with and for", "read with and for")]
    [InlineData("", "")]
    public void Is_left_alone_where_no_length_is_meant(string said, string rest)
    {
        var heard = SaidEntry.Of(said, s_children);
        Assert.False(heard.UnderstoodAnything);
        Assert.Equal(rest, string.Join(' ', heard.Rest));
    }

    [Fact]
    public void Does_not_choose_between_two_lengths()
    {
        var heard = SaidEntry.Of("twenty minutes reading and 10 min drawing", s_children);
        Assert.Null(heard.Minutes);
        Assert.Equal([20, 10], heard.Lengths);
        Assert.Equal(["reading", "drawing"], heard.Rest);
    }

    [Fact]
    public void Takes_minutes_behind_hours_only_where_they_belong_to_them()
    {
        Assert.Equal(120, SaidEntry.Of("2 hours, 3 birds seen", s_children).Minutes);
        Assert.Equal(["3", "birds", "seen"], SaidEntry.Of("2 hours, 3 birds seen", s_children).Rest);
    }
}
