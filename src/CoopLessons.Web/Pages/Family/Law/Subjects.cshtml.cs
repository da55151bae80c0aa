using System.ComponentModel.DataAnnotations;
using CoopLessons.Core.Requirements;
using CoopLessons.Data;
using CoopLessons.Data.Families;
using CoopLessons.Data.Requirements;
using Microsoft.AspNetCore.Mvc;
using Microsoft.EntityFrameworkCore;

namespace CoopLessons.Web.Pages.Families.Law;

/// <summary>Which of the family's subjects count for each subject of a pathway.</summary>
public sealed class SubjectsModel(AppDb db, TimeProvider clock) : LawPage(db, clock)
{
    [BindProperty(Name = nameof(Rows))]
    [MaxLength(60)]
    public List<RowInput> Rows { get; set; } = [];

    public KnownPathway Known { get; private set; } = null!;

    /// <summary>In the family's order; retired ones only where they count.</summary>
    public IReadOnlyList<FamilySubject> Subjects { get; private set; } = [];

    private List<SubjectReading> Readings { get; set; } = [];

    public bool IsProposed(StatuteSubject statute, FamilySubject subject) => SubjectProposal.Proposes(statute, new CodedSubject(subject.Id, subject.Code));

    public bool IsPicked(StatuteSubject statute, FamilySubject subject) => Rows.FirstOrDefault(r => r.Subject == statute.Id)?.Counts.Contains(subject.Id) == true;

    public async Task<IActionResult> OnGetAsync(string code, string pathwayId) => await FindAsync(code, pathwayId, true) ? Page() : NotFound();

    public async Task<IActionResult> OnPostAsync(string code, string pathwayId)
    {
        if (!await FindAsync(code, pathwayId, false) || Rows.SelectMany(r => r.Counts).Except(Subjects.Select(s => s.Id)).Any())
            return NotFound();
        if (!ModelState.IsValid)
            return Again();
        var sent = Rows.Select(r => r.Subject).ToHashSet();
        foreach (var statute in Known.Pathway.Subjects.Where(s => sent.Contains(s.Id)))
        {
            foreach (var subject in Subjects)
                Decide(statute, subject, IsPicked(statute, subject));
        }

        if (!await SaveNewAsync())
            return AgainAfterOthers();
        Say($"{Known.Pathway.Name}: what counts is saved, for every child who stands under it.");
        return RedirectToPage("/Family/Law/Index");
    }

    /// <summary>A row is kept only where the family decides otherwise than the catalog proposes.</summary>
    private void Decide(StatuteSubject statute, FamilySubject subject, bool counts)
    {
        var known = Readings.FirstOrDefault(r => r.StatuteSubject == statute.Id && r.SubjectId == subject.Id);
        if (counts == IsProposed(statute, subject))
        {
            if (known is not null)
                Db.Remove(known);
        }
        else if (known is null)
        {
            Db.Add(new SubjectReading(Known.Code, Known.Pathway.Id, statute.Id, subject.Id, counts));
        }
        else
        {
            known.Decide(counts);
        }
    }

    private async Task<bool> FindAsync(string code, string pathwayId, bool fill)
    {
        var pathways = await PathwaysAsync();
        if (pathways.Find(CodeOf(code), pathwayId) is not { } known)
            return false;
        Known = known;
        var (ofCode, ofId) = (known.Code, known.Pathway.Id);
        Readings = await Db.SubjectReadings.Where(r => r.Code == ofCode && r.PathwayId == ofId).ToListAsync(Ct);
        var counting = pathways.SubjectsOf(known.Code, known.Pathway);
        var used = counting.Values.SelectMany(ids => ids).ToHashSet();
        Subjects = [.. (await Db.Subjects.AsNoTracking().OrderBy(s => s.Retired).ThenBy(s => s.Order).ThenBy(s => s.Id).ToListAsync(Ct)).Where(s => !s.Retired || used.Contains(s.Id))];
        if (fill)
            Rows = [.. known.Pathway.Subjects.Select(s => new RowInput { Subject = s.Id, Counts = [.. counting[s.Id]] })];
        return true;
    }

    public sealed class RowInput
    {
        [Required(ErrorMessage = "This subject is not known.")]
        [StringLength(LearnerPathway.LongestPathwayId, ErrorMessage = "This subject is not known.")]
        public string Subject { get; set; } = "";

        [MaxLength(200)]
        public List<Guid> Counts { get; set; } = [];
    }
}
