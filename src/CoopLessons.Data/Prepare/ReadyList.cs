using CoopLessons.Core.Prepare;
using CoopLessons.Core.Units;

namespace CoopLessons.Data.Prepare;

/// <summary>An activity of a week in which something meets a child.</summary>
public sealed record WeekCaution(ReadyActivity Activity, IReadOnlyList<Caution> Cautions);

/// <summary>All that a week asks for before it can be taught.</summary>
/// <param name="Tasks">By day, then in the order of <see cref="ReadyKind"/>.</param>
/// <param name="Cautions">Of the week's activities, those where something meets a child, whether they take part or are in the house.</param>
public sealed record ReadyList(ReadyWeek Ready, IReadOnlyList<ReadyTask> Tasks, IReadOnlyList<WeekCaution> Cautions)
{
    /// <summary>The hazards of the week's activities, each once, with what is usually said of it.</summary>
    public IReadOnlyList<HazardCare> Hazards =>
        [.. Ready.Activities.SelectMany(a => a.Activity.Details.Hazards.Select(h => h.Kind)).Distinct().Order().Select(HazardCare.Of)];

    /// <param name="isThere">Told a file's hash: whether it lies on the family's shelf.</param>
    public static async Task<ReadyList> LoadAsync(AppDb db, Core.Calendar.Week week, DateOnly today, Func<string, bool> isThere, CancellationToken ct)
    {
        var ready = await ReadyWeek.LoadAsync(db, week, ct);
        IReadOnlyList<ReadyTask> tasks =
        [
            .. await PacketTasks.OfAsync(db, ready, today, isThere, ct),
            .. await SupplyTasks.OfAsync(db, ready, today, ct),
            .. await BookTasks.OfAsync(db, ready, today, ct),
            .. await AheadTasks.OfAsync(db, ready, today, ct),
        ];
        return new ReadyList(
            ready,
            [.. tasks.OrderBy(t => t.By).ThenBy(t => t.Kind)],
            [.. ready.Activities.Select(a => new WeekCaution(a, ready.CautionsOf(a))).Where(c => c.Cautions.Count > 0)]);
    }
}
