using CoopLessons.Core.Calendar;
using CoopLessons.Core.Hours;
using CoopLessons.Core.Requirements;
using CoopLessons.Core.Units;
using CoopLessons.Data;
using CoopLessons.Data.Evidence;
using CoopLessons.Data.Families;
using CoopLessons.Data.Files;
using CoopLessons.Data.Hours;
using CoopLessons.Data.Log;
using CoopLessons.Data.Planning;
using CoopLessons.Data.Prepare.Printing;
using CoopLessons.Data.Requirements;
using CoopLessons.Data.Schedule;
using CoopLessons.Data.Tenancy;
using CoopLessons.Data.Units;
using CoopLessons.Web.Security;
using CoopLessons.Web.Tests.App;
using CoopLessons.Web.Tests.Law;
using Microsoft.EntityFrameworkCore;

namespace CoopLessons.Web.Tests.Tenancy;

/// <summary>A family with one of everything that has an id.</summary>
internal sealed record Furnished(
    TestFamily Family, Guid Learner, Guid Subject, Guid Year, Guid Break, Guid Unit, Guid Activity, Guid Session, Guid Entry, Guid Invitation,
    Guid LearnerPathway, Guid OwnPathway, Guid LegalEvent, Guid CalendarAddress, PlannedWith Plan, Guid Step, BookedWith Books,
    GatheredWith Gathered, Guid PrintSource, Guid Spell, Guid Piece, ListedWith Lists, SharedWith Shared, CreditedWith Credits)
{
    public static async Task<Furnished> MakeAsync(TestServer server, string name)
    {
        var family = await server.FamilyAsync(name);
        var ids = Enumerable.Range(0, 15).Select(_ => Guid.CreateVersion7()).ToArray();
        var plan = new PlannedWith();
        var books = new BookedWith();
        var gathered = new GatheredWith(family.Id);
        var lists = new ListedWith();
        var shared = new SharedWith(family.Id);
        var credits = new CreditedWith();
        Guid subjectId = default, yearId = default;
        await family.WithDbAsync(async db =>
        {
            var author = new Author(family.GuardianId, "Iris");
            var subject = await db.Subjects.OrderBy(s => s.Order).FirstAsync();
            var year = await db.SchoolYears.Include(y => y.Breaks).FirstAsync();
            (subjectId, yearId) = (subject.Id, year.Id);
            year.AddBreak(ids[0], "Spring", new DayRange(new DateOnly(2026, 3, 16), new DateOnly(2026, 3, 20)));
            var learner = new Learner(ids[1], "Wren", new DateOnly(2017, 5, 1), 0);
            db.Add(learner);
            var unit = new Unit(ids[2], "Boats", "Boats of paper and bark.", 4);
            var facts = new ActivityFacts(1, 1, "Fold a boat", ActivityKind.Making, "Fold it, and see how much it carries.", AdultNeed.Beside, 30, 0, "");
            unit.Add(new Activity(ids[3], "fold-a-boat", facts, ActivityDetails.Empty with { Subjects = [new ActivitySubject(subject.Id, 1)] }));
            unit.Take(new DateOnly(2026, 3, 9));
            db.Add(unit);
            db.Add(new PlannedSession(ids[4], ids[3], TestServer.Today, 9 * 60, 0, [learner.Id]));
            db.Add(LogEntry.Write(ids[5], new EntryFacts(TestServer.Today, null, "Sang", Place.Home, "", [new LearnerTime(learner.Id, new Minutes(20))], [new SubjectWeight(subject.Id, 1)], []), author, TestServer.Start.UtcDateTime));
            db.Add(new DayMark(learner.Id, new DateOnly(2026, 3, 12), true, "Iris", TestServer.Start.UtcDateTime));
            db.Add(new Invitation(ids[6], CoopLessons.Data.Families.Invitation.NewSecret(), "Basil", Role.Helper, family.GuardianId, "Iris", TestServer.Start.UtcDateTime));
            AddLaw(db, learner.Id, year.Id, subject.Id, ids[7..11]);
            plan.AddTo(db, learner.Id, subject.Id);
            books.AddTo(db, learner.Id);
            gathered.AddTo(db, ids[3]);
            lists.AddTo(db, ids[1], ids[4], family.GuardianId);
            shared.AddTo(db, ids[1], unit);
            await PlanStep.TakeAsync(db, ids[11], new PlanProposal("Thursday 12 March fell through: let go", [], [], [], []), author, TestServer.Start.UtcDateTime, default);
            AddPrint(db, ids[3], ids[12], author);
            var spell = new IllSpell(ids[13], new DateOnly(2026, 3, 2), [learner.Id], author, TestServer.Start.UtcDateTime);
            spell.End(new DateOnly(2026, 3, 4));
            db.Add(spell);
            AddPiece(db, ids[14], learner.Id, subject.Id, ids[5], author);
            db.Add(new Portfolio(learner.Id, year.Id));
            // A number of its own is not needed: nothing else of a report is looked up by it.
            db.Add(new ReaderLink(year.Id, Guid.NewGuid().ToString("N"), learner.Id, year.Id, "M. Plover", [PortfolioPart.Days], TestServer.Today.AddDays(30), TestServer.Start.UtcDateTime));
            db.Add(new ReaderLook(year.Id, year.Id, "the page", TestServer.Start.UtcDateTime));
            db.Add(new TermReport(year.Id, learner.Id, year.Id, TermsOfYear.Own(year, 1, 1)!));
            credits.AddTo(db, learner.Id, subject.Id, ids[5], ids[14]);
            await db.SaveChangesAsync();
        });
        return new Furnished(family, ids[1], subjectId, yearId, ids[0], ids[2], ids[3], ids[4], ids[5], ids[6], ids[7], ids[8], ids[9], ids[10], plan, ids[11], books, gathered, ids[12], ids[13], ids[14], lists, shared, credits);
    }

    private static void AddLaw(AppDb db, Guid learnerId, Guid yearId, Guid subjectId, Guid[] ids)
    {
        var own = new OwnPathway(ids[1], OwnPathways.Small("Our own way"));
        db.Add(own);
        db.Add(new LearnerPathway(ids[0], learnerId, own, new DateOnly(2025, 7, 1), SpanReason.Begins));
        db.Add(new LearnerGrade(learnerId, yearId, 3));
        db.Add(new SubjectReading("", own.Id.ToString(), "reading", subjectId, true));
        db.Add(new RecordedLegalEvent(ids[2], learnerId, CoopLessons.Core.Requirements.LegalEvent.FormReceived, new DateOnly(2025, 9, 2)));
        var mark = new DutyMark(learnerId, yearId, $"/{own.Id}/notice/1");
        mark.Done(new DateOnly(2025, 9, 3));
        db.Add(mark);
        db.Add(new CalendarAddress(ids[3], CoopLessons.Data.Families.Invitation.NewSecret(), withNames: false, TestServer.Start.UtcDateTime));
    }

    private static void AddPrint(AppDb db, Guid activityId, Guid sourceId, Author author)
    {
        var file = new StoredFile(new string('a', 64), StoredKind.Pdf, 1000, 2, author.Name, TestServer.Start.UtcDateTime);
        db.Add(file);
        db.Add(new PrintSource(sourceId, activityId, "How to fold a boat", file, "boat.pdf"));
        db.Add(new PrintHabits());
        db.Add(new PrintedPacket(Guid.CreateVersion7(), CoopLessons.Core.Calendar.Week.Of(TestServer.Today), [], author, TestServer.Start.UtcDateTime));
    }

    private static void AddPiece(AppDb db, Guid id, Guid learnerId, Guid subjectId, Guid entryId, Author author)
    {
        StoredFile File(char name) => new(new string(name, 64), StoredKind.Jpeg, 1000, 1, author.Name, TestServer.Start.UtcDateTime);
        var files = new PieceFiles("boat.jpg", File('b'), File('c'), File('d'));
        db.AddRange(files.Shown, files.Small!, files.Original!);
        db.Add(new Piece(id, PieceKind.Photo, files, null, new PieceFacts(TestServer.Today, [learnerId], subjectId, entryId, "It floats"), author, TestServer.Start.UtcDateTime));
    }

    /// <summary>Who opens a page: the guardian, or the child on the family's tablet where it is for nobody else.</summary>
    public Visitor Opener(string page) =>
        Access.Table.First(row => page.StartsWith(row.Folder + "/", StringComparison.Ordinal)).Policy is Access.Tablet or Access.Learner ? Lists.On(Family.Server) : Family.Guardian;

    /// <summary>The id that a page means by a name.</summary>
    public Guid IdFor(string page, string name) => (name.ToLowerInvariant(), page) switch
    {
        ("learner" or "learnerid", _) => Learner,
        ("subject" or "subjectid", _) => Subject,
        ("year" or "yearid", _) => Year,
        ("breakid", _) => Break,
        ("unitid", _) => Unit,
        ("activity" or "activityid", _) => Activity,
        ("session" or "sessionid" or "just", _) => Session,
        ("entryid" or "entry", _) => Entry,
        ("personid", _) => Family.GuardianId,
        ("familyid" or "memberid", _) => Family.Id,
        ("coopid", _) => Shared.Coop,
        ("sharedid", _) => Unit,
        ("offerid", _) => Shared.Offer,
        ("meetingid", _) when page.StartsWith("/Coop/Turns/", StringComparison.Ordinal) => Shared.TurnMeeting,
        ("meetingid", _) => Shared.Meeting,
        ("noticeid", _) => Shared.Notice,
        ("roleid", _) => Shared.Role,
        ("termid", _) => Shared.Term,
        ("expenseid", _) => Shared.Expense,
        ("paymentid", _) => Shared.Payment,
        ("feeid", _) => Shared.Fee,
        ("payeeid" or "payerid", _) => Family.Id,
        ("invitationid", _) => Shared.Invitation,
        ("periodid", _) => Shared.Period,
        ("roomid", _) => Shared.Room,
        ("adultid", _) => Shared.Adult,
        ("classid", _) => Shared.Class,
        ("outingid", _) => Shared.Outing,
        ("eventid", _) => LegalEvent,
        ("pathwayid", _) => OwnPathway,
        ("owner", _) => Learner,
        ("goodid", _) => Gathered.Good,
        ("swapid", _) => Gathered.Swap,
        ("item", "/Week/Shopping/Index") => Gathered.Listed,
        ("sourceid", _) => PrintSource,
        ("spellid" or "ill", _) => Spell,
        ("early" or "late", "/Records/Portfolio/Pair") => Piece,
        ("linkid", _) => Year,
        ("pieceid", _) => Piece,
        ("id", "/Records/Terms/Term" or "/Records/Terms/File") => Year,
        ("appointment" or "appointmentid", _) => Plan.Appointment,
        ("bookid", _) or ("id", "/Week/Books/Book") => Books.Book,
        ("id", "/Week/Books/Card") => Books.Card,
        ("id", "/Week/Books/Meeting") => Books.Meeting,
        ("sitting" or "sittingid", _) => Books.Sitting,
        ("id", "/Week/Plan/Course") => Plan.Course,
        ("id", "/Week/Plan/Loop") => Plan.Loop,
        ("id", "/Week/Plan/Appointment") => Plan.Appointment,
        ("id", "/Week/Plan/Adult") => Plan.Adult,
        ("id", "/Week/Plan/Wish") => Plan.Wish,
        ("step", "/Week/Index") or ("stepid", _) => Step,
        ("said" or "saidid", _) => Lists.Said,
        ("sheetid", _) => Lists.Sheet,
        ("importid", _) => Lists.Import,
        ("tabletid", _) => Lists.Tablet,
        ("deviceid", _) => Lists.Device,
        ("courseid", _) or ("id", "/Records/HighSchool/Terms") => Credits.Course,
        ("ruleid", _) => Credits.Rule,
        ("id", "/Records/HighSchool/Other") => Credits.Study,
        ("id", "/Records/Tests/Assessment") => Credits.Assessment,
        ("id", "/Family/Law/Span") => LearnerPathway,
        ("id", "/Family/Law/OwnPathway") => OwnPathway,
        ("id", "/Family/Learner") => Learner,
        ("id", "/Family/Year") => Year,
        ("id", "/Family/Subjects") => Subject,
        ("id", "/Family/People") => Invitation,
        ("id", _) when page.StartsWith("/Units/", StringComparison.Ordinal) => Unit,
        ("id", _) when page.StartsWith("/Evidence/", StringComparison.Ordinal) => Piece,
        ("id", _) when page.StartsWith("/Log/", StringComparison.Ordinal) => Entry,
        _ => throw new InvalidOperationException($"{page} takes an id “{name}” that this test does not know: say here what it means."),
    };

    /// <summary>
    /// Whether the page makes the id itself. The number of a job is no row's: another family's answers like one that the server
    /// forgot, and the tests of layouts hold that by themselves.
    /// </summary>
    public static bool IsMinted(string page, string name) => (page.StartsWith("/Week/Plan/", StringComparison.Ordinal) || page.StartsWith("/Week/Books/", StringComparison.Ordinal) || page.StartsWith("/Week/Reading/", StringComparison.Ordinal) || page.StartsWith("/Records/HighSchool/", StringComparison.Ordinal) || page.StartsWith("/Records/Tests/", StringComparison.Ordinal)) && name == "NewId" || (page, name.ToLowerInvariant()) is
        ("/Family/NewLearner" or "/Family/NewYear" or "/Family/Law/NewOwnPathway", "id") or ("/Evidence/New" or "/Evidence/Parts" or "/Evidence/Take" or "/Mine/Index", "id")
        or ("/Units/Index" or "/Units/TakeIn", "unitid") or ("/Today/Index" or "/Log/New" or "/Family/Lists/Said", "entryid") or ("/Week/Ill/Index" or "/Records/Bring/Index", "newid")
        or ("/Records/Terms/Index" or "/Records/Readers/Index", "newid") or ("/Units/Offer", "offerid") or ("/Coop/Found" or "/Coop/Families" or "/Coop/Money/Index", "newid") or ("/Coop/Turns/New" or "/Coop/Turns/Meeting", "step" or "job") or ("/Week/Packet/Index", "printing") or ("/Week/Layout/Index" or "/Week/Ways/Lost" or "/Week/Ways/Appointment" or "/Week/Ways/Longer", "step" or "job");
}
