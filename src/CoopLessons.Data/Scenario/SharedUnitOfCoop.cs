using CoopLessons.Core.Sharing;
using CoopLessons.Data.Coops.Sharing;
using CoopLessons.Data.Tenancy;
using CoopLessons.Data.Units;
using Microsoft.EntityFrameworkCore;
using Microsoft.Extensions.DependencyInjection;

namespace CoopLessons.Data.Scenario;

/// <summary>
/// The first family prepared a unit for all and published it twice: the second family has both, the third the first one with
/// a change of its own, which it offers back.
/// </summary>
internal sealed class SharedUnitOfCoop(IServiceProvider services, Guid coopId, IReadOnlyList<LoadedFamily> families, DateTime now)
{
    private const string File = "where-water-goes";
    private const string Longer = "w4-04-floods";
    private const string Shorter = "w2-06-the-river-bank";

    public async Task WriteAsync(CancellationToken ct)
    {
        await using var scope = Scope(0);
        var db = scope.ServiceProvider.GetRequiredService<AppDb>();
        var unit = await UnitAsync(db, ct);
        var (first, second) = await PublishAsync(db, unit, ct);
        await TakeUpAsync(1, second, bend: false, ct);
        await TakeUpAsync(2, first, bend: true, ct);
    }

    private async Task<(SharedRevision First, SharedRevision Second)> PublishAsync(AppDb db, Unit unit, CancellationToken ct)
    {
        var mine = await db.CoopFamilies.SingleAsync(f => f.CoopId == coopId && f.FamilyId == families[0].FamilyId, ct);
        var shared = new SharedUnit(coopId, mine, unit);
        var subjects = await db.Subjects.ToListAsync(ct);
        var first = shared.Publish(mine, PublishedBundle.Of(UnitTravel.ToBundle(unit, subjects)), "Everything that must dry or drip stands early in its week.", now.AddMonths(2));
        Take(unit, Longer, 75);
        var second = shared.Publish(mine, PublishedBundle.Of(UnitTravel.ToBundle(unit, subjects)), "The floods took us longer than we thought.", now.AddMonths(5));
        db.AddRange(shared, first, second);
        await db.SaveChangesAsync(ct);
        return (first, second);
    }

    /// <summary>The family's own copy of the unit is told where it came from.</summary>
    private async Task TakeUpAsync(int family, SharedRevision revision, bool bend, CancellationToken ct)
    {
        await using var scope = Scope(family);
        var db = scope.ServiceProvider.GetRequiredService<AppDb>();
        var unit = await UnitAsync(db, ct);
        if (bend)
            Take(unit, Shorter, 20);
        else
            Take(unit, Longer, 75);
        var met = await MetSubjects.OfAsync(db, new Dictionary<string, Guid>(), ct);
        met.InOwn(revision.Bundle.Content);
        var origin = new UnitOrigin(unit.Id, revision.SharedUnitId, revision.Bundle, met.Ids);
        origin.ComeFrom(revision.Author, coopId, revision.Number);
        db.UnitOrigins.Add(origin);
        await TakingUp.ReachAsync(db, revision, revision.At.AddDays(2), ct);
        await db.SaveChangesAsync(ct);
        if (!bend)
            return;
        var offering = (await Offering.FindAsync(db, unit.Id, ct))!;
        var mine = await db.CoopFamilies.SingleAsync(f => f.CoopId == coopId && f.FamilyId == families[family].FamilyId, ct);
        UnitSpot[] spots = [.. offering.Change.Differences.Select(d => d.Spot).Where(s => s.Activity == Shorter)];
        db.OfferedChanges.Add(new OfferedChange(revision, mine, Guid.CreateVersion7(), PublishedBundle.Of(offering.With(spots).Merged), "We halved the reading for the young ones, and nobody lost the thread.", revision.At.AddDays(20)));
        await db.SaveChangesAsync(ct);
    }

    private AsyncServiceScope Scope(int family)
    {
        var scope = services.CreateAsyncScope();
        var current = scope.ServiceProvider.GetRequiredService<CurrentFamily>();
        current.ActForProgram(families[family].FamilyId);
        current.Enter(coopId);
        return scope;
    }

    private static Task<Unit> UnitAsync(AppDb db, CancellationToken ct)
    {
        var title = ScenarioFiles.Units[File].Title;
        return db.Units.Include(u => u.Subjects).Include(u => u.Activities).AsSplitQuery().SingleAsync(u => u.Title == title, ct);
    }

    private static void Take(Unit unit, string code, int minutes)
    {
        var activity = unit.Activities.Single(a => a.Code == code);
        activity.Describe(new ActivityFacts(activity.Week, activity.Order, activity.Title, activity.Kind, activity.Does, activity.AdultNeed, minutes, activity.WaitingMinutes, activity.WaitingFor), activity.Details);
    }
}
