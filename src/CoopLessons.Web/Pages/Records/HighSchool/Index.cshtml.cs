using CoopLessons.Core.Hours;
using CoopLessons.Data;
using CoopLessons.Data.Credits;
using Microsoft.AspNetCore.Mvc;
using Microsoft.EntityFrameworkCore;

namespace CoopLessons.Web.Pages.HighSchool;

/// <summary>A learner's high school courses with their minutes, credits and what is lacking, and what no course has.</summary>
public sealed class IndexModel(AppDb db, TimeProvider clock) : HighSchoolPage(db, clock)
{
    /// <summary>Minutes that no course asks for, by subject in the family's order.</summary>
    public IReadOnlyList<(string Subject, Minutes Minutes)> InNone { get; private set; } = [];

    /// <summary>The last day of the courses, or today while it is ahead.</summary>
    public DateOnly LoggedUntil => All.Log.Ledger.Period.Last < Today ? All.Log.Ledger.Period.Last : Today;

    public async Task<IActionResult> OnGetAsync()
    {
        if (!await FindAsync())
            return NotFound();
        var left = All.Ledger.InNone.ToLookup(c => c.SubjectId);
        InNone = [.. All.Log.Ledger.Subjects.Where(s => left.Contains(s.Id)).Select(s => (s.Name, left[s.Id].Select(c => c.Minutes).Sum())).Where(s => s.Item2 > Minutes.Zero)];
        return Page();
    }

    /// <summary>One place up in its year: of two courses that ask for the same, the first has it.</summary>
    public async Task<IActionResult> OnPostUpAsync(Guid courseId)
    {
        if (!await FindAsync() || All.Course(courseId) is null)
            return NotFound();
        var rows = await Db.HighSchoolCourses.Where(c => c.LearnerId == LearnerId).OrderBy(c => c.Order).ThenBy(c => c.Id).ToListAsync(Ct);
        var at = rows.FindIndex(c => c.Id == courseId);
        if (at > 0 && rows.FindLastIndex(at - 1, c => All.YearOf(c) == All.YearOf(rows[at])) is var above and >= 0)
            (rows[above], rows[at]) = (rows[at], rows[above]);
        foreach (var (index, row) in rows.Index())
            row.StandAt(index);
        if (!await SaveAsync())
            return await FindAsync() ? Again(StatusCodes.Status409Conflict) : NotFound();
        return RedirectToPage(new { learnerId = LearnerId });
    }
}
