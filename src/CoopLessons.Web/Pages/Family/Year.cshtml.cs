using System.ComponentModel.DataAnnotations;
using CoopLessons.Core.Calendar;
using CoopLessons.Data;
using CoopLessons.Data.Families;
using CoopLessons.Web.Pages.Account;
using Microsoft.AspNetCore.Mvc;
using Microsoft.EntityFrameworkCore;

namespace CoopLessons.Web.Pages.Families;

/// <summary>A school year: its days, its weekdays, its breaks, and the holidays that can be added to them.</summary>
public sealed class YearModel(AppDb db, TimeProvider clock) : FamilyPage(db, clock)
{
    public const int MostBreaks = 100;

    // Named, or a form without these fields would be read as if it had them by their bare names.
    [BindProperty(Name = nameof(Input))]
    public YearInput Input { get; set; } = new();

    [BindProperty]
    public int Version { get; set; }

    [BindProperty(Name = nameof(Away))]
    public BreakInput Away { get; set; } = new();

    public SchoolYear Year { get; private set; } = null!;

    public int TeachingDays => Year.Calendar.TeachingDays().Count();

    public IReadOnlyList<SchoolBreak> Breaks => [.. Year.Breaks.OrderBy(b => b.First).ThenBy(b => b.Last)];

    /// <summary>Holidays on teaching days of the year that no break holds yet.</summary>
    public IReadOnlyList<Holiday> Holidays => [.. FederalHolidays.ObservedIn(Year.Days).Where(h => Year.Weekdays.Holds(h.Observed.DayOfWeek) && Year.Calendar.BreakOn(h.Observed) is null)];

    public async Task<IActionResult> OnGetAsync(Guid id)
    {
        if (!await FindAsync(id))
            return NotFound();
        Fill();
        Away.Id = Guid.CreateVersion7();
        return Page();
    }

    public async Task<IActionResult> OnPostAsync(Guid id)
    {
        if (!await FindAsync(id))
            return NotFound();
        Forget(nameof(Away));
        await Input.CheckOverlapAsync(Db, id, ModelState, Ct);
        if (!ModelState.IsValid)
            return Again();
        Year.Describe(Input.Name, Input.Range(), Input.Weekdays());
        Expect(Year, Version);
        if (!await SaveAsync())
        {
            await FindAsync(id);
            ModelState.Remove(nameof(Version));
            Version = Year.Version;
            return Again(StatusCodes.Status409Conflict);
        }

        Say($"The year {Year.Name} is saved.");
        return RedirectToPage();
    }

    public async Task<IActionResult> OnPostAddBreakAsync(Guid id)
    {
        if (!await FindAsync(id))
            return NotFound();
        if (Year.Breaks.Any(b => b.Id == Away.Id))
            return RedirectToPage();
        Forget(nameof(Input));
        Fill();
        if (ModelState.IsValid && !(Year.Days.Contains(Away.First!.Value) && Year.Days.Contains(Away.Last!.Value)))
            ModelState.AddModelError("Away.First", $"A break lies inside the year: {Words.Of(Year.Days)}.");
        if (Year.Breaks.Count >= MostBreaks)
            ModelState.AddModelError("Away.Name", $"More than {MostBreaks} breaks are not kept.");
        if (!ModelState.IsValid)
            return Again();
        Year.AddBreak(Away.Id == Guid.Empty ? Guid.CreateVersion7() : Away.Id, Away.Name, new DayRange(Away.First!.Value, Away.Last!.Value));
        if (!await SaveNewAsync())
        {
            if (!await FindAsync(id))
                return NotFound();
            Fill();
            if (Year.Breaks.All(b => b.Id != Away.Id))
            {
                // Where the id is taken by another year's break, the form needs a new one to be saved at all.
                ModelState.Remove("Away.Id");
                Away.Id = Guid.CreateVersion7();
                return AgainAfterOthers("Away.Name");
            }
        }

        Say($"{Away.Name} is added to the breaks.");
        return RedirectToPage();
    }

    public async Task<IActionResult> OnPostRemoveBreakAsync(Guid id, Guid breakId)
    {
        if (!await FindAsync(id))
            return NotFound();
        var name = Year.Breaks.SingleOrDefault(b => b.Id == breakId)?.Name;
        if (!Year.RemoveBreak(breakId))
            return NotFound();
        ModelState.Clear();
        await SaveAsync();
        Say($"{name} is no longer a break.");
        return RedirectToPage();
    }

    public async Task<IActionResult> OnPostHolidaysAsync(Guid id, [MaxLength(40)] List<DateOnly> days)
    {
        if (!await FindAsync(id))
            return NotFound();
        var chosen = Holidays.Where(h => days.Contains(h.Observed)).ToList();
        foreach (var holiday in chosen.Take(MostBreaks - Year.Breaks.Count))
            Year.AddBreak(Guid.CreateVersion7(), holiday.Name, new DayRange(holiday.Observed, holiday.Observed));
        ModelState.Clear();
        // Breaks are rows of their own; the year's version keeps a holiday from being added twice in the same moment.
        if (chosen.Count > 0)
            Db.Entry(Year).State = EntityState.Modified;
        if (!await SaveNewAsync())
        {
            if (!await FindAsync(id))
                return NotFound();
            if (Holidays.Any(chosen.Contains))
            {
                Fill();
                Away.Id = Guid.CreateVersion7();
                return AgainAfterOthers();
            }
        }

        Say(chosen.Count switch { 0 => "No holiday was chosen.", 1 => $"{chosen[0].Name} is added to the breaks.", _ => $"{chosen.Count} holidays are added to the breaks." });
        return RedirectToPage();
    }

    private async Task<bool> FindAsync(Guid id)
    {
        Year = (await Db.SchoolYears.Include(y => y.Breaks).SingleOrDefaultAsync(y => y.Id == id, Ct))!;
        return Year is not null;
    }

    private void Fill() => (Input, Version) = (YearInput.Of(Year), Year.Version);

    /// <summary>Each form of the page is checked by itself.</summary>
    private void Forget(string form)
    {
        foreach (var key in ModelState.Keys.Where(k => k.StartsWith(form, StringComparison.Ordinal)).ToList())
            ModelState.Remove(key);
        if (form == nameof(Input))
            ModelState.Remove(nameof(Version));
    }

    public sealed class BreakInput : IValidatableObject
    {
        /// <summary>Made with the form, so that a form sent twice adds one break.</summary>
        public Guid Id { get; set; }

        [Required(ErrorMessage = "Give the break a name.")]
        [StringLength(SchoolYear.LongestName, ErrorMessage = "A break’s name has at most {1} signs.")]
        [Visible]
        public string Name { get; set; } = "";

        [Required(ErrorMessage = "Give the first day.")]
        public DateOnly? First { get; set; }

        [Required(ErrorMessage = "Give the last day; the same day for one day.")]
        public DateOnly? Last { get; set; }

        public IEnumerable<ValidationResult> Validate(ValidationContext validationContext)
        {
            if (Last < First)
                yield return new ValidationResult("The last day is on or after the first.", [nameof(Last)]);
        }
    }
}
