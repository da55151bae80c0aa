using CoopLessons.Data;
using CoopLessons.Data.Families;
using CoopLessons.Data.Log;
using CoopLessons.Data.Log.Sheets;
using CoopLessons.Data.Notices;
using CoopLessons.Data.OwnLists;
using CoopLessons.Web.Tests.App;

namespace CoopLessons.Web.Tests.Tenancy;

/// <summary>A child's list, a tablet on which it is open, what the child said, and a device that takes notices.</summary>
internal sealed class ListedWith
{
    public Guid Tablet { get; } = Guid.CreateVersion7();
    public Guid Said { get; } = Guid.CreateVersion7();
    public Guid Device { get; } = Guid.CreateVersion7();
    public Guid Sheet { get; } = Guid.CreateVersion7();
    public Guid Import { get; } = Guid.CreateVersion7();
    public string Key { get; } = CoopLessons.Data.Families.Invitation.NewSecret();

    public void AddTo(AppDb db, Guid learnerId, Guid sessionId, Guid guardianId)
    {
        var now = TestServer.Start.UtcDateTime;
        var list = new OwnList(learnerId);
        list.Describe(true, ReadingLevel.AllWords);
        db.Add(list);
        var tablet = FamilyTablet.Shared(Tablet, Invitation.Hash(Key), guardianId, "", [learnerId], now);
        tablet.Open(learnerId, now);
        db.Add(tablet);
        db.Add(new ChildSaid(Said, new SaidFacts(learnerId, sessionId, "Fold a boat", TestServer.Today, null, "It swims.", "", []), now));
        var device = new NoticeDevice(Device, guardianId, $"https://push.millrace.example/{Device}", new byte[NoticeDevice.KeyBytes], new byte[NoticeDevice.SecretBytes], "", now);
        db.Add(device);
        db.Add(new NoticeChoice(guardianId));
        db.Add(new SentNotice(device, "wait", now));
        db.Add(new BroughtSheet(Sheet, "kites.csv", "date,what,minutes\n2026-03-02,Kites,40\n"u8.ToArray(), now));
        db.Add(new LogImport(Import, "boats.csv", new Author(guardianId, "Iris"), now, [2, 3], 1, 0));
    }

    /// <summary>A browser on the tablet.</summary>
    public Visitor On(TestServer server)
    {
        var visitor = server.Visitor();
        visitor.SetCookie("cooplessons-tablet", Key);
        return visitor;
    }
}
