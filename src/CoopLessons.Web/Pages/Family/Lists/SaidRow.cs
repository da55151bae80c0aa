using CoopLessons.Data;
using CoopLessons.Data.OwnLists;
using CoopLessons.Data.Schedule;
using CoopLessons.Web.Pages.Today;
using Microsoft.EntityFrameworkCore;

namespace CoopLessons.Web.Pages.Families.Lists;

/// <summary>Something that a child said, as a guardian looks at it.</summary>
/// <param name="Child">The child's name.</param>
/// <param name="Day">"Today", or the day in words.</param>
/// <param name="Minutes">As the child said, else as it is planned; null where neither is known.</param>
/// <param name="Just">Decided a moment ago: the way back is offered in place.</param>
/// <param name="Fault">Why what was asked for was not done.</param>
public sealed record SaidRow(ChildSaid Said, string Child, string Day, int? Minutes, bool Just = false, string? Fault = null)
{
    /// <summary>Days for which what was decided is shown.</summary>
    private const int Shown = 7;

    /// <summary>Minted with the page: a second sending is known by it.</summary>
    public Guid NewEntryId { get; } = Guid.CreateVersion7();

    public string Id => $"said-{Said.Id:N}";

    public string Outcome => Said.State switch
    {
        SaidState.Confirmed => Said.Wrote ? "It is logged." : "It was logged already.",
        SaidState.Changed => "It is logged with changes.",
        SaidState.Declined => Said.Answer.Length > 0 ? $"Not yet: {Said.Answer}" : "Not yet.",
        SaidState.TakenBack => $"{Child} took it back.",
        _ => "It waits.",
    };

    public static async Task<IReadOnlyList<SaidRow>> WaitingAsync(AppDb db, DateOnly today, CancellationToken ct) =>
        await RowsAsync(db, db.ChildrenSaid.Where(s => s.State == SaidState.Waiting).OrderBy(s => s.SaidAt).ThenBy(s => s.Id), today, ct);

    public static async Task<IReadOnlyList<SaidRow>> DecidedAsync(AppDb db, DateOnly today, DateTime now, CancellationToken ct)
    {
        var since = now.AddDays(-Shown);
        return await RowsAsync(db, db.ChildrenSaid.Where(s => s.DecidedAt >= since).OrderByDescending(s => s.DecidedAt).ThenBy(s => s.Id), today, ct);
    }

    public static async Task<SaidRow> OfAsync(AppDb db, Guid saidId, DateOnly today, string? fault, CancellationToken ct) =>
        (await RowsAsync(db, db.ChildrenSaid.Where(s => s.Id == saidId), today, ct))[0] with { Just = true, Fault = fault };

    private static async Task<IReadOnlyList<SaidRow>> RowsAsync(AppDb db, IQueryable<ChildSaid> asked, DateOnly today, CancellationToken ct)
    {
        var said = await asked.AsNoTracking().ToListAsync(ct);
        if (said.Count == 0)
            return [];
        var names = await db.Learners.AsNoTracking().ToDictionaryAsync(l => l.Id, l => l.Name, ct);
        var planned = said.Select(s => s.SessionId).OfType<Guid>().Distinct().ToList();
        var minutes = (await db.WorkAsync(db.PlannedSessions.AsNoTracking().Where(s => planned.Contains(s.Id)), ct)).ToDictionary(w => w.Session.Id, w => w.Minutes);
        return
        [
            .. said.Select(s => new SaidRow(
                s, names[s.LearnerId], s.Date == today ? "Today" : s.Date == today.AddDays(-1) ? "Yesterday" : s.Date.InWords(today),
                s.Minutes ?? (s.SessionId is { } id && minutes.TryGetValue(id, out var length) ? length : null))),
        ];
    }
}
