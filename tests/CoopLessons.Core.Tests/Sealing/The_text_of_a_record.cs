using System.Text.Json.Nodes;
using CoopLessons.Core.Sealing;

namespace CoopLessons.Core.Tests.Sealing;

public class The_text_of_a_record
{
    // Each line: what jq 1.6 wrote for the JSON beside it (printf '%s' JSON | jq -jcS .).
    [Theory]
    [InlineData("""{"b":1,"a":[ 3, -2, null, true, {} ],"A":""}""", """{"A":"","a":[3,-2,null,true,{}],"b":1}""")]
    [InlineData("""{"x":"\"\\\/\b\f\n\r\t\u0000\u001f\u007f"}""", """{"x":"\"\\/\b\f\n\r\t\u0000\u001f\u007f"}""")]
    [InlineData("""{"x":"Nguy\u1ec5n \ud83c\udf5e\u2028\u00e9"}""", "{\"x\":\"Nguyễn 🍞\u2028é\"}")]
    [InlineData("""{"\ue000":1,"\ud83c\udf5e":2,"z":3}""", "{\"z\":3,\"\ue000\":1,\"🍞\":2}")]
    [InlineData("""[9007199254740992,-9007199254740992]""", """[9007199254740992,-9007199254740992]""")]
    public void Is_what_a_general_program_writes(string json, string expected) => Assert.Equal(expected, RecordText.Of(JsonNode.Parse(json)));

    [Theory]
    [InlineData("1.5")]
    [InlineData("1e3")]
    [InlineData("9007199254740993")]
    public void Holds_whole_numbers_only(string json) => Assert.Throws<ArgumentException>(() => RecordText.Of(JsonNode.Parse(json)));

    [Theory]
    [InlineData('\ud83c')]
    [InlineData('\udf5e')]
    public void Holds_no_half_of_a_character(char half) => Assert.Throws<ArgumentException>(() => RecordText.Of(JsonValue.Create($"a{half}b")));

    [Fact]
    public void Is_read_back_as_the_same_record()
    {
        var record = AlderYear.Record();
        Assert.Equal(record.Text, YearRecord.Read(record.Text)!.Text);
    }

    [Theory]
    [InlineData("")]
    [InlineData("null")]
    [InlineData("[]")]
    [InlineData("""{"format":2}""")]
    public void Of_anything_else_is_read_as_none(string text) => Assert.Null(YearRecord.Read(text));

    [Fact]
    public void Stands_in_names_that_anybody_can_read()
    {
        var text = AlderYear.Record(AlderYear.Bread).Text;
        Assert.Contains(
            """{"date":"2026-11-03","id":"00000000-0000-0000-0000-000000000001","minutes":40,"noted_at":null,"place":"home","revision":1,"split":[{"minutes":27,"subject":"Arithmetic","weight":2},{"minutes":13,"subject":"Science","weight":1}],"start":"09:00","touches":["Art"],"what":"Baked bread","written_at":"2026-11-03T17:04:05Z"}""",
            text, StringComparison.Ordinal);
        Assert.StartsWith("""{"amendment":null,"counting_policy":"We count the minutes.","day_marks":[{"counts":true,"date":"2026-11-03"}],"entries":[""", text, StringComparison.Ordinal);
        Assert.EndsWith("""],"totals":{"by_subject":[{"minutes":27,"subject":"Arithmetic"},{"minutes":13,"subject":"Science"},{"minutes":0,"subject":"Art"}],"minutes":40,"school_days":1},"year":{"first":"2026-08-01","last":"2027-05-31","name":"2026–27"}}""", text, StringComparison.Ordinal);
    }

    [Fact]
    public void Is_the_same_however_its_facts_were_ordered() =>
        Assert.Equal(AlderYear.Record(AlderYear.Bread, AlderYear.Reading).Text, AlderYear.Record(AlderYear.Reading, AlderYear.Bread).Text);
}
