using CoopLessons.Core.Requirements;
using Microsoft.EntityFrameworkCore;

namespace CoopLessons.Data.Requirements;

/// <summary>A pathway with the name of its place: Missouri, or "your own".</summary>
public sealed record KnownPathway(string Code, string Place, Pathway Pathway);

/// <summary>The pathways under which a family's learners may stand, the catalog's and its own, and how its subjects are read under each.</summary>
public sealed class KnownPathways
{
    private readonly Dictionary<string, Pathway> _own;
    private readonly List<CodedSubject> _subjects;
    private readonly ILookup<(string Code, string PathwayId), SubjectDecision> _decisions;

    private KnownPathways(Dictionary<string, Pathway> own, List<CodedSubject> subjects, IEnumerable<SubjectReading> readings)
    {
        (_own, _subjects) = (own, subjects);
        _decisions = readings.ToLookup(r => (r.Code, r.PathwayId), r => new SubjectDecision(r.StatuteSubject, r.SubjectId, r.Counts));
    }

    /// <summary>Three queries, whatever the number of learners.</summary>
    public static async Task<KnownPathways> LoadAsync(AppDb db, CancellationToken ct)
    {
        var own = (await db.OwnPathways.AsNoTracking().ToListAsync(ct)).Select(p => (Id: p.Id.ToString(), Pathway: p.Read()))
            .Where(p => p.Pathway is not null).ToDictionary(p => p.Id, p => p.Pathway!);
        // Retired subjects too: what was taught in them counts as before.
        var subjects = await db.Subjects.AsNoTracking().OrderBy(s => s.Order).Select(s => new CodedSubject(s.Id, s.Code)).ToListAsync(ct);
        return new KnownPathways(own, subjects, await db.SubjectReadings.AsNoTracking().ToListAsync(ct));
    }

    /// <summary>The family's own first, then the catalog's by place.</summary>
    public IReadOnlyList<KnownPathway> All =>
    [
        .. _own.Values.OrderBy(p => p.Name, StringComparer.Ordinal).Select(p => new KnownPathway("", LawOfLearner.OwnPlace, p)),
        .. Catalog.Of50AndDc.All.SelectMany(j => j.Pathways.Select(p => new KnownPathway(j.Code, j.Name, p))),
    ];

    /// <param name="code">ISO 3166-2, or empty for the family's own.</param>
    public KnownPathway? Find(string code, string pathwayId)
    {
        if (code.Length == 0)
            return _own.TryGetValue(pathwayId, out var own) ? new KnownPathway("", LawOfLearner.OwnPlace, own) : null;
        return Catalog.Of50AndDc[code] is { } place && place.Pathway(pathwayId) is { } pathway ? new KnownPathway(code, place.Name, pathway) : null;
    }

    /// <summary>The family's subjects behind each of the pathway's.</summary>
    public IReadOnlyDictionary<string, IReadOnlySet<Guid>> SubjectsOf(string code, Pathway pathway) => SubjectProposal.Of(pathway, _subjects, _decisions[(code, pathway.Id)]);
}
