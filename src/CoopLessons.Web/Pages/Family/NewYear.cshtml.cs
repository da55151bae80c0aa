using CoopLessons.Data;
using CoopLessons.Data.Families;
using Microsoft.AspNetCore.Mvc;
using Microsoft.EntityFrameworkCore;

namespace CoopLessons.Web.Pages.Families;

/// <summary>A school year is added; the form offers the one after the last.</summary>
public sealed class NewYearModel(AppDb db, TimeProvider clock) : FamilyPage(db, clock)
{
    [BindProperty]
    public YearInput Input { get; set; } = new();

    /// <summary>Made with the form, so that a form sent twice adds one year.</summary>
    [BindProperty]
    public Guid Id { get; set; }

    public async Task OnGetAsync()
    {
        Id = Guid.CreateVersion7();
        var last = await Db.SchoolYears.AsNoTracking().OrderByDescending(y => y.Last).FirstOrDefaultAsync(Ct);
        Input = YearInput.Of(NewFamily.UsualYear(last?.Last.AddDays(1) ?? Today));
        if (last is not null)
            (Input.First, Input.Days) = (last.Last.AddDays(1), YearInput.Of(last).Days);
    }

    public async Task<IActionResult> OnPostAsync()
    {
        if (Id != Guid.Empty && await Db.SchoolYears.AnyAsync(y => y.Id == Id, Ct))
            return RedirectToPage("/Family/Year", new { id = Id });
        // The same form, sent in the same moment, may have been saved since: it is no other year.
        await Input.CheckOverlapAsync(Db, Id, ModelState, Ct);
        if (!ModelState.IsValid)
            return Again();
        var year = new SchoolYear(Id == Guid.Empty ? Guid.CreateVersion7() : Id, Input.Name, Input.Range(), Input.Weekdays());
        Db.SchoolYears.Add(year);
        if (!await SaveNewAsync() && !await Db.SchoolYears.AnyAsync(y => y.Id == Id, Ct))
            return AgainAfterOthers();
        Say($"The year {year.Name} is added. Its breaks and holidays stand below.");
        return RedirectToPage("/Family/Year", new { id = year.Id });
    }
}
