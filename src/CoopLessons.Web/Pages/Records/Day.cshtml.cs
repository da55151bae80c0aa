using System.ComponentModel.DataAnnotations;
using System.Globalization;
using CoopLessons.Core.Calendar;
using CoopLessons.Core.Hours;
using CoopLessons.Data;
using CoopLessons.Data.Families;
using CoopLessons.Data.Hours;
using Microsoft.AspNetCore.Mvc;
using Microsoft.EntityFrameworkCore;

namespace CoopLessons.Web.Pages.Records;

/// <summary>What a parent says about a day.</summary>
public enum DayWish
{
    Count,
    DoNotCount,
    LetTheMinutesDecide,
}

/// <summary>One learner's day: its entries, whether it is a school day and why, and the mark made by hand.</summary>
public sealed class DayModel(AppDb db, TimeProvider clock) : FamilyPage(db, clock)
{
    public sealed class InputModel
    {
        [Required(ErrorMessage = "Say whether the day counts.")]
        [EnumDataType(typeof(DayWish), ErrorMessage = "Say whether the day counts.")]
        public DayWish? Wish { get; set; }

        /// <summary>Version of the mark that the form was filled from; empty where there was none.</summary>
        public int? Version { get; set; }
    }

    [BindProperty]
    public InputModel Input { get; set; } = new();

    public Learner Learner { get; private set; } = null!;
    public DateOnly Date { get; private set; }
    public IReadOnlyList<LoggedEntry> Entries { get; private set; } = [];
    public SchoolDay Day { get; private set; } = null!;
    public Minutes Minimum { get; private set; }
    public DayMark? Mark { get; private set; }
    public SchoolYear? Year { get; private set; }

    public static string Address(IUrlHelper url, Guid learnerId, DateOnly date) =>
        url.Page("/Records/Day", new { learnerId, date = date.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture) })!;

    public async Task<IActionResult> OnGetAsync(Guid learnerId, string date)
    {
        if (!await FindAsync(learnerId, date))
            return NotFound();
        Input.Version = Mark?.Version;
        return Page();
    }

    public async Task<IActionResult> OnPostAsync(Guid learnerId, string date)
    {
        if (!await FindAsync(learnerId, date))
            return NotFound();
        if (Input.Wish == DayWish.Count && Date > Today)
            ModelState.AddModelError("Input.Wish", "This day has not come yet. It can be counted when it is over.");
        if (!ModelState.IsValid)
            return Again();
        if (Holds(Input.Wish!.Value))
            return Back();
        if (Input.Version != Mark?.Version)
            return await AgainAsItStandsAsync(learnerId, date);

        await DecideAsync(Input.Wish.Value);
        return await SaveOnceAsync() ? Back() : await AgainAsItStandsAsync(learnerId, date);
    }

    /// <summary>Why the day counts or does not, without who marked it.</summary>
    public string Standing => Day.Standing switch
    {
        DayStanding.Reached => $"Counted: {Day.Minutes.Clock} hours reach the minimum day of {Minimum.Clock}.",
        DayStanding.Under => $"Not counted: {Day.Minutes.Clock} hours are under the minimum day of {Minimum.Clock}.",
        DayStanding.MarkedYes => "Counted: marked as a school day by hand.",
        DayStanding.MarkedNo => "Not counted: marked as no school day by hand.",
        _ => "Not counted: nothing was logged.",
    };

    /// <summary>What holds without a mark.</summary>
    public string ByMinutes =>
        Day.Minutes >= Minimum
            ? $"By its {Day.Minutes.Clock} hours alone the day would count; the minimum day is {Minimum.Clock}."
            : $"By its {Day.Minutes.Clock} hours alone the day would not count; the minimum day is {Minimum.Clock}.";

    public string? WhyOff => Year is null ? "outside your school years" : MonthSheet.WhyOff(Date, Year.Calendar);

    public bool Holds(DayWish wish) => wish switch
    {
        DayWish.Count => Mark is { Counts: true },
        DayWish.DoNotCount => Mark is { Counts: false },
        _ => Mark is null,
    };

    private async Task<bool> FindAsync(Guid learnerId, string date)
    {
        if (!DateOnly.TryParseExact(date, "yyyy-MM-dd", CultureInfo.InvariantCulture, DateTimeStyles.None, out var day) || day.Year is < 1900 or > 2200)
            return false;
        var log = await LearnerYear.LoadAsync(Db, learnerId, new DayRange(day, day), Ct);
        if (log is null)
            return false;
        (Date, Learner, Entries, Day, Minimum) = (day, log.Learner, log.Ledger.Entries, log.Days[day], log.Days.Minimum);
        Mark = await Db.DayMarks.SingleOrDefaultAsync(m => m.LearnerId == learnerId && m.Date == day, Ct);
        Year = await Db.SchoolYears.AsNoTracking().Include(y => y.Breaks).FirstOrDefaultAsync(y => y.First <= day && y.Last >= day, Ct);
        return true;
    }

    private async Task DecideAsync(DayWish wish)
    {
        if (wish == DayWish.LetTheMinutesDecide)
            Db.DayMarks.Remove(Mark!);
        else if (Mark is null)
            Db.DayMarks.Add(new DayMark(Learner.Id, Date, wish == DayWish.Count, (await AuthorAsync()).Name, Now));
        else
            Mark.Set(wish == DayWish.Count, (await AuthorAsync()).Name, Now);
    }

    // Two first marks of one day meet in the key, not in a version.
    private async Task<bool> SaveOnceAsync()
    {
        var first = Mark is null;
        try
        {
            return await SaveAsync();
        }
        catch (DbUpdateException) when (first)
        {
            Db.ChangeTracker.Clear();
            return false;
        }
    }

    private async Task<IActionResult> AgainAsItStandsAsync(Guid learnerId, string date)
    {
        Db.ChangeTracker.Clear();
        ModelState.Clear();
        if (!await FindAsync(learnerId, date))
            return NotFound();
        Input.Version = Mark?.Version;
        ModelState.AddModelError("", "Somebody marked this day while you were deciding. Below is how it stands now; choose again if it should be otherwise.");
        return Again(StatusCodes.Status409Conflict);
    }

    private RedirectResult Back()
    {
        Say(Input.Wish switch
        {
            DayWish.Count => $"{RecordWords.Of(Date)} counts as a school day for {Learner.Name}.",
            DayWish.DoNotCount => $"{RecordWords.Of(Date)} does not count as a school day for {Learner.Name}.",
            _ => $"The minutes decide about {RecordWords.Of(Date)} for {Learner.Name}.",
        });
        return Redirect(Address(Url, Learner.Id, Date));
    }
}
