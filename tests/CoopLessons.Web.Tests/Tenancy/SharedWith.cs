using CoopLessons.Data;
using CoopLessons.Data.Coops;
using CoopLessons.Data.Coops.Sharing;
using CoopLessons.Data.Units;
using CoopLessons.Web.Tests.App;

namespace CoopLessons.Web.Tests.Tenancy;

/// <summary>A family's co-op, which it leads, and an invitation to it.</summary>
internal sealed class SharedWith(Guid familyId)
{
    public Guid Coop { get; } = Guid.CreateVersion7();

    public Guid Invitation { get; } = Guid.CreateVersion7();

    public Guid Offer { get; } = Guid.CreateVersion7();

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
        var bundle = PublishedBundle.Of(UnitTravel.ToBundle(unit, [.. db.Subjects.Local]));
        var shared = new SharedUnit(Coop, mine, unit);
        var revision = shared.Publish(mine, bundle, "", TestServer.Start.UtcDateTime);
        var offer = new OfferedChange(revision, mine, Offer, bundle, "It floats better with wax.", TestServer.Start.UtcDateTime);
        db.AddRange(shared, revision, offer, new UnitUse(Coop, familyId, unit.Id, TestServer.Start.UtcDateTime));
        db.Add(new UnitOrigin(unit.Id, unit.Id, bundle, new Dictionary<string, Guid>()));
        db.Add(new ArrivedPack(unit.Id, new UnitPack(unit.Id, "Cedar", bundle, bundle, []), TestServer.Start.UtcDateTime));
    }
}
