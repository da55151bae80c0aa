using CoopLessons.Core.Hours;
using CoopLessons.Data.Families;
using CoopLessons.Data.Log;
using CoopLessons.Data.Scenario;
using CoopLessons.Data.Schedule;
using CoopLessons.Data.Units;
using Microsoft.EntityFrameworkCore;

namespace CoopLessons.Benchmarks.Measured;

/// <summary>
/// A family in its year: three children, ten sessions of the bread unit planned for today, and a log that is empty yet
/// or has grown.
/// </summary>
public sealed class AlderFamily
{
    public const int Sessions = 10;

    /// <summary>About a year's worth: forty weeks of five days, with seven or eight entries each.</summary>
    public const int AYearOfEntries = 1500;
    private const string Password = "mill wheel under seven stars";
    private const string TimeZone = "America/Chicago";

    private AlderFamily(Browser guardian) => Guardian = guardian;

    /// <summary>A guardian's browser, signed in by the sign-in page.</summary>
    public Browser Guardian { get; }

    public required Guid Id { get; init; }
    public required DateOnly Today { get; init; }
    public required IReadOnlyList<Guid> Learners { get; init; }
    public required IReadOnlyList<Guid> Subjects { get; init; }

    public static string EmailOf(int entries) => $"iris{entries}@alder.example";

    /// <param name="entries">How many entries the log holds.</param>
    public static async Task<AlderFamily> MoveInAsync(CoopServer server, int entries)
    {
        var now = DateTime.UtcNow;
        var today = DateOnly.FromDateTime(TimeZoneInfo.ConvertTimeFromUtc(now, TimeZoneInfo.FindSystemTimeZoneById(TimeZone)));
        var email = EmailOf(entries);
        var person = await server.PersonAsync("Iris Alder", email, Password);
        var id = Guid.CreateVersion7();
        Learner[] learners = [new(Guid.CreateVersion7(), "Wren", today.AddYears(-6), 0), new(Guid.CreateVersion7(), "Lark", today.AddYears(-9), 1), new(Guid.CreateVersion7(), "Heron", today.AddYears(-12), 2)];
        var subjects = await server.WithDbAsync(id, async db =>
        {
            NewFamily.Found(db, id, "Alder", TimeZone, person.Id, person.Name, today, now);
            await db.SaveChangesAsync();
            db.Learners.AddRange(learners);
            var unit = await UnitTravel.TakeInAsync(db, ScenarioFiles.Units["from-grain-to-loaf"], default);
            await db.SaveChangesAsync();
            db.PlannedSessions.AddRange(unit.Activities.Take(Sessions).Select((a, i) =>
                new PlannedSession(Guid.CreateVersion7(), a.Id, today, 9 * 60 + i * 30, i, learners.Select(l => l.Id))));
            await db.SaveChangesAsync();
            var ids = await db.Subjects.OrderBy(s => s.Order).Select(s => s.Id).ToListAsync();
            var first = (await db.SchoolYears.SingleAsync()).First;
            db.LogEntries.AddRange(Enumerable.Range(0, entries).Select(i => EntryOf(i, first, today, learners, ids, new Author(person.Id, person.Name), now)));
            await db.SaveChangesAsync();
            return ids;
        });
        var browser = new Browser(server.Address);
        await browser.SignInAsync(email, Password);
        return new AlderFamily(browser) { Id = id, Today = today, Learners = [.. learners.Select(l => l.Id)], Subjects = subjects };
    }

    // Spread over the year's days before today; on its first day they all stand on that day.
    private static LogEntry EntryOf(int i, DateOnly first, DateOnly today, Learner[] learners, List<Guid> subjects, Author author, DateTime now)
    {
        var days = Math.Max(1, today.DayNumber - first.DayNumber);
        var there = learners.Where((_, at) => (i + at) % 3 != 0).Select(l => new LearnerTime(l.Id, new Minutes(20 + i % 5 * 10)));
        var main = subjects[i % subjects.Count];
        var beside = subjects[(i + 1) % subjects.Count];
        var facts = new EntryFacts(first.AddDays(i % days), 9 * 60 + i % 6 * 30, $"Piece of work {i % 60 + 1}", Place.Home, "", [.. there], [new SubjectWeight(main, 2), new SubjectWeight(beside, 1)], []);
        return LogEntry.Write(Guid.CreateVersion7(), facts, author, now);
    }
}
