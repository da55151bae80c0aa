using CoopLessons.Data;
using CoopLessons.Data.Families;
using CoopLessons.Data.Planning;
using Microsoft.EntityFrameworkCore;

namespace CoopLessons.Web.Pages.Planning;

/// <summary>Whom and what the forms of planning choose among; those set aside are named, and offered only where they are chosen.</summary>
public sealed record PlanChoices(IReadOnlyList<Learner> Learners, IReadOnlyList<FamilySubject> Subjects, IReadOnlyList<TeachingAdult> Adults)
{
    public static PlanChoices None { get; } = new([], [], []);

    public static async Task<PlanChoices> LoadAsync(AppDb db, CancellationToken ct) => new(
        await db.Learners.AsNoTracking().OrderBy(l => l.Order).ThenBy(l => l.Id).ToListAsync(ct),
        await db.Subjects.AsNoTracking().OrderBy(s => s.Order).ThenBy(s => s.Name).ToListAsync(ct),
        await db.TeachingAdults.AsNoTracking().OrderBy(a => a.Order).ThenBy(a => a.Id).ToListAsync(ct));

    public bool HasLearners(IEnumerable<Guid> ids) => ids.All(id => Learners.Any(l => l.Id == id));

    public bool HasAdults(IEnumerable<Guid> ids) => ids.All(id => Adults.Any(a => a.Id == id));

    /// <summary>Whether the subject is the family's own; true where none is named.</summary>
    public bool HasSubject(Guid? id) => id is null || Subjects.Any(s => s.Id == id);

    public IReadOnlyList<Learner> Taught => [.. Learners.Where(l => !l.SetAside)];

    public IEnumerable<FamilySubject> SubjectsWith(Guid? chosen) => Subjects.Where(s => !s.Retired || s.Id == chosen);

    public string SubjectName(Guid? id) => Subjects.FirstOrDefault(s => s.Id == id)?.Name ?? "";
}

/// <summary>Boxes to tick for children or adults: a field of a form that takes many.</summary>
/// <param name="Field">Name of the field, such as Input.Learners.</param>
public sealed record TickList(string Field, string Legend, IReadOnlyList<(Guid Id, string Name)> Items, IReadOnlyCollection<Guid> Ticked, string? Hint = null)
{
    public static TickList Learners(PlanChoices choices, IReadOnlyCollection<Guid> ticked, string legend = "Who", string? hint = null) =>
        new("Input.Learners", legend, [.. choices.Learners.Where(l => !l.SetAside || ticked.Contains(l.Id)).Select(l => (l.Id, l.Name))], ticked, hint);

    public static TickList Adults(PlanChoices choices, IReadOnlyCollection<Guid> ticked, string legend, string? hint = null) =>
        new("Input.Adults", legend, [.. choices.Adults.Where(a => !a.SetAside || ticked.Contains(a.Id)).Select(a => (a.Id, a.Name))], ticked, hint);
}

/// <summary>A question before something is removed for good.</summary>
/// <param name="Becomes">What becomes of what hangs on it, sentence by sentence.</param>
public sealed record Removal(string Title, int Version, string Back, IReadOnlyList<string> Becomes);
