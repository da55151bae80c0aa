using CoopLessons.Core.Prepare.Supplies;
using CoopLessons.Data;
using CoopLessons.Data.Prepare.Supplies;
using CoopLessons.Web.Tests.App;

namespace CoopLessons.Web.Tests.Tenancy;

/// <summary>One of everything with which a family gathers its supplies.</summary>
internal sealed class GatheredWith(Guid familyId)
{
    private readonly Good _flour = new(familyId, "Flour");

    public Guid Good => _flour.Id;
    public Guid Swap { get; } = Guid.CreateVersion7();
    public Guid Listed { get; } = Guid.CreateVersion7();

    public void AddTo(AppDb db, Guid activityId)
    {
        var (week, pound) = (Core.Calendar.Week.Of(TestServer.Today).Iso, new Amount(1, Measures.PoundAvoirdupois));
        _flour.Describe(new GoodFacts("Flour", new Pack(5, Measures.PoundAvoirdupois, 329), "Baking aisle", null, null, false, null));
        db.Add(_flour);
        db.Add(new Swap(Swap, Good, null, new SwapFacts("Rice flour", 1, null)));
        db.Add(new ShelfCount(Guid.CreateVersion7(), Good, TestServer.Today.AddDays(-2), TestServer.Start.UtcDateTime, pound));
        db.Add(new Purchase(Guid.CreateVersion7(), Good, pound, 329, TestServer.Today.AddDays(-1), TestServer.Start.UtcDateTime, week, [new PurchaseNeed(activityId, "Fold a boat", Guid.CreateVersion7(), "Boats", 1)]));
        db.Add(new ShopTick(week, Good));
        db.Add(new ListedByHand(Listed, week, Good, new Amount(20, Measures.PoundAvoirdupois)));
    }
}
