using CoopLessons.Documents.Reports;
using Xunit;

namespace CoopLessons.Web.Tests.Documents;

public class Text_on_its_way_into_a_spreadsheet
{
    // Source of the signs: OWASP community page "CSV Injection" (from memory): = + - @, tab, carriage return, line feed
    // and the full-width forms.
    [Theory]
    [InlineData("=1+1", "'=1+1")]
    [InlineData("+", "'+")]
    [InlineData("-2", "'-2")]
    [InlineData("@SUM(A1)", "'@SUM(A1)")]
    [InlineData("\t=1", "' =1")]
    [InlineData("\rmill", "'\nmill")]
    [InlineData("\nmill", "'\nmill")]
    [InlineData("\uFF1D1", "'\uFF1D1")]
    [InlineData("\uFF0B1", "'\uFF0B1")]
    [InlineData("\uFF0D1", "'\uFF0D1")]
    [InlineData("\uFF20A", "'\uFF20A")]
    [InlineData("  =1", "'  =1")]
    [InlineData("\u0000=1", "'=1")]
    [InlineData("\u202E=1", "'\u202E=1")]
    public void What_begins_like_a_formula_gets_an_apostrophe(string written, string guarded) =>
        Assert.Equal(guarded, SpreadsheetText.Guarded(written));

    [Theory]
    [InlineData("Reading")]
    [InlineData("1+1=2")]
    [InlineData("From Grain to Loaf, part 2")]
    [InlineData("דגן")]
    [InlineData("🍞 and butter")]
    [InlineData("first line\nsecond line")]
    [InlineData("'quoted'")]
    [InlineData("")]
    public void Other_text_stays_as_it_was_written(string written)
    {
        Assert.Equal(written, SpreadsheetText.Guarded(written));
        Assert.Equal(written, SpreadsheetText.Clean(written));
    }

    [Fact]
    public void Control_characters_go_and_line_ends_become_one_line_feed() =>
        Assert.Equal("a b\nc\nd\ne", SpreadsheetText.Clean("a\u0000\tb\u0007\r\nc\rd\u2028e\u009F"));

    [Fact]
    public void Half_a_character_becomes_the_replacement_character() =>
        Assert.Equal("a\uFFFDb\uFFFD", SpreadsheetText.Clean("a\uD83Db\uFFFE"));

    [Fact]
    public void A_typed_cell_needs_no_apostrophe() => Assert.Equal("=1+1", SpreadsheetText.Clean("=1+1"));
}
