using CoopLessons.Core.Hours;
using CoopLessons.Data.Families;
using CoopLessons.Data.Log;
using CoopLessons.Web.Tests.App;
using Microsoft.EntityFrameworkCore;

namespace CoopLessons.Web.Tests.Records;

/// <summary>A family of a test with learners, its usual school year 2025–26 and a log to write into.</summary>
public sealed class KeptLog
{
    private KeptLog(TestFamily family) => Family = family;

    public TestFamily Family { get; }
    public Visitor Guardian => Family.Guardian;
    public Guid YearId { get; private set; }
    public Dictionary<string, Guid> Subjects { get; private set; } = [];
    public Dictionary<string, Guid> Learners { get; } = [];

    public Guid Linnet => Learners["Linnet"];

    public static async Task<KeptLog> OfAsync(TestServer server, params string[] learners)
    {
        var log = new KeptLog(await server.FamilyAsync());
        await log.Family.WithDbAsync(async db =>
        {
            foreach (var name in learners)
            {
                var learner = new Learner(Guid.CreateVersion7(), name, new DateOnly(2016, 5, 2), log.Learners.Count);
                log.Learners[name] = learner.Id;
                db.Learners.Add(learner);
            }

            log.Subjects = await db.Subjects.ToDictionaryAsync(s => s.Code, s => s.Id);
            log.YearId = (await db.SchoolYears.SingleAsync()).Id;
            await db.SaveChangesAsync();
        });
        return log;
    }

    /// <summary>One entry of Linnet's, unless others are named. A weight of zero is a touch.</summary>
    public async Task<Guid> WriteAsync(
        DateOnly date, int minutes, (string Subject, int Weight)[] split, string what = "Baked bread", int? startsAt = null,
        Place place = Place.Home, string note = "", DateTime? writtenAt = null, string[]? who = null)
    {
        var id = Guid.CreateVersion7();
        await Family.WithDbAsync(async db =>
        {
            db.LogEntries.Add(LogEntry.Write(id, Facts(date, minutes, split, what, startsAt, place, note, who), Author, writtenAt ?? TestServer.Start.UtcDateTime));
            await db.SaveChangesAsync();
        });
        return id;
    }

    public async Task ChangeAsync(Guid id, DateOnly date, int minutes, (string Subject, int Weight)[] split, string what = "Baked bread")
    {
        await Family.WithDbAsync(async db =>
        {
            var (entry, _) = (await db.EntryAsync(id, default))!.Value;
            entry.Change(Facts(date, minutes, split, what, null, Place.Home, "", null), Author, TestServer.Start.UtcDateTime, "put right");
            await db.SaveChangesAsync();
        });
    }

    public async Task RemoveAsync(Guid id)
    {
        await Family.WithDbAsync(async db =>
        {
            var (entry, newest) = (await db.EntryAsync(id, default))!.Value;
            entry.Remove(newest, Author, TestServer.Start.UtcDateTime, "written twice");
            await db.SaveChangesAsync();
        });
    }

    public string RecordsPath(string learner = "Linnet") => $"/records?learner={Learners[learner]}&year={YearId}";

    public string EntriesPath(string more = "") => $"/records/entries?learner={Linnet}&year={YearId}{more}";

    public string DayPath(string date) => $"/records/day/{Linnet}/{date}";

    public string FilePath(string ending, string learner = "Linnet") => $"/records/{Learners[learner]}/{YearId}/hours.{ending}";

    /// <summary>Minutes of a text such as <c>10:05</c>.</summary>
    public static int MinutesOf(string clock)
    {
        var parts = clock.Split(':');
        return int.Parse(parts[0], null) * 60 + int.Parse(parts[1], null);
    }

    private Author Author => new(Family.GuardianId, "Iris");

    private EntryFacts Facts(DateOnly date, int minutes, (string Subject, int Weight)[] split, string what, int? startsAt, Place place, string note, string[]? who) =>
        new(date, startsAt, what, place, note,
            [.. (who ?? ["Linnet"]).Select(w => new LearnerTime(Learners[w], new Minutes(minutes)))],
            [.. split.Where(s => s.Weight > 0).Select(s => new SubjectWeight(Subjects[s.Subject], s.Weight))],
            [.. split.Where(s => s.Weight == 0).Select(s => Subjects[s.Subject])]);
}
