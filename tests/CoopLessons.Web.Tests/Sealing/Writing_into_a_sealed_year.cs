using CoopLessons.Core.Calendar;
using CoopLessons.Core.Hours;
using CoopLessons.Core.Units;
using CoopLessons.Data;
using CoopLessons.Data.Evidence;
using CoopLessons.Data.Families;
using CoopLessons.Data.Hours;
using CoopLessons.Data.Log;
using CoopLessons.Data.Planning;
using CoopLessons.Data.Prepare;
using CoopLessons.Data.Schedule;
using CoopLessons.Data.Sealing;
using CoopLessons.Web.Tests.App;
using Microsoft.EntityFrameworkCore;

namespace CoopLessons.Web.Tests.Sealing;

[Collection(SharedServer.Name)]
public sealed class Writing_into_a_sealed_year(TestServer server)
{
    private static readonly DateTime Now = TestServer.Start.UtcDateTime;
    private static readonly DateOnly Open = TestServer.Today;

    /// <summary>Every way by which a row could change what was sealed.</summary>
    private static readonly Dictionary<string, Func<FinishedYear, AppDb, Task>> Ways = new()
    {
        ["a new entry"] = (y, db) => Do(() => db.LogEntries.Add(LogEntry.Write(Guid.CreateVersion7(), y.Facts(FinishedYear.Monday, 10, y.Wren), y.Author, Now))),
        ["an entry changed"] = (y, db) => EntryAsync(y, db, (e, _) => e.Change(y.Facts(FinishedYear.Monday, 41, y.Wren, y.Linnet), y.Author, Now, "")),
        ["an entry moved out"] = (y, db) => EntryAsync(y, db, (e, _) => e.Change(y.Facts(Open, 40, y.Wren, y.Linnet), y.Author, Now, "")),
        ["an entry removed"] = (y, db) => EntryAsync(y, db, (e, n) => e.Remove(n, y.Author, Now, "")),
        ["another writing set beside"] = (y, db) => EntryAsync(y, db, (e, _) => e.SetAside(y.Facts(FinishedYear.Monday, 41, y.Wren), y.Author, Now, "")),
        ["a day marked"] = (y, db) => Do(() => db.DayMarks.Add(new DayMark(y.Linnet, FinishedYear.Monday, false, "Iris", Now))),
        ["a mark changed"] = async (y, db) => (await db.DayMarks.SingleAsync()).Set(false, "Iris", Now),
        ["a mark removed"] = async (y, db) => db.DayMarks.Remove(await db.DayMarks.SingleAsync()),
        ["a piece brought"] = async (y, db) => db.Pieces.Add(new Piece(Guid.CreateVersion7(), PieceKind.Photo, new PieceFiles("x.jpg", await db.StoredFiles.SingleAsync()), null, new PieceFacts(FinishedYear.Monday, [y.Wren], null, null, ""), y.Author, Now)),
        ["a caption changed"] = (y, db) => PieceAsync(db, p => p.Describe(p.Facts with { Caption = "Our loaf" })),
        ["a piece given to another child"] = (y, db) => PieceAsync(db, p => p.Describe(p.Facts with { Learners = [y.Linnet] })),
        ["a piece moved out"] = (y, db) => PieceAsync(db, p => p.Describe(p.Facts with { Date = Open })),
        ["a piece removed"] = (y, db) => PieceAsync(db, p => p.Remove(Now)),
        ["a book met"] = (y, db) => Do(() => db.BookMeetings.Add(new BookMeeting(Guid.CreateVersion7(), y.Book, new MeetingFacts([y.Wren], BookUse.ReadAlone, FinishedYear.Monday, FinishedYear.Monday, false, "")))),
        ["a book ended within the year"] = async (y, db) => (await db.BookMeetings.SingleAsync()).Finish(FinishedYear.Monday.AddDays(3)),
        ["a book no longer met"] = async (y, db) => db.BookMeetings.Remove(await db.BookMeetings.SingleAsync()),
        ["a book renamed"] = async (y, db) => { var book = await db.Books.SingleAsync(); book.Describe(book.Facts with { Title = "Another" }); },
        ["a subject renamed"] = async (y, db) => (await db.Subjects.SingleAsync(s => s.Id == y.Science)).Rename("Physics"),
        ["subjects put in another order"] = async (y, db) => (await db.Subjects.SingleAsync(s => s.Id == y.Reading)).StandAt(99),
        ["the year renamed"] = async (y, db) => { var year = await YearAsync(y, db); year.Describe("The first", year.Days, year.Weekdays); },
        ["the year made shorter"] = async (y, db) => { var year = await YearAsync(y, db); year.Describe(year.Name, new DayRange(year.First, year.Last.AddDays(-1)), year.Weekdays); },
        ["a loop laid on its days"] = (y, db) =>
        {
            var loop = new LessonLoop(Guid.CreateVersion7(), new LoopFacts("Brook", [new LoopStep(Guid.CreateVersion7(), "Walk", y.Science)], 30, 1, [y.Wren], AdultNeed.Beside, true));
            db.Add(loop);
            db.PlannedSessions.Add(PlannedSession.OfLoop(Guid.CreateVersion7(), loop.Id, FinishedYear.Monday, null, 0, [y.Wren]));
            return Task.CompletedTask;
        },
    };

    public static TheoryData<string> AllWays => [.. Ways.Keys];

    [Theory]
    [MemberData(nameof(AllWays))]
    public async Task Is_refused(string way)
    {
        var year = await FinishedYear.MakeAsync(server);
        var refused = await Assert.ThrowsAsync<SealedYearException>(() => year.Family.WithDbAsync(async db =>
        {
            await Ways[way](year, db);
            await db.SaveChangesAsync();
        }));
        Assert.Equal((year.YearId, "2024–25", FinishedYear.Sealed), (refused.SchoolYearId, refused.YearName, refused.SealedOn));
        Assert.EndsWith(" the school year 2024–25, which was sealed on 12 March 2026. Nothing was saved.", refused.Message, StringComparison.Ordinal);
        Assert.True((await year.CheckAsync(year.Wren)).Holds);
        Assert.True((await year.CheckAsync(year.Linnet)).Holds);
    }

    [Fact]
    public async Task Is_not_refused_where_the_record_says_nothing_of_it()
    {
        var year = await FinishedYear.MakeAsync(server);
        await year.Family.WithDbAsync(async db =>
        {
            db.LogEntries.Add(LogEntry.Write(Guid.CreateVersion7(), year.Facts(Open, 10, year.Wren), year.Author, Now));
            db.Subjects.Add(new FamilySubject(Guid.CreateVersion7(), "bees", "Bees", 99));
            (await db.Subjects.SingleAsync(s => s.Code == "music")).Rename("Songs");
            (await db.Subjects.SingleAsync(s => s.Id == year.Science)).Retire();
            (await db.BookMeetings.SingleAsync()).Finish(Open);
            var piece = await db.Pieces.SingleAsync();
            piece.Describe(piece.Facts with { FacesOut = true, SetAside = true });
            var days = await YearAsync(year, db);
            days.AddBreak(Guid.CreateVersion7(), "Spring", new DayRange(FinishedYear.Monday, FinishedYear.Monday));
            (await db.Books.SingleAsync()).Describe((await db.Books.SingleAsync()).Facts with { Note = "on the low shelf" });
            await db.SaveChangesAsync();
        });
        Assert.True((await year.CheckAsync(year.Wren)).Holds);
    }

    [Fact]
    public async Task As_a_late_correction_becomes_an_amendment_of_each_child_whose_record_changes()
    {
        var year = await FinishedYear.MakeAsync(server);
        await year.AmendAsync();
        var amendments = await year.Family.FromDbAsync(db => db.Amendments.ToListAsync());
        Assert.Equal(2, amendments.Count);
        Assert.All(amendments, a =>
        {
            Assert.Equal((1, year.Bread, "The clock was wrong", "Iris", FinishedYear.Sealed), (a.Number, a.EntryId, a.Why, a.By, a.AmendedOn));
            Assert.Contains(new CoopLessons.Core.Sealing.RecordChange("3 March 2025, Baked bread", "40 minutes", "45"), a.Changes);
        });
        Assert.True((await year.CheckAsync(year.Wren)).Holds);
        await year.AmendAsync(50, "Once more");
        Assert.True((await year.CheckAsync(year.Wren)).Holds);
        Assert.Equal([1, 2], await year.Family.FromDbAsync(db => db.Amendments.Where(a => a.LearnerId == year.Wren).OrderBy(a => a.Number).Select(a => a.Number).ToListAsync()));
        await year.BehindAsync<LogTime>("\"Minutes\" = 51", $"\"EntryId\" = {FinishedYear.Sql(year.Bread)} AND \"Number\" = 3");
        Assert.Contains("3 March 2025, Baked bread: 50 minutes in the sealed record, 51 in the log now", (await year.CheckAsync(year.Wren)).Differences.Select(d => d.Sentence));
    }

    [Fact]
    public async Task That_is_a_correction_of_nothing_leaves_no_amendment()
    {
        var year = await FinishedYear.MakeAsync(server);
        await year.Family.WithDbAsync(async db =>
        {
            db.Late = new LateCorrection("no reason", year.Author, FinishedYear.Sealed, Now);
            db.LogEntries.Add(LogEntry.Write(Guid.CreateVersion7(), year.Facts(Open, 10, year.Wren), year.Author, Now));
            await db.SaveChangesAsync();
        });
        Assert.Equal(0, await year.Family.FromDbAsync(db => db.Amendments.CountAsync()));
    }

    [Fact]
    public async Task Is_no_correction_where_the_kept_record_was_changed_behind_it()
    {
        var year = await FinishedYear.MakeAsync(server);
        await year.BehindAsync<SealedRecord>("\"Text\" = replace(\"Text\", '\"minutes\":40', '\"minutes\":41')", $"\"LearnerId\" = {FinishedYear.Sql(year.Wren)}");
        await Assert.ThrowsAsync<SealedYearException>(() => year.AmendAsync());
        Assert.Equal(1, await year.Family.FromDbAsync(db => db.LogRevisions.CountAsync(r => r.EntryId == year.Bread)));
    }

    [Theory]
    [InlineData(typeof(SealedYear))]
    [InlineData(typeof(SealedRecord))]
    [InlineData(typeof(Amendment))]
    [InlineData(typeof(KnownMark))]
    public async Task Never_changes_what_was_kept(Type type)
    {
        var year = await FinishedYear.MakeAsync(server);
        await year.AmendAsync();
        await Assert.ThrowsAsync<InvalidOperationException>(() => year.Family.WithDbAsync(async db =>
        {
            object row = type.Name switch
            {
                nameof(SealedYear) => await db.SealedYears.FirstAsync(),
                nameof(SealedRecord) => await db.SealedRecords.FirstAsync(),
                nameof(Amendment) => await db.Amendments.FirstAsync(),
                _ => await db.KnownMarks.FirstAsync(),
            };
            db.Remove(row);
            await db.SaveChangesAsync();
        }));
    }

    private static Task Do(Action what)
    {
        what();
        return Task.CompletedTask;
    }

    private static async Task EntryAsync(FinishedYear year, AppDb db, Action<LogEntry, LogRevision> what)
    {
        var (entry, newest) = (await db.EntryAsync(year.Bread, default))!.Value;
        what(entry, newest);
    }

    private static async Task PieceAsync(AppDb db, Action<Piece> what) => what(await db.Pieces.SingleAsync());

    private static Task<SchoolYear> YearAsync(FinishedYear year, AppDb db) => db.SchoolYears.SingleAsync(y => y.Id == year.YearId);
}
