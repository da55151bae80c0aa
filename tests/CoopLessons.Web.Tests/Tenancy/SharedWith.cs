using CoopLessons.Data;
using CoopLessons.Data.Coops;
using CoopLessons.Web.Tests.App;

namespace CoopLessons.Web.Tests.Tenancy;

/// <summary>A family's co-op, which it leads, and an invitation to it.</summary>
internal sealed class SharedWith(Guid familyId)
{
    public Guid Coop { get; } = Guid.CreateVersion7();

    public Guid Invitation { get; } = Guid.CreateVersion7();

    public void AddTo(AppDb db, Guid learnerId)
    {
        db.Current.Enter(Coop);
        db.Add(new Coop(Coop, "Millrace", TestServer.Start.UtcDateTime));
        var mine = new CoopFamily(Coop, familyId, "Alder", CoopPart.Leader, TestServer.Start.UtcDateTime);
        db.Add(mine);
        db.Add(new CoopInvitation(Coop, Invitation, CoopLessons.Data.Families.Invitation.NewSecret(), "Cedar", mine, TestServer.Start.UtcDateTime));
        db.Add(new ShownLearner(Coop, familyId, learnerId));
        db.Add(new ShownContact(Coop, familyId));
    }
}
