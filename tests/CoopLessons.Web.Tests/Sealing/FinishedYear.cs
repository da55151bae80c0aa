using CoopLessons.Core.Calendar;
using CoopLessons.Core.Families;
using CoopLessons.Core.Hours;
using CoopLessons.Core.Prepare.Books;
using CoopLessons.Core.Units;
using CoopLessons.Data;
using CoopLessons.Data.Evidence;
using CoopLessons.Data.Families;
using CoopLessons.Data.Files;
using CoopLessons.Data.Hours;
using CoopLessons.Data.Log;
using CoopLessons.Data.Prepare;
using CoopLessons.Data.Sealing;
using CoopLessons.Web.Tests.App;
using Microsoft.EntityFrameworkCore;

namespace CoopLessons.Web.Tests.Sealing;

/// <summary>A family of a test whose year 2024–25 is over, with something of everything that a record holds.</summary>
public sealed class FinishedYear
{
    public static readonly DateOnly Monday = new(2025, 3, 3);
    public static readonly DateOnly Sealed = new(2026, 3, 12);
    private static readonly DateTime Then = new(2025, 3, 3, 20, 0, 0, DateTimeKind.Utc);

    private FinishedYear(TestFamily family) => Family = family;

    public TestFamily Family { get; }
    public Visitor Guardian => Family.Guardian;
    public Guid YearId { get; } = Guid.CreateVersion7();
    public Guid Wren { get; } = Guid.CreateVersion7();
    public Guid Linnet { get; } = Guid.CreateVersion7();

    /// <summary>40 minutes of both children on the Monday.</summary>
    public Guid Bread { get; } = Guid.CreateVersion7();
    public Guid Piece { get; } = Guid.CreateVersion7();
    public Guid Book { get; } = Guid.CreateVersion7();
    public Guid Meeting { get; } = Guid.CreateVersion7();
    public Guid Science { get; private set; }
    public Guid Reading { get; private set; }
    public Author Author => new(Family.GuardianId, "Iris");

    public string Page => $"/records/sealing/{YearId}";

    public static async Task<FinishedYear> MakeAsync(TestServer server, bool isSealed = true, string name = "Alder", string wren = "Wren")
    {
        var made = new FinishedYear(await server.FamilyAsync(name));
        await made.Family.WithDbAsync(db => made.FillAsync(db, wren));
        if (isSealed)
            await made.SealAsync();
        return made;
    }

    public Task SealAsync() => Family.WithDbAsync(async db =>
    {
        var year = await db.SchoolYears.Include(y => y.Breaks).SingleAsync(y => y.Id == YearId);
        Assert.True(await db.SealAsync(year, Author, Sealed, TestServer.Start.UtcDateTime, default));
    });

    /// <summary>What the sealed year holds against the log, of one child.</summary>
    public Task<SealCheck> CheckAsync(Guid learner) => Family.FromDbAsync(async db => await db.CheckAsync(await db.SealedYears.SingleAsync(), learner, default));

    public EntryFacts Facts(DateOnly date, int minutes, params Guid[] who) =>
        new(date, null, "Baked bread", Place.Home, "", [.. who.Select(w => new LearnerTime(w, new Minutes(minutes)))], [new SubjectWeight(Science, 2), new SubjectWeight(Reading, 1)], []);

    /// <summary>Changes a row behind the program, as somebody with a tool for databases would.</summary>
    public async Task BehindAsync<T>(string set, string where)
    {
        await Family.WithDbAsync(async db =>
        {
            var table = db.Model.FindEntityType(typeof(T))!.GetTableName();
            // Table, values and condition are this test's own words; names of tables and columns cannot be parameters.
#pragma warning disable EF1002
            var rows = await db.Database.ExecuteSqlRawAsync($"UPDATE \"{table}\" SET {set} WHERE {where}");
#pragma warning restore EF1002
            Assert.True(rows > 0, "Nothing was changed.");
        });
    }

    /// <summary>An id as this database writes it in SQL.</summary>
    public static string Sql(Guid id) => TestDatabase.IsPostgres ? $"'{id}'" : $"'{id.ToString().ToUpperInvariant()}'";

    /// <summary>A late correction of the bread by the program itself: 45 minutes instead of 40 for both.</summary>
    public Task AmendAsync(int minutes = 45, string why = "The clock was wrong") => Family.WithDbAsync(async db =>
    {
        db.Late = new LateCorrection(why, Author, Sealed, TestServer.Start.UtcDateTime);
        var (entry, _) = (await db.EntryAsync(Bread, default))!.Value;
        entry.Change(Facts(Monday, minutes, Wren, Linnet), Author, TestServer.Start.UtcDateTime, "put right");
        await db.SaveChangesAsync();
    });

    private async Task FillAsync(AppDb db, string wren)
    {
        var subjects = await db.Subjects.ToDictionaryAsync(s => s.Code, s => s.Id);
        (Science, Reading) = (subjects["science"], subjects["reading"]);
        db.SchoolYears.Add(new SchoolYear(YearId, "2024–25", new DayRange(new DateOnly(2024, 7, 1), new DateOnly(2025, 6, 30)), Weekdays.MondayToFriday));
        db.Learners.AddRange(new Learner(Wren, wren, new DateOnly(2014, 5, 2), 0), new Learner(Linnet, "Linnet", new DateOnly(2016, 5, 2), 1));
        db.LogEntries.Add(LogEntry.Write(Bread, Facts(Monday, 40, Wren, Linnet), Author, Then));
        db.LogEntries.Add(LogEntry.Write(Guid.CreateVersion7(), Facts(Monday.AddDays(1), 55, Linnet) with { What = "Read by the brook", StartsAt = 9 * 60, Touches = [subjects["art"]] }, new Author(Family.GuardianId, "Iris", Then.AddHours(-2)), Then));
        db.DayMarks.Add(new DayMark(Wren, Monday, true, "Iris", Then));
        db.Books.Add(new BookTitle(Book, new BookFacts("The Miller’s Year", "I. Alder", "", BookMeasure.Pages, null, "", BookSource.Own, "", null, "")));
        db.BookMeetings.Add(new BookMeeting(Meeting, Book, new MeetingFacts([Wren, Linnet], BookUse.Heard, Monday, null, false, "")));
        var file = new StoredFile(new string('e', 64), StoredKind.Jpeg, 1000, 1, "Iris", Then);
        db.StoredFiles.Add(file);
        db.Pieces.Add(new Piece(Piece, PieceKind.Photo, new PieceFiles("loaf.jpg", file), null, new PieceFacts(Monday, [Wren], Science, Bread, "My loaf"), Author, Then));
        await db.SaveChangesAsync();
    }
}
