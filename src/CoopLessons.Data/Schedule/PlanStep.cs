using CoopLessons.Core.Schedule;
using CoopLessons.Data.Log;
using CoopLessons.Data.Tenancy;
using CoopLessons.Data.Units;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;

namespace CoopLessons.Data.Schedule;

/// <summary>
/// One step of a family's planning that changed many things at once: a laid-out week, a lost day. It keeps what it changed
/// from what, so that it can be undone as a whole, on whatever day, as long as nothing of it was changed since.
/// </summary>
public sealed class PlanStep : IFamilyOwned, IVersioned
{
    public const int LongestTitle = 200;

    private PlanStep() { }

    public Guid FamilyId { get; private set; }
    public Guid Id { get; private set; }
    public string Title { get; private set; } = "";
    public DateTime TakenAt { get; private set; }
    public string By { get; private set; } = "";
    public List<PlanChange> Changes { get; private set; } = [];
    public List<AddedSession> Added { get; private set; } = [];
    public List<UnitMove> Units { get; private set; } = [];

    /// <summary>Activities that were left out of their units by it; those that were left out before are not among them.</summary>
    public List<Guid> LeftOut { get; private set; } = [];
    public bool Undone { get; private set; }
    public int Version { get; private set; }

    /// <summary>
    /// Takes a proposal into the unit of work, which the caller saves: all of it or nothing. A second sending of the same id
    /// changes nothing.
    /// </summary>
    /// <param name="id">Made on the page that sent it.</param>
    public static async Task<PlanAnswer> TakeAsync(AppDb db, Guid id, PlanProposal proposal, Author author, DateTime now, CancellationToken ct)
    {
        if (await db.PlanSteps.AnyAsync(s => s.Id == id, ct))
            return PlanAnswer.Taken;
        var added = proposal.Added.Select(a => a.Id).ToList();
        if (await db.PlannedSessions.AnyAsync(s => added.Contains(s.Id), ct))
            return PlanAnswer.Overtaken;
        var units = await UnitsAsync(db, proposal.Units, ct);
        var activities = await db.Activities.Where(a => proposal.LeftOut.Contains(a.Id) && !a.LeftOut).ToListAsync(ct);
        if (units is null)
            return PlanAnswer.Unknown;
        if (units.Any(u => u.Unit.StartsOn != u.Move.From))
            return PlanAnswer.Overtaken;
        var answer = await Plan.ApplyAsync(db, proposal.Changes, ct);
        if (answer != PlanAnswer.Taken)
            return answer;

        foreach (var (unit, move) in units)
            unit.Take(move.To);
        foreach (var activity in activities)
            activity.LeaveOut();
        db.PlannedSessions.AddRange(proposal.Added.Select(PlannedSession.Of));
        db.PlanSteps.Add(new PlanStep
        {
            Id = id,
            Title = proposal.Title.Length <= LongestTitle ? proposal.Title : proposal.Title[..(LongestTitle - 1)] + "…",
            TakenAt = now,
            By = author.Name,
            Changes = [.. proposal.Changes],
            Added = [.. proposal.Added],
            Units = [.. proposal.Units],
            LeftOut = [.. activities.Select(a => a.Id)],
        });
        return PlanAnswer.Taken;
    }

    /// <summary>
    /// Puts everything back as it was before the step, in the unit of work: what it added goes again. Overtaken where
    /// something of it is done by now or was changed since.
    /// </summary>
    public async Task<PlanAnswer> UndoAsync(AppDb db, CancellationToken ct)
    {
        if (Undone)
            return PlanAnswer.Taken;
        var ids = Added.Select(a => a.Id).ToList();
        var added = await db.PlannedSessions.Where(s => ids.Contains(s.Id)).ToListAsync(ct);
        var units = await UnitsAsync(db, Units, ct);
        if (units is null || units.Any(u => u.Unit.StartsOn != u.Move.To))
            return PlanAnswer.Overtaken;
        if (added.Any(s => s.State == SessionState.Done || s.Stands != Added.First(a => a.Id == s.Id).Place))
            return PlanAnswer.Overtaken;
        var answer = await Plan.ApplyAsync(db, [.. Changes.Select(c => c.Undoing)], ct);
        if (answer != PlanAnswer.Taken)
            return PlanAnswer.Overtaken;

        foreach (var (unit, move) in units)
            unit.Take(move.From);
        foreach (var activity in await db.Activities.Where(a => LeftOut.Contains(a.Id)).ToListAsync(ct))
            activity.BringBack();
        db.PlannedSessions.RemoveRange(added);
        Undone = true;
        return PlanAnswer.Taken;
    }

    private static async Task<IReadOnlyList<(Unit Unit, UnitMove Move)>?> UnitsAsync(AppDb db, IReadOnlyList<UnitMove> moves, CancellationToken ct)
    {
        var ids = moves.Select(m => m.UnitId).ToList();
        var units = await db.Units.Where(u => ids.Contains(u.Id)).ToDictionaryAsync(u => u.Id, ct);
        return units.Count == moves.Count ? [.. moves.Select(m => (units[m.UnitId], m))] : null;
    }

    internal sealed class Mapping : IEntityTypeConfiguration<PlanStep>
    {
        public void Configure(EntityTypeBuilder<PlanStep> b)
        {
            b.HasKey(s => new { s.FamilyId, s.Id });
            b.HasIndex(s => new { s.FamilyId, s.TakenAt });
            b.Property(s => s.Title).HasMaxLength(LongestTitle);
            b.Property(s => s.By).HasMaxLength(People.Person.LongestName);
            b.Property(s => s.Changes).AsJson();
            b.Property(s => s.Added).AsJson();
            b.Property(s => s.Units).AsJson();
            b.Property(s => s.LeftOut).AsJson();
        }
    }
}
