using CoopLessons.Core.Requirements;
using CoopLessons.Core.Requirements.Scores;

namespace CoopLessons.Core.Tests.Requirements.Scores;

/// <summary>The rows are taken from the statutes and rules named in each, as read on 28 November 2026, not from the catalog.</summary>
public sealed class The_scores_that_the_law_names
{
    private sealed record Row(string Code, string Duty, string Figures, string Source);

    private static readonly Row[] Table =
    [
        new("US-CO", "test", "composite above 13 percentile",
            "C.R.S. § 22-33-104.5(5): a composite score above the 13th percentile; a school district’s page and a summary of the statute"),
        new("US-IA", "evaluation", "reading, mathematics, language arts above 30 percentile; science, social studies above 30 percentile in 6-12",
            "Iowa Code § 299A.6(4): scores above the thirtieth percentile in each of reading, mathematics and language arts, from grade six in science and social studies; statute text"),
        new("US-MN", "test", "composite above 30 percentile",
            "Minn. Stat. § 120A.22 subd. 11: further evaluation at or below the 30th percentile of the total battery; the statute as quoted by a testing office"),
        new("US-ND", "test", "composite at least 30 percentile; composite at least 50 percentile when the parent is monitored",
            "N.D.C.C. § 15.1-23-11(2), less than the thirtieth percentile, and § 15.1-23-06, below the fiftieth; statute text"),
        new("US-NY", "assessment-1-3", "composite above 33 percentile", "8 NYCRR § 100.10(h)(1): above the 33rd percentile on national norms; from memory, the number in the State Education Department’s questions and answers, no. 28"),
        new("US-NY", "assessment-4-8", "composite above 33 percentile", "the same"),
        new("US-NY", "assessment-9-12", "composite above 33 percentile", "the same"),
        new("US-OR", "test", "composite at least 15 percentile", "OAR 581-021-0026: a composite at or above the 15th percentile; two summaries of the rule"),
        new("US-VA", "evidence-of-progress", "composite at least 4 stanine", "Va. Code § 22.1-254.1(C): in or above the fourth stanine; statute text"),
    ];

    [Fact]
    public void Are_those_that_were_published()
    {
        var catalog = Catalog.Of50AndDc.All.SelectMany(j => j.Pathways.SelectMany(p => p.Duties).Where(d => d.Scores is not null).Select(d => (j.Code, d.Id, Line(d.Scores!)))).Order();
        Assert.Equal(Table.Select(r => (r.Code, r.Duty, r.Figures)).Order(), catalog);
    }

    [Fact]
    public void Stand_beside_the_words_in_which_the_catalog_tells_them()
    {
        foreach (var duty in Catalog.Of50AndDc.All.SelectMany(j => j.Pathways).SelectMany(p => p.Duties).Where(d => d.Scores is not null))
            Assert.All(duty.Scores!, s => Assert.Contains(s.Measure == ScoreMeasure.Stanine ? "fourth stanine" : Stanine.Ordinal((s.Above ?? s.AtLeast)!.Value), duty.Threshold, StringComparison.Ordinal));
    }

    [Fact]
    public void Have_one_figure_each() =>
        Assert.All(Catalog.Of50AndDc.All.SelectMany(j => j.Pathways).SelectMany(p => p.Duties).SelectMany(d => d.Scores ?? []), s => Assert.True(s.AtLeast is null != s.Above is null));

    private static string Line(IEnumerable<ScoreFloor> floors) => string.Join("; ", floors.Select(f =>
        $"{string.Join(", ", f.Areas ?? ["composite"])} {(f.Above is null ? "at least" : "above")} {f.Above ?? f.AtLeast} {f.Measure.ToString().ToLowerInvariant()}"
        + (f.Grades is null ? "" : $" in {f.Grades}") + (f.When is null ? "" : $" when {f.When}")));
}
