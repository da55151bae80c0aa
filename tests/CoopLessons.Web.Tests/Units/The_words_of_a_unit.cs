using System.Text.Json.Nodes;
using CoopLessons.Data.Units;
using CoopLessons.Web.Pages.Units;

namespace CoopLessons.Web.Tests.Units;

public class The_words_of_a_unit
{
    [Theory]
    [InlineData(45, "45 min")]
    [InlineData(60, "1 h")]
    [InlineData(250, "4 h 10")]
    [InlineData(65, "1 h 05")]
    public void Say_lengths_as_a_parent_does(int minutes, string words) => Assert.Equal(words, UnitWords.Length(minutes));

    [Theory]
    [InlineData(75, "75 min")]
    [InlineData(91, "1 h 31")]
    [InlineData(480, "8 h")]
    [InlineData(1440, "1 day")]
    [InlineData(1980, "1 day 9 h")]
    [InlineData(18720, "13 days")]
    [InlineData(43_200, "30 days")]
    public void Say_waiting_times_up_to_thirty_days(int minutes, string words) => Assert.Equal(words, UnitWords.Wait(minutes));

    [Fact]
    public void Name_the_wait_after_the_work() => Assert.Equal("20 min, then 75 min while the dough rises", UnitWords.Time(20, 75, "the dough rises"));

    [Theory]
    [InlineData("From Grain to Loaf", "from-grain-to-loaf")]
    [InlineData("  What is in a loaf?  ", "what-is-in-a-loaf")]
    [InlineData("Crème brûlée", "creme-brulee")]
    [InlineData("小麦", "otherwise")]
    [InlineData("../../etc/passwd", "etc-passwd")]
    [InlineData("a\"; filename=b", "a-filename-b")]
    [InlineData("", "otherwise")]
    public void Make_codes_of_titles(string title, string code) => Assert.Equal(code, UnitWords.Slug(title, 40, "otherwise"));

    [Fact]
    public void Make_no_code_longer_than_asked_or_ending_in_a_hyphen()
    {
        Assert.Equal("aaaa", UnitWords.Slug("aaaa bbbb", 5, "x"));
        Assert.Equal(40, UnitWords.Slug(new string('a', 200), 40, "x").Length);
    }

    [Fact]
    public void Measure_as_the_published_schema_does()
    {
        var schema = JsonNode.Parse(BundleFile.SchemaText())!;
        var measures = schema["$defs"]!["activity"]!["properties"]!["supplies"]!["items"]!["properties"]!["unit"]!["enum"]!.AsArray().Select(m => (string)m!);

        Assert.Equal(measures, UnitWords.Measures);
    }

    [Theory]
    [InlineData("piece", 4, "4")]
    [InlineData("g", 1500, "1,500 g")]
    [InlineData("cup", 2.50, "2.5 cup")]
    public void Give_amounts_without_idle_zeros(string measure, decimal quantity, string words) => Assert.Equal(words, UnitWords.Amount(quantity, measure));
}
