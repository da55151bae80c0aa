using System.Text.Json;
using CoopLessons.Core.Requirements;
using CoopLessons.Data;
using CoopLessons.Data.Families;
using CoopLessons.Data.Requirements;
using CoopLessons.Web.Tests.App;
using Microsoft.EntityFrameworkCore;

namespace CoopLessons.Web.Tests.Law;

[Collection(SharedServer.Name)]
public sealed class Where_a_learner_stands(TestServer server)
{
    private static readonly DateOnly July = LawFamily.July;
    private static readonly DateOnly November = new(2025, 11, 3);

    [Fact]
    public async Task Nothing_is_asked_of_a_learner_without_a_pathway()
    {
        var family = await server.FamilyAsync();
        var wren = await family.LearnerAsync("Wren");
        var law = await OfAsync(family, wren);
        Assert.Empty(law.Spans);
        Assert.Empty(law.Lost);
        Assert.Null(law.Learner.Grade);
    }

    [Fact]
    public async Task Each_pathway_ends_on_the_day_before_the_next()
    {
        var family = await server.FamilyAsync();
        var wren = await family.LearnerAsync("Wren");
        var (first, second) = (await family.OwnAsync("First"), await family.OwnAsync("Second"));
        await family.WithDbAsync(async db =>
        {
            db.Add(new LearnerPathway(Guid.CreateVersion7(), wren, second, November, SpanReason.Moves));
            db.Add(new LearnerPathway(Guid.CreateVersion7(), wren, first, July, SpanReason.Begins));
            await db.SaveChangesAsync();
        });
        var law = await OfAsync(family, wren);
        Assert.Equal(["First", "Second"], law.Spans.Select(s => s.Pathway.Name));
        Assert.Equal([November.AddDays(-1), null], law.Spans.Select(s => s.Until));
        Assert.Equal([SpanReason.Begins, SpanReason.Moves], law.Spans.Select(s => s.Because));
        Assert.All(law.Spans, s => Assert.Equal(LawOfLearner.OwnPlace, s.Place));
    }

    [Fact]
    public async Task A_pathway_that_is_no_longer_there_is_told_and_the_one_before_does_not_reach_into_it()
    {
        var family = await server.FamilyAsync();
        var wren = await family.LearnerAsync("Wren");
        var own = await family.OwnAsync("First");
        await family.WithDbAsync(async db =>
        {
            db.Add(new LearnerPathway(Guid.CreateVersion7(), wren, own, July, SpanReason.Begins));
            db.Add(new LearnerPathway(Guid.CreateVersion7(), wren, "US-ZZ", "gone", November, SpanReason.Moves, null));
            await db.SaveChangesAsync();
        });
        var law = await OfAsync(family, wren);
        Assert.Equal(November.AddDays(-1), Assert.Single(law.Spans).Until);
        var lost = Assert.Single(law.Lost);
        Assert.Null(lost.Until);
        Assert.Contains("no longer in this program", lost.Words, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Grade_marks_and_decisions_come_with_it_and_those_of_another_year_stay_away()
    {
        var family = await server.FamilyAsync();
        var wren = await family.LearnerAsync("Wren");
        var own = await family.OwnAsync("First");
        Guid art = default, reading = default;
        await family.WithDbAsync(async db =>
        {
            (art, reading) = (await IdOfAsync(db, "art"), await IdOfAsync(db, "reading"));
            var year = await db.SchoolYears.SingleAsync();
            var next = new SchoolYear(Guid.CreateVersion7(), "2026–27", new(new DateOnly(2026, 7, 1), new DateOnly(2027, 6, 30)), Core.Calendar.Weekdays.MondayToFriday);
            db.Add(next);
            var row = new LearnerPathway(Guid.CreateVersion7(), wren, own, July, SpanReason.Begins);
            row.Choose(["days"], new Dictionary<string, decimal> { ["core-hours"] = 612.25m });
            db.Add(row);
            db.Add(new LearnerGrade(wren, year.Id, 3));
            db.Add(new LearnerGrade(wren, next.Id, 4));
            db.Add(new DutyMark(wren, year.Id, "/x/notice/1"));
            db.Add(new DutyMark(wren, next.Id, "/x/notice/1"));
            db.Add(new RecordedLegalEvent(Guid.CreateVersion7(), wren, LegalEvent.FormReceived, November));
            db.Add(new SubjectReading("", own.Id.ToString(), "reading", reading, false));
            db.Add(new SubjectReading("", own.Id.ToString(), "reading", art, true));
            await db.SaveChangesAsync();
        });
        var law = await OfAsync(family, wren);
        Assert.Equal(3, law.Learner.Grade);
        Assert.Single(law.Marks);
        Assert.Equal(LegalEvent.FormReceived, Assert.Single(law.Events).Event);
        var choices = Assert.Single(law.Spans).Choices;
        Assert.Equal(612.25m, choices.Figures["core-hours"]);
        Assert.Contains("days", choices.Goals);
        Assert.Equal([art], choices.SubjectsFor("reading"));
        Assert.Single(choices.SubjectsFor("mathematics"));
    }

    [Fact]
    public async Task All_learners_come_in_the_familys_order_without_those_set_aside()
    {
        var family = await server.FamilyAsync();
        await family.LearnerAsync("Wren", 1);
        await family.LearnerAsync("Linnet", 0);
        var gone = await family.LearnerAsync("Rook", 2);
        await family.WithDbAsync(async db =>
        {
            (await db.Learners.SingleAsync(l => l.Id == gone)).PutAside();
            await db.SaveChangesAsync();
        });
        var all = await family.FromDbAsync(async db => await LawOfLearner.LoadAllAsync(db, await db.SchoolYears.SingleAsync(), default));
        Assert.Equal(["Linnet", "Wren"], all.Select(l => l.Learner.Name));
    }

    [Fact]
    public async Task A_pathway_of_ones_own_comes_back_as_it_was_written()
    {
        var family = await server.FamilyAsync();
        var own = await family.OwnAsync("First");
        var read = await family.FromDbAsync(async db => (await db.OwnPathways.SingleAsync()).Read());
        Assert.Equal(JsonSerializer.Serialize(OwnPathways.Small("First") with { Id = own.Id.ToString() }, Catalog.Json), JsonSerializer.Serialize(read, Catalog.Json));
    }

    [Fact]
    public async Task A_pathway_of_ones_own_under_which_somebody_stands_is_kept_by_the_database()
    {
        var family = await server.FamilyAsync();
        var wren = await family.LearnerAsync("Wren");
        var own = await family.OwnAsync("First");
        await family.WithDbAsync(async db =>
        {
            db.Add(new LearnerPathway(Guid.CreateVersion7(), wren, own, July, SpanReason.Begins));
            await db.SaveChangesAsync();
        });
        await family.WithDbAsync(async db =>
        {
            var row = await db.OwnPathways.SingleAsync();
            Assert.True(await row.IsNamedAsync(db, default));
            db.Remove(row);
            await Assert.ThrowsAsync<DbUpdateException>(() => db.SaveChangesAsync());
        });
        Assert.Equal(1, await family.FromDbAsync(db => db.OwnPathways.CountAsync()));
    }

    [Fact]
    public async Task Two_pathways_of_one_learner_do_not_begin_on_the_same_day()
    {
        var family = await server.FamilyAsync();
        var wren = await family.LearnerAsync("Wren");
        var own = await family.OwnAsync("First");
        await Assert.ThrowsAsync<DbUpdateException>(() => family.WithDbAsync(async db =>
        {
            db.Add(new LearnerPathway(Guid.CreateVersion7(), wren, own, July, SpanReason.Begins));
            db.Add(new LearnerPathway(Guid.CreateVersion7(), wren, own, July, SpanReason.Changes));
            await db.SaveChangesAsync();
        }));
    }

    private static Task<Guid> IdOfAsync(AppDb db, string code) => db.Subjects.Where(s => s.Code == code).Select(s => s.Id).SingleAsync();

    private static Task<LawOfLearner> OfAsync(TestFamily family, Guid learnerId) => family.FromDbAsync(async db =>
        await LawOfLearner.LoadAsync(db, await db.Learners.SingleAsync(l => l.Id == learnerId), await db.SchoolYears.SingleAsync(y => y.First == July), default));
}
