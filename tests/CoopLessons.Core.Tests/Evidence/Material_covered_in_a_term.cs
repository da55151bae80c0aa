using CoopLessons.Core.Calendar;
using CoopLessons.Core.Evidence;
using CoopLessons.Core.Hours;
using CoopLessons.Core.Requirements;
using CsCheck;
using Xunit;

namespace CoopLessons.Core.Tests.Evidence;

public class Material_covered_in_a_term
{
    private static readonly Guid Science = Guid.NewGuid();
    private static readonly Guid Art = Guid.NewGuid();
    private static readonly DayRange Term = new(new(2026, 7, 1), new(2026, 9, 30));

    [Fact]
    public void Counts_each_thing_once_in_each_of_its_subjects()
    {
        PlannedThing[] plan =
        [
            new(new(2026, 7, 1), Set(Science, Art), Done: true), new(new(2026, 9, 30), Set(Science), Done: false), new(new(2026, 10, 1), Set(Science), Done: true), new(new(2026, 8, 1), Set(Art), Done: true),
        ];
        Assert.Equal(new MaterialCovered(2, 1), MaterialCovered.Of(plan, Set(Science), Term));
        Assert.Equal(new MaterialCovered(2, 2), MaterialCovered.Of(plan, Set(Art), Term));
        Assert.Equal(new MaterialCovered(3, 2), MaterialCovered.Of(plan, Set(Art, Science), Term));
    }

    // Source of the figure: 8 NYCRR § 100.10(g)(4): less than 80 percent of the planned amount is explained.
    [Theory]
    [InlineData(80, 100, false)]
    [InlineData(79, 100, true)]
    [InlineData(4, 5, false)]
    [InlineData(199, 249, true)]
    [InlineData(0, 0, false)]
    [InlineData(0, 3, true)]
    public void Is_held_exactly_against_new_yorks_figure(int done, int planned, bool explained)
    {
        var duty = Catalog.Of50AndDc["US-NY"]!.Pathway("home-instruction")!.Duties.Single(d => d.Id == "quarterly-reports");
        Assert.Equal([ReportPart.Hours, ReportPart.Material, ReportPart.Progress], duty.Report!.Parts);
        Assert.Equal(explained, new MaterialCovered(planned, done).IsUnder(duty.Report.ExplainUnder!.Value));
    }

    [Fact]
    public void Shows_a_rounded_share_that_never_decides()
    {
        // 199 of 249 is 79.92 per cent: shown as 80, and explained all the same.
        Assert.Equal(80, new MaterialCovered(249, 199).PerCent);
        Assert.Equal("Of 249 planned lessons and activities 199 were done: 80 per cent.", new MaterialCovered(249, 199).Sentence);
        Assert.Null(new MaterialCovered(0, 0).PerCent);
        Gen.Select(Gen.Int[1, 500], Gen.Int[0, 500]).Where((planned, done) => done <= planned).Sample((planned, done) =>
            Assert.Equal((int)Math.Round(100m * done / planned, MidpointRounding.AwayFromZero), new MaterialCovered(planned, done).PerCent));
    }

    // Source: S.C. Code § 59-65-47: a semi-annual progress report with attendance records and individualized documentation of progress in each basic area.
    [Fact]
    public void Is_not_asked_for_in_south_carolina() => Assert.All(
        Catalog.Of50AndDc["US-SC"]!.Pathways.SelectMany(p => p.Duties).Where(d => d.Id == "progress-report" && d.Due is InTerms { Count: 2 }),
        d => Assert.Equal([ReportPart.Attendance, ReportPart.Progress], d.Report!.Parts));

    [Fact]
    public void Begins_sentences_that_the_log_vouches_for()
    {
        var linnet = Guid.NewGuid();
        LoggedEntry Entry(string what, int minutes) => new(Guid.NewGuid(), 1, new(2026, 7, 6), null, what, Place.Home, [new LearnerTime(linnet, new Minutes(minutes))], [new SubjectWeight(Science, 1)], []);
        SubjectFacts Facts(params LoggedEntry[] log) => SubjectFacts.Of(HoursLedger.Of(linnet, [new(Science, "science")], Term, log), Set(Science), Term);
        Assert.Equal("Linnet worked on: Seeds; Sprouts.", TermWords.Progress("Linnet", Facts(Entry("Sprouts", 20), Entry("Seeds", 30))));
        Assert.Equal("Linnet worked on: Seeds.", TermWords.Progress("Linnet", Facts(Entry("Seeds", 30))));
        Assert.Equal("", TermWords.Progress("Linnet", Facts()));
        Assert.Equal("3 of 10 planned lessons and activities were not done in this term.", TermWords.NotDone(new MaterialCovered(10, 7)));
        Assert.Equal("1 of 2 planned lessons and activities was not done in this term.", TermWords.NotDone(new MaterialCovered(2, 1)));
        Assert.Equal("The one planned lesson or activity was not done in this term.", TermWords.NotDone(new MaterialCovered(1, 0)));
    }

    private static HashSet<Guid> Set(params Guid[] ids) => [.. ids];
}
