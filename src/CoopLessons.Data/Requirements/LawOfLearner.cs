using CoopLessons.Core.Requirements;
using CoopLessons.Data.Families;
using Microsoft.EntityFrameworkCore;

namespace CoopLessons.Data.Requirements;

/// <summary>A stretch of days whose pathway the catalog or the family no longer has: nothing is asked of it until the family chooses anew.</summary>
/// <param name="Until">Included; null while nothing follows.</param>
public sealed record LostSpan(LearnerPathway Row, DateOnly? Until)
{
    public string Words => $"The pathway chosen from {Row.From:d MMMM yyyy} on ({(Row.Code.Length == 0 ? "your own" : $"{Row.Code}, {Row.PathwayId}")}) is no longer in this program. Choose again.";

    /// <summary>The same for a reader who cannot choose.</summary>
    public string PaperWords => $"The pathway chosen from {Row.From:d MMMM yyyy} {(Until is { } until ? $"to {until:d MMMM yyyy}" : "on")} ({(Row.Code.Length == 0 ? "the family's own" : $"{Row.Code}, {Row.PathwayId}")}) is no longer known to this program: nothing is said of those days here.";
}

/// <summary>Where one learner stands under the law in a school year, as the family told it: the only way by which pages and files come to it.</summary>
/// <param name="Rows">The learner's pathways as stored, in order, those of other years too.</param>
/// <param name="Spans">The same with their pathways, in order; empty for a learner without any. <see cref="PathwaySpan.From"/> tells the row.</param>
/// <param name="Lost">Those whose pathway is not there any more. Days before them do not reach into them.</param>
/// <param name="Events">In order of their days.</param>
/// <param name="Marks">Of this school year.</param>
public sealed record LawOfLearner(
    LearnerFacts Learner,
    SchoolYear Year,
    IReadOnlyList<LearnerPathway> Rows,
    IReadOnlyList<PathwaySpan> Spans,
    IReadOnlyList<LostSpan> Lost,
    IReadOnlyList<RecordedLegalEvent> Events,
    IReadOnlyList<DutyMark> Marks)
{
    /// <summary>The place's name of a pathway of the family's own.</summary>
    public const string OwnPlace = "your own";

    /// <summary>The spans that meet the school year.</summary>
    public IEnumerable<PathwaySpan> InYear => Spans.Where(s => s.In(Year.Days) is not null);

    /// <summary>The lost spans that meet the school year.</summary>
    public IEnumerable<LostSpan> LostInYear => Lost.Where(l => l.Row.From <= Year.Last && (l.Until is null || l.Until >= Year.First));

    public LearnerPathway RowOf(PathwaySpan span) => Rows.Single(r => r.From == span.From);

    public static async Task<LawOfLearner> LoadAsync(AppDb db, Learner learner, SchoolYear year, CancellationToken ct) =>
        (await LoadAsync(db, [learner], year, ct))[0];

    /// <summary>All learners who are not set aside, in the family's order.</summary>
    public static async Task<IReadOnlyList<LawOfLearner>> LoadAllAsync(AppDb db, SchoolYear year, CancellationToken ct) =>
        await LoadAsync(db, await db.Learners.AsNoTracking().Where(l => !l.SetAside).OrderBy(l => l.Order).ThenBy(l => l.Name).ToListAsync(ct), year, ct);

    private static async Task<IReadOnlyList<LawOfLearner>> LoadAsync(AppDb db, IReadOnlyList<Learner> learners, SchoolYear year, CancellationToken ct)
    {
        var ids = learners.Select(l => l.Id).ToList();
        var rows = (await db.LearnerPathways.AsNoTracking().Where(p => ids.Contains(p.LearnerId)).OrderBy(p => p.From).ToListAsync(ct)).ToLookup(p => p.LearnerId);
        var events = (await db.LegalEvents.AsNoTracking().Where(e => ids.Contains(e.LearnerId)).OrderBy(e => e.On).ThenBy(e => e.Id).ToListAsync(ct)).ToLookup(e => e.LearnerId);
        var marks = (await db.DutyMarks.AsNoTracking().Where(m => m.SchoolYearId == year.Id && ids.Contains(m.LearnerId)).ToListAsync(ct)).ToLookup(m => m.LearnerId);
        var grades = await db.LearnerGrades.AsNoTracking().Where(g => g.SchoolYearId == year.Id && ids.Contains(g.LearnerId)).ToDictionaryAsync(g => g.LearnerId, g => g.Grade, ct);
        var pathways = await KnownPathways.LoadAsync(db, ct);
        return [.. learners.Select(learner =>
        {
            var (spans, lost) = Read([.. rows[learner.Id]], pathways);
            var facts = new LearnerFacts(learner.Id, learner.Name, learner.BirthDate, grades.TryGetValue(learner.Id, out var grade) ? grade : null);
            return new LawOfLearner(facts, year, [.. rows[learner.Id]], spans, lost, [.. events[learner.Id]], [.. marks[learner.Id]]);
        })];
    }

    private static (List<PathwaySpan> Spans, List<LostSpan> Lost) Read(IReadOnlyList<LearnerPathway> rows, KnownPathways pathways)
    {
        var (spans, lost) = (new List<PathwaySpan>(), new List<LostSpan>());
        for (var i = 0; i < rows.Count; i++)
        {
            var row = rows[i];
            DateOnly? until = i + 1 < rows.Count ? rows[i + 1].From.AddDays(-1) : null;
            if (pathways.Find(row.Code, row.PathwayId) is not { } known)
            {
                lost.Add(new LostSpan(row, until));
                continue;
            }

            var choices = new PathwayChoices(row.Goals.ToHashSet(), row.Figures, pathways.SubjectsOf(row.Code, known.Pathway));
            spans.Add(new PathwaySpan(row.Code, known.Place, known.Pathway, row.From, until, row.Because, row.CountsFrom, choices));
        }

        return (spans, lost);
    }
}
