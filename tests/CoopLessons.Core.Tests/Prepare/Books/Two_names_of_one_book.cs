using CoopLessons.Core.Calendar;
using CoopLessons.Core.Prepare.Books;

namespace CoopLessons.Core.Tests.Prepare.Books;

public class Two_names_of_one_book
{
    [Theory]
    [InlineData("The Miller's Long Afternoon", "millers long afternoon")]
    [InlineData("  A  Loaf’s Long Road! ", "loafs long road")]
    [InlineData("Élan at the Weir", "élan at the weir")]
    [InlineData("A", "a")]
    [InlineData("The", "the")]
    [InlineData("???", "???")]
    public void Are_held_against_each_other_in_plain_letters(string title, string plain) => Assert.Equal(plain, PlainTitle.Of(title));

    [Theory]
    [InlineData("The Weir", "", "", "Weir", "Iris Alder", "", true)]
    [InlineData("The Weir", "Iris Alder", "", "Weir", "iris alder", "9780110002224", true)]
    [InlineData("The Weir", "Iris Alder", "", "Weir", "Olive Birch", "", false)]
    [InlineData("The Weir", "", "9780110002224", "Old Weirs", "", "9780110002224", true)]
    [InlineData("The Weir", "", "9780110002224", "The Weir", "", "9780843610727", false)]
    [InlineData("The Weir", "", "", "The Race", "", "", false)]
    public void Are_the_same_by_number_or_by_title_and_author(string title, string author, string isbn, string other, string another, string number, bool same)
    {
        Assert.Equal(same, PlainTitle.Same((title, author, isbn), (other, another, number)));
        Assert.Equal(same, PlainTitle.Same((other, another, number), (title, author, isbn)));
    }

    [Theory]
    [InlineData("2025-06-30", "2025-07-01", true)]
    [InlineData("2025-06-01", "2025-06-30", false)]
    [InlineData("2026-06-30", null, true)]
    [InlineData("2026-07-01", null, false)]
    [InlineData("2025-01-01", null, true)]
    public void Stand_on_the_list_of_a_year_that_they_touch(string begun, string? ended, bool holds) => Assert.Equal(holds, ReadingList.Holds(
        new DayRange(new(2025, 7, 1), new(2026, 6, 30)), DateOnly.Parse(begun, null), ended is null ? null : DateOnly.Parse(ended, null)));
}
