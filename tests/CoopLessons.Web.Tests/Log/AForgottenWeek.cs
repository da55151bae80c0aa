using System.Globalization;
using CoopLessons.Core.Hours;
using CoopLessons.Core.Units;
using CoopLessons.Data.Families;
using CoopLessons.Data.Log;
using CoopLessons.Data.Schedule;
using CoopLessons.Data.Units;
using CoopLessons.Web.Tests.App;
using Microsoft.EntityFrameworkCore;

namespace CoopLessons.Web.Tests.Log;

/// <summary>
/// A family with four children. On Wednesday 11 March a mill walk of 45 minutes was planned for all of them and letters of 20
/// for Wren; nothing was decided. On Tuesday 10 March nothing was planned, and on the four Tuesdays before somebody swept the
/// mill, which took 30 minutes.
/// </summary>
internal sealed class AForgottenWeek
{
    public static readonly DateOnly Tuesday = new(2026, 3, 10);
    public static readonly DateOnly Wednesday = new(2026, 3, 11);

    private AForgottenWeek(TestFamily family) => Family = family;

    public TestFamily Family { get; }
    public Visitor Guardian => Family.Guardian;
    public IReadOnlyList<Guid> Children { get; } = [.. Enumerable.Range(0, 4).Select(_ => Guid.CreateVersion7())];
    public Guid Walk { get; } = Guid.CreateVersion7();
    public Guid Letters { get; } = Guid.CreateVersion7();
    public Guid Aloud { get; } = Guid.CreateVersion7();
    public IReadOnlyDictionary<string, Guid> Subjects { get; private set; } = new Dictionary<string, Guid>();

    public static async Task<AForgottenWeek> MakeAsync(TestServer server, string zone = "America/Chicago")
    {
        var week = new AForgottenWeek(await server.FamilyAsync("Alder", zone));
        await week.Family.WithDbAsync(async db =>
        {
            week.Subjects = await db.Subjects.ToDictionaryAsync(s => s.Code, s => s.Id);
            string[] names = ["Heron", "Linnet", "Wren", "Finch"];
            for (var i = 0; i < names.Length; i++)
                db.Add(new Learner(week.Children[i], names[i], new DateOnly(2013 + 2 * i, 5, 2), i));
            var unit = new Unit(Guid.CreateVersion7(), "From Grain to Loaf", "", 4);
            unit.Take(new DateOnly(2026, 3, 9));
            unit.Add(week.Activity("walk", "Mill walk", ActivityKind.Outing, 45, "science"));
            unit.Add(week.Activity("letters", "Letters", ActivityKind.Writing, 20, "writing"));
            unit.Add(week.Activity("aloud", "The miller's tale, read aloud", ActivityKind.ReadAloud, 25, "reading"));
            db.Add(unit);
            var ids = unit.Activities.ToDictionary(a => a.Code, a => a.Id);
            db.Add(new PlannedSession(week.Walk, ids["walk"], Wednesday, 9 * 60, 0, week.Children));
            db.Add(new PlannedSession(week.Letters, ids["letters"], Wednesday, null, 1, [week.Children[2]]));
            db.Add(new PlannedSession(week.Aloud, ids["aloud"], TestServer.Today, null, 0, week.Children));
            for (var weeks = 1; weeks <= 4; weeks++)
                week.Log(db, "Swept the mill", Tuesday.AddDays(-7 * weeks), 30);
            // Everything else of the two weeks has its word.
            foreach (var date in new[] { "2026-02-26", "2026-02-27", "2026-03-02", "2026-03-04", "2026-03-05", "2026-03-06", "2026-03-09" })
                week.Log(db, "Sums", DateOnly.Parse(date, CultureInfo.InvariantCulture), 20);
            await db.SaveChangesAsync();
        });
        return week;
    }

    public Task<PlannedSession> SessionAsync(Guid id) => Family.FromDbAsync(db => db.PlannedSessions.AsNoTracking().SingleAsync(s => s.Id == id));

    public Task<List<LogRevision>> WrittenAsync(DateOnly date) => Family.FromDbAsync(db => db.Standing().Where(r => r.Date == date).OrderBy(r => r.What).ToListAsync());

    public void Log(Data.AppDb db, string what, DateOnly date, int minutes) => db.LogEntries.Add(LogEntry.Write(
        Guid.CreateVersion7(),
        new EntryFacts(date, null, what, Place.Home, "", [.. Children.Select(l => new LearnerTime(l, new Minutes(minutes)))], [new SubjectWeight(Subjects["mathematics"], 1)], []),
        new Author(Family.GuardianId, "Iris"), date.ToDateTime(new TimeOnly(20, 0), DateTimeKind.Utc)));

    private Activity Activity(string code, string title, ActivityKind kind, int minutes, string subject) => new(
        Guid.CreateVersion7(), code, new ActivityFacts(1, 1, title, kind, "Do it.", AdultNeed.Beside, minutes, 0, ""),
        ActivityDetails.Empty with { Subjects = [new ActivitySubject(Subjects[subject], 1)] });
}
