using System.ComponentModel.DataAnnotations;
using CoopLessons.Data;
using CoopLessons.Data.Planning;
using Microsoft.AspNetCore.Mvc;
using Microsoft.AspNetCore.Mvc.ModelBinding;
using Microsoft.EntityFrameworkCore;

namespace CoopLessons.Web.Pages.Planning;

/// <summary>How long each child sits at one thing before a change.</summary>
public sealed class SittingsModel(AppDb db, TimeProvider clock) : FamilyPage(db, clock)
{
    public sealed class SittingRow
    {
        public Guid LearnerId { get; set; }

        [Range(LearnerSitting.Least, LearnerSitting.Most, ErrorMessage = "Give whole minutes from {1} to {2}, or leave this empty.")]
        public int? Minutes { get; set; }

        /// <summary>Of the row that was shown; -1 where there was none.</summary>
        public int Version { get; set; } = -1;

        [BindNever]
        public string Name { get; set; } = "";

        [BindNever]
        public int Proposed { get; set; }
    }

    [BindProperty]
    public List<SittingRow> Input { get; set; } = [];

    public async Task OnGetAsync() => await FillAsync(keep: false);

    public async Task<IActionResult> OnPostAsync()
    {
        if (!await FillAsync(keep: true))
            return NotFound();
        if (!ModelState.IsValid)
            return Again();
        var rows = await Db.Sittings.ToDictionaryAsync(s => s.LearnerId, Ct);
        foreach (var typed in Input)
            Take(typed, rows.GetValueOrDefault(typed.LearnerId));
        if (!await SaveOrTellAsync())
        {
            await RenewVersionsAsync();
            return Again(StatusCodes.Status409Conflict);
        }

        Say("How long each child sits is saved.");
        return LocalRedirect("/week/plan#sittings");
    }

    private void Take(SittingRow typed, LearnerSitting? row)
    {
        if (row is null && typed.Minutes is { } first)
            Db.Sittings.Add(new LearnerSitting(typed.LearnerId, first));
        if (row is null || row.Minutes == typed.Minutes)
            return;
        if (typed.Minutes is { } minutes)
            row.Set(minutes);
        else
            Db.Sittings.Remove(row);
        Expect(row, typed.Version);
    }

    private async Task<bool> SaveOrTellAsync()
    {
        try
        {
            return await SaveAsync();
        }
        catch (DbUpdateException)
        {
            // Two first writings that arrived together.
            Db.ChangeTracker.Clear();
            ModelState.AddModelError("", "Something else was saved at the same moment. Nothing you typed is lost; send it once more.");
            return false;
        }
    }

    private async Task RenewVersionsAsync()
    {
        var now = await Db.Sittings.AsNoTracking().ToDictionaryAsync(s => s.LearnerId, s => s.Version, Ct);
        for (var i = 0; i < Input.Count; i++)
        {
            Input[i].Version = now.GetValueOrDefault(Input[i].LearnerId, -1);
            ModelState.Remove($"Input[{i}].Version");
        }
    }

    /// <summary>Names the rows. False where one is nobody's of this family, or stands twice.</summary>
    private async Task<bool> FillAsync(bool keep)
    {
        var learners = await Db.Learners.AsNoTracking().OrderBy(l => l.Order).ThenBy(l => l.Id).ToListAsync(Ct);
        if (!keep)
        {
            var set = await Db.Sittings.AsNoTracking().ToDictionaryAsync(s => s.LearnerId, Ct);
            Input =
            [
                .. learners.Where(l => !l.SetAside).Select(l => new SittingRow
                {
                    LearnerId = l.Id,
                    Minutes = set.GetValueOrDefault(l.Id)?.Minutes,
                    Version = set.GetValueOrDefault(l.Id)?.Version ?? -1,
                }),
            ];
        }

        foreach (var row in Input)
        {
            if (learners.FirstOrDefault(l => l.Id == row.LearnerId) is not { } learner)
                return false;
            (row.Name, row.Proposed) = (learner.Name, CoopLessons.Core.Schedule.Sittings.Proposed(learner.AgeOn(Today)));
        }

        return Input.DistinctBy(r => r.LearnerId).Count() == Input.Count;
    }
}
