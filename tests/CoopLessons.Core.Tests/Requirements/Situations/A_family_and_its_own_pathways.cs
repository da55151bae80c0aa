using CoopLessons.Core.Hours;
using CoopLessons.Core.Requirements;
using CoopLessons.Core.Requirements.Standing;

namespace CoopLessons.Core.Tests.Requirements.Situations;

public sealed class A_family_and_its_own_pathways
{
    private static readonly DateOnly First = new(2025, 9, 1);

    [Fact]
    public void Hold_for_each_learner_apart()
    {
        var finch = new LearnerFacts(AlderLog.Finch, "Finch", new DateOnly(2010, 5, 1), 9);
        var both = Enumerable.Range(0, 180).Select(d => AlderLog.Entry(d + 1, First.AddDays(d), 1, learners:
            [new LearnerTime(AlderLog.Wren, new Minutes(240)), new LearnerTime(AlderLog.Finch, new Minutes(300))])).ToList();
        var wren = Of(both, StateLog.InGrade(5), "US-ND", "home-education");
        var older = Of(both, finch, "US-MT", "home-school");
        wren.Line("days").AssertMet(180);
        Assert.Equal(Verdict.Met, wren.Verdict);
        // To the day before Finch turns 16, 304 of 365 days: 54,000 of 64,800 minutes, of which the days would make 53,971.
        Assert.Equal((Verdict.ForYouToJudge, 54_000, 53_971), (older.Verdict, older.Line("hours-1080").Measured!.Value.Value, older.Line("hours-1080").ProRated!.Value.Value));
        Assert.Contains("the duty ends with Finch's 16th birthday, 1 May 2026", older.Sentence, StringComparison.Ordinal);
    }

    [Fact]
    public void Are_refused_another_learners_log()
    {
        var ledger = HoursLedger.Of(AlderLog.Finch, AlderLog.Subjects, StateLog.Year, []);
        var span = Span("US-ND", "home-education");
        Assert.Throws<ArgumentException>(() => PathwayStanding.Of(new StandingQuestion(StateLog.InGrade(5), ledger, new Dictionary<DateOnly, bool>(), new Minutes(60), new StateLog().School, StateLog.Afterwards), span));
    }

    [Fact]
    public void Count_nothing_before_the_paper_and_say_so()
    {
        // 24 P.S. § 13-1327.1(c), as with the worked examples: the affidavit starts the programme.
        var affidavit = new DateOnly(2025, 8, 4);
        var standing = new StateLog().Write(new DateOnly(2025, 7, 28), 4, 330).Write(affidavit, 176, 330)
            .Under("US-PA", "home-education", StateLog.InGrade(7), span: s => s with { CountsFrom = affidavit });
        standing.Line("days").AssertShort(176, 4);
        Assert.Equal(["nothing counts before 4 August 2025"], standing.Window.Why);
        Assert.Equal(StateLog.Year, standing.Window.Asked);
        Assert.EndsWith(" Nothing counts before 4 August 2025.", standing.Sentence, StringComparison.Ordinal);
    }

    [Fact]
    public void Of_its_own_making_are_held_like_a_law_and_cite_the_family()
    {
        var standing = new StateLog().Write(First, 100, 120).Under(Own([Days(120), Hours(200)]), StateLog.InGrade(5));
        standing.Line("days").AssertShort(100, 20);
        standing.Line("hours").AssertMet(12_000);
        Assert.Equal("20 days are missing: 100 of 120 (our own plan). Met: 200 of 200 hours.", standing.Sentence);
        Assert.Empty(standing.Doubts);
        Assert.Equal("your own", standing.Line("days").Requirement.Source.BasisWords);
    }

    [Fact]
    public void Of_its_own_making_without_a_figure_ask_nothing() =>
        Assert.Equal("Your own pathway gives Wren no number of days or hours.", new StateLog().Under(Own([]), StateLog.InGrade(5)).Sentence);

    [Fact]
    public void Of_its_own_making_are_written_and_read_whole()
    {
        var pathway = Own([Days(120), Hours(200)]).Pathway;
        var text = System.Text.Json.JsonSerializer.Serialize(pathway, Catalog.Json);
        var read = System.Text.Json.JsonSerializer.Deserialize<Pathway>(text, Catalog.Json)!;
        Assert.Equal(text, System.Text.Json.JsonSerializer.Serialize(read, Catalog.Json));
        Assert.Equal(pathway.Requirements, read.Requirements);
    }

    private static Source Ours => new("our own plan", Basis.Family, new DateOnly(2026, 3, 1));

    private static DaysRequirement Days(int days) => new() { Id = "days", Name = "school days", Status = FigureStatus.Required, Source = Ours, Days = days };

    private static HoursRequirement Hours(decimal hours) => new() { Id = "hours", Name = "hours", Status = FigureStatus.Required, Source = Ours, Hours = hours };

    private static PathwaySpan Own(IReadOnlyList<Requirement> requirements) => new(
        "", "your own", new Pathway("own", "Our own way", "What we set ourselves.", Ours, new DutyAges(Ours), [], requirements, [], [], []), StateLog.Year.First, null, SpanReason.Begins, null, PathwayChoices.None);

    private static PathwaySpan Span(string code, string pathway) =>
        new(code, Catalog.Of50AndDc[code]!.Name, Catalog.Of50AndDc[code]!.Pathway(pathway)!, StateLog.Year.First, null, SpanReason.Begins, null, PathwayChoices.None);

    private static PathwayStanding Of(IReadOnlyList<LoggedEntry> log, LearnerFacts learner, string code, string pathway)
    {
        var ledger = HoursLedger.Of(learner.Id, AlderLog.Subjects, StateLog.Year, log);
        return PathwayStanding.Of(new StandingQuestion(learner, ledger, new Dictionary<DateOnly, bool>(), new Minutes(60), new StateLog().School, StateLog.Afterwards), Span(code, pathway));
    }
}
