using CoopLessons.Core.Coop;
using CoopLessons.Data;
using CoopLessons.Data.Coops;
using CoopLessons.Data.Coops.Days;
using CoopLessons.Data.Coops.Money;
using CoopLessons.Data.Coops.News;
using CoopLessons.Data.Coops.Sharing;
using CoopLessons.Data.Coops.Turns;
using CoopLessons.Data.Units;
using CoopLessons.Web.Tests.App;

namespace CoopLessons.Web.Tests.Tenancy;

/// <summary>A family's co-op, which it leads, an invitation to it, a meeting and a notice.</summary>
internal sealed class SharedWith(Guid familyId)
{
    public Guid Coop { get; } = Guid.CreateVersion7();

    public Guid Invitation { get; } = Guid.CreateVersion7();

    public Guid TurnMeeting { get; } = Guid.CreateVersion7();

    public Guid Role { get; } = Guid.CreateVersion7();

    public Guid Term { get; } = Guid.CreateVersion7();

    public Guid Expense { get; } = Guid.CreateVersion7();

    public Guid Payment { get; } = Guid.CreateVersion7();

    public Guid Fee { get; } = Guid.CreateVersion7();

    public Guid Offer { get; } = Guid.CreateVersion7();

    public Guid Meeting { get; } = Guid.CreateVersion7();

    public Guid Period { get; } = Guid.CreateVersion7();

    public Guid Room { get; } = Guid.CreateVersion7();

    public Guid Adult { get; } = Guid.CreateVersion7();

    public Guid Class { get; } = Guid.CreateVersion7();

    public Guid Outing { get; } = Guid.CreateVersion7();

    public Guid Notice { get; } = Guid.CreateVersion7();

    /// <param name="unit">That the family publishes, and to which it offers a change itself.</param>
    public void AddTo(AppDb db, Guid learnerId, Unit unit)
    {
        db.Current.Enter(Coop);
        db.Add(new Coop(Coop, "Millrace", TestServer.Start.UtcDateTime));
        var mine = new CoopFamily(Coop, familyId, "Alder", CoopPart.Leader, TestServer.Start.UtcDateTime);
        db.Add(mine);
        db.Add(new CoopInvitation(Coop, Invitation, CoopLessons.Data.Families.Invitation.NewSecret(), "Cedar", mine, TestServer.Start.UtcDateTime));
        db.Add(new ShownLearner(Coop, familyId, learnerId));
        db.Add(new ShownContact(Coop, familyId));
        AddUnit(db, mine, unit);
        AddDays(db, mine, learnerId);
        AddTurns(db);
        AddMoney(db);
    }

    private void AddUnit(AppDb db, CoopFamily mine, Unit unit)
    {
        var bundle = PublishedBundle.Of(UnitTravel.ToBundle(unit, [.. db.Subjects.Local]));
        var shared = new SharedUnit(Coop, mine, unit);
        var revision = shared.Publish(mine, bundle, "", TestServer.Start.UtcDateTime);
        var offer = new OfferedChange(revision, mine, Offer, bundle, "It floats better with wax.", TestServer.Start.UtcDateTime);
        db.AddRange(shared, revision, offer, new UnitUse(Coop, familyId, unit.Id, TestServer.Start.UtcDateTime));
        db.Add(new UnitOrigin(unit.Id, unit.Id, bundle, new Dictionary<string, Guid>()));
        db.Add(new ArrivedPack(unit.Id, new UnitPack(unit.Id, "Cedar", bundle, bundle, []), TestServer.Start.UtcDateTime));
    }

    private void AddDays(AppDb db, CoopFamily mine, Guid learnerId)
    {
        db.Add(new CoopMeeting(Coop, Meeting, TestServer.Today, "the mill house"));
        db.Add(new CoopPeriod(Coop, Period, new(10, 0), new(10, 50)));
        db.Add(new CoopRoom(Coop, Room, "the barn", null));
        db.Add(new CoopAdult(Coop, familyId, Adult, "Iris"));
        var facts = new ClassFacts("Ropes", "Knots and pulleys.", Period, Room, 6, 9, 6, TestServer.Today.AddDays(-7), TestServer.Today.AddDays(70), false);
        var ropes = new CoopClass(Coop, Class, facts, ClassDetails.Empty with { Teachers = [Adult] });
        db.Add(ropes);
        db.Add(ClassListLine.Resize(ropes, 1, familyId, TestServer.Start.UtcDateTime));
        db.Add(ClassListLine.SignUp(ropes, 2, familyId, Guid.CreateVersion7(), [learnerId], TestServer.Start.UtcDateTime));
        db.Add(new AttendanceTaken(Coop, Guid.CreateVersion7(), new(Meeting, Class, TestServer.Today, "Ropes", 50, ["Science"], [learnerId], []), "Alder", TestServer.Start.UtcDateTime));
        db.Add(new BeenWord(Guid.CreateVersion7(), Class, learnerId, null, TestServer.Start.UtcDateTime));
        db.Add(new CoopOuting(Coop, Outing, new("The glass works", TestServer.Today.AddDays(14), "the glass works", "the mill house", new(9, 0), new(12, 0), "", 3, 500, 700, null)));
        var comes = new OutingAnswer(Coop, Outing, familyId);
        comes.Come([learnerId], [Adult]);
        db.Add(comes);
        db.Add(new CoopNotice(Coop, Notice, mine, "Bring boots", "The meadow is wet.", TestServer.Start.UtcDateTime, meetingId: Meeting));
        db.Add(new NewsSeen(Coop));
    }

    private void AddTurns(AppDb db)
    {
        var adult = new CoopAdult(Coop, familyId, Guid.CreateVersion7(), "Iris");
        var term = new TurnTerm(Coop, Term, TestServer.Today.AddDays(20), TestServer.Today.AddDays(80), "Alder", TestServer.Start.UtcDateTime);
        var room = Guid.CreateVersion7();
        db.Add(new CoopRoom(Coop, room, "the barn", null));
        db.Add(new CoopMeeting(Coop, TurnMeeting, TestServer.Today.AddDays(21), "the mill house"));
        db.Add(adult);
        db.Add(new TurnRole(Coop, Role, 0, new TurnRoleFacts("Teaching", 1, 1, room, ForAll: true, [])));
        db.Add(new CoverFigures(Coop, CoverRules.Usual));
        db.Add(new RoomChildren(Coop, room));
        db.Add(term);
        db.Add(new CoopTurn(term, TurnMeeting, Role, "Teaching", 1, new TurnTaker(adult.Id, "Iris", familyId, "Alder"), "Iris has “Teaching”."));
        db.Add(new TurnWish(adult, Role, liked: true));
        db.Add(new AdultAway(adult, TurnMeeting, "Alder"));
    }

    private void AddMoney(AppDb db)
    {
        var alder = new MoneyFamily(familyId, "Alder");
        var expense = new CoopExpense(Coop, Expense, "Flour", 4137, TestServer.Today, alder, SharedBy.Family, [new KeptShare(familyId, "Alder", 1, 4137)], alder, TestServer.Start.UtcDateTime);
        db.Add(expense);
        db.Add(expense.Attach([0xFF, 0xD8, 0xFF]));
        db.Add(new CoopPayment(Coop, Payment, alder, new MoneyFamily(Guid.CreateVersion7(), "Birch"), 100, TestServer.Today));
        db.Add(new CoopFee(Coop, Fee, "Dues", TestServer.Today, TestServer.Today.AddDays(80), new TermFee(2000, 0), TestServer.Today.AddDays(14), alder, [new FamilyFee(familyId, "Alder", 1, 2000)]));
    }
}
