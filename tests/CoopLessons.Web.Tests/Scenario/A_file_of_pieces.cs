using System.Text;
using CoopLessons.Data.Scenario;

namespace CoopLessons.Web.Tests.Scenario;

public sealed class A_file_of_pieces
{
    [Theory]
    [InlineData("\"weeksAgo\": 3", 3, null)]
    [InlineData("\"weeksAgo\": 0", 0, null)]
    [InlineData("\"on\": \"2025-09-16\"", null, "2025-09-16")]
    public void Says_of_each_piece_how_long_ago_or_on_which_day(string when, int? weeksAgo, string? on)
    {
        var piece = Assert.Single(Read(", " + when).Families["Alder"]);
        Assert.Equal((weeksAgo, on), (piece.WeeksAgo, piece.On?.ToString("yyyy-MM-dd", null)));
    }

    [Theory]
    [InlineData("")]
    [InlineData(", \"weeksAgo\": 3, \"on\": \"2025-09-16\"")]
    public void Is_refused_where_a_piece_says_both_or_neither(string when)
    {
        var refused = Assert.Throws<InvalidDataException>(() => Read(when));
        Assert.Contains("Three kinds of leaf", refused.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void Names_pictures_that_paper_takes_as_they_stand()
    {
        // Eight bits a sample, grey or three colours, not interlaced: PNG, third edition, 11.2.2.
        var heads = CoopPieces.Read().Families.Values.SelectMany(f => f).SelectMany(p => new[] { p.File, p.File + "-small" }).Distinct()
            .Select(f => (File: f, Png: ScenarioFiles.Bytes($"scenario/pieces/{f}.png"))).ToList();
        Assert.All(heads, h => Assert.True((h.Png[24], h.Png[25], h.Png[28]) is (8, 0 or 2, 0), h.File));
    }

    private static CoopPieces Read(string when) => CoopPieces.From(Encoding.UTF8.GetBytes(
        $$"""{ "families": { "Alder": [{ "file": "leaves", "children": ["Wren"], "subject": "art", "caption": "Three kinds of leaf"{{when}} }] } }"""));
}
