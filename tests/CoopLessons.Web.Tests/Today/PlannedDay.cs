using System.Globalization;
using AngleSharp.Html.Dom;
using CoopLessons.Core.Calendar;
using CoopLessons.Core.Families;
using CoopLessons.Core.Hours;
using CoopLessons.Core.Units;
using CoopLessons.Data.Families;
using CoopLessons.Data.Hours;
using CoopLessons.Data.Schedule;
using CoopLessons.Data.Units;
using CoopLessons.Web.Tests.App;
using Microsoft.EntityFrameworkCore;

namespace CoopLessons.Web.Tests.Today;

/// <summary>
/// A family with three children, a taken unit and a Thursday: read aloud at 8:30 for all three, a sourdough at 9:00 for
/// Wren and Linnet that then rises for 90 minutes, and Wren's letters without a time.
/// </summary>
public sealed class PlannedDay
{
    private PlannedDay(TestFamily family) => Family = family;

    public TestFamily Family { get; }
    public Visitor Guardian => Family.Guardian;
    public Guid Wren { get; } = Guid.CreateVersion7();
    public Guid Linnet { get; } = Guid.CreateVersion7();
    public Guid Heron { get; } = Guid.CreateVersion7();
    public Guid Unit { get; } = Guid.CreateVersion7();
    public Guid ReadAloud { get; } = Guid.CreateVersion7();
    public Guid Sourdough { get; } = Guid.CreateVersion7();
    public Guid Letters { get; } = Guid.CreateVersion7();

    /// <summary>Activities of the unit's first and second week that have no day yet, and one whose only subject is left out.</summary>
    public Guid Mill { get; } = Guid.CreateVersion7();
    public Guid Crackers { get; } = Guid.CreateVersion7();
    public Guid Song { get; } = Guid.CreateVersion7();

    public IReadOnlyDictionary<string, Guid> Subjects { get; private set; } = new Dictionary<string, Guid>();

    public static async Task<PlannedDay> MakeAsync(TestServer server)
    {
        var day = new PlannedDay(await server.FamilyAsync());
        await day.Family.WithDbAsync(async db =>
        {
            day.Subjects = await db.Subjects.ToDictionaryAsync(s => s.Code, s => s.Id);
            db.Learners.Add(new Learner(day.Wren, "Wren", new DateOnly(2019, 5, 2), 0));
            db.Learners.Add(new Learner(day.Linnet, "Linnet", new DateOnly(2016, 9, 14), 1));
            var heron = new Learner(day.Heron, "Heron", new DateOnly(2023, 11, 20), 2);
            heron.Describe("Heron", heron.BirthDate, [Allergen.Wheat], "");
            db.Learners.Add(heron);
            var unit = new Unit(day.Unit, "From Grain to Loaf", "", 4);
            unit.Take(new DateOnly(2026, 3, 9));
            unit.Hold(day.Subjects["music"]);
            unit.Add(day.Activity("read", 1, "Read aloud: chapter 7", 30, [("reading", 1)]));
            unit.Add(day.SourdoughActivity());
            unit.Add(day.Activity("letters", 1, "Letters", 20, [("writing", 1)]));
            unit.Add(new Activity(day.Mill, "mill", Facts(1, 4, "Grind by hand", 45), Details([new(day.Subjects["science"], 1)])));
            unit.Add(new Activity(day.Crackers, "crackers", Facts(2, 1, "Bake crackers", 60), Details([new(day.Subjects["home-arts"], 1)])));
            unit.Add(new Activity(day.Song, "song", Facts(1, 5, "A harvest song", 15), Details([new(day.Subjects["music"], 1)])));
            unit.LeaveOut(day.Subjects["music"]);
            db.Units.Add(unit);
            var ids = unit.Activities.ToDictionary(a => a.Code, a => a.Id);
            db.PlannedSessions.Add(new PlannedSession(day.ReadAloud, ids["read"], TestServer.Today, 8 * 60 + 30, 0, [day.Wren, day.Linnet, day.Heron]));
            db.PlannedSessions.Add(new PlannedSession(day.Sourdough, ids["sourdough"], TestServer.Today, 9 * 60, 1, [day.Wren, day.Linnet]));
            db.PlannedSessions.Add(new PlannedSession(day.Letters, ids["letters"], TestServer.Today, null, 2, [day.Wren]));
            await db.SaveChangesAsync();
        });
        return day;
    }

    public static string Line(Guid session) => "#line-" + session.ToString("N", CultureInfo.InvariantCulture);

    /// <summary>The form of a line that leads to a handler.</summary>
    public static string Form(Guid session, string handler) => $"{Line(session)} form[action$='handler={handler}']";

    public Task<IHtmlDocument> TodayAsync() => Guardian.GetAsync("/today");

    public Task<PlannedSession> SessionAsync(Guid id) => Family.FromDbAsync(db => db.PlannedSessions.AsNoTracking().SingleAsync(s => s.Id == id));

    public Task<int> EntriesAsync() => Family.FromDbAsync(db => db.LogEntries.CountAsync());

    /// <summary>The learner's year as the ledger counts it.</summary>
    public Task<HoursLedger> LedgerAsync(Guid learner) => Family.FromDbAsync(async db =>
        (await LearnerYear.LoadAsync(db, learner, new DayRange(new DateOnly(2025, 7, 1), new DateOnly(2026, 6, 30)), default))!.Ledger);

    private Activity Activity(string code, int order, string title, int minutes, (string Code, int Weight)[] subjects) =>
        new(Guid.CreateVersion7(), code, Facts(1, order, title, minutes), Details([.. subjects.Select(s => new ActivitySubject(Subjects[s.Code], s.Weight))]));

    private Activity SourdoughActivity() => new(
        Guid.CreateVersion7(), "sourdough",
        new ActivityFacts(1, 2, "Start the sourdough", ActivityKind.Cooking, "Stir flour and water.\nCover it.", AdultNeed.HandsOn, 15, 90, "the starter rises"),
        new ActivityDetails(
            [new(Subjects["science"], 2), new(Subjects["home-arts"], 1), new(Subjects["history"], 0)],
            [new LevelVariant(5, 7, "Stirs and names what it smells like."), new LevelVariant(8, 11, "Weighs the flour and writes it down.")],
            [new Supply("Rye flour", 100, "g", Per.Learner), new Supply("Jar", 2, "piece", Per.Family)],
            [], [],
            [new Hazard(HazardKind.SmallParts, "Lid rings are small enough to swallow.")],
            [new Ingredient("Wheat flour", [Allergen.Wheat])]));

    private static ActivityFacts Facts(int week, int order, string title, int minutes) => new(week, order, title, ActivityKind.Making, "Do it.", AdultNeed.Beside, minutes, 0, "");

    private static ActivityDetails Details(IReadOnlyList<ActivitySubject> subjects) => ActivityDetails.Empty with { Subjects = subjects };
}
