using System.Text.Json;
using CoopLessons.Core.Requirements;

namespace CoopLessons.Core.Tests.Requirements;

public sealed class A_set_of_grades
{
    [Theory]
    [InlineData("K", "0")]
    [InlineData("12", "12")]
    [InlineData("K-6", "0 1 2 3 4 5 6")]
    [InlineData("7-12", "7 8 9 10 11 12")]
    [InlineData("3,5,8", "3 5 8")]
    [InlineData("1-3,9", "1 2 3 9")]
    [InlineData("K,2-2", "0 2")]
    public void Holds_both_ends_of_each_span_and_nothing_else(string text, string grades) =>
        Assert.Equal(grades, string.Join(' ', Enumerable.Range(-2, 20).Where(Grades.Parse(text).Hold)));

    [Theory]
    [InlineData("")]
    [InlineData("13")]
    [InlineData("0")]
    [InlineData("k")]
    [InlineData("6-K")]
    [InlineData("8-3")]
    [InlineData("1-2-3")]
    [InlineData("1,,2")]
    [InlineData("1, 2")]
    [InlineData("+1")]
    [InlineData("-3")]
    public void Is_not_read_from_anything_else(string text) => Assert.Throws<FormatException>(() => Grades.Parse(text));

    [Fact]
    public void Is_written_as_it_was_read_and_equal_by_its_text()
    {
        Assert.Equal("K-6", Grades.Parse("K-6").ToString());
        Assert.Equal(Grades.Parse("K-6"), Grades.Parse("K-6"));
        Assert.Equal(Grades.Parse("K-6").GetHashCode(), Grades.Parse("K-6").GetHashCode());
        Assert.NotEqual(Grades.Parse("1,2"), Grades.Parse("1-2"));
    }

    [Fact]
    public void Stands_in_a_file_as_text_and_a_fault_in_it_is_the_files()
    {
        Assert.Equal("\"3,5,8\"", JsonSerializer.Serialize(Grades.Parse("3,5,8"), Catalog.Json));
        Assert.Equal(Grades.Parse("K-2"), JsonSerializer.Deserialize<Grades>("\"K-2\"", Catalog.Json));
        Assert.Throws<JsonException>(() => JsonSerializer.Deserialize<Grades>("\"2-K\"", Catalog.Json));
        Assert.ThrowsAny<JsonException>(() => JsonSerializer.Deserialize<Grades>("7", Catalog.Json));
    }
}
