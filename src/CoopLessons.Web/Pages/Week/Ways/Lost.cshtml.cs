using CoopLessons.Core.Calendar;
using CoopLessons.Data;
using CoopLessons.Data.Planning.Futures;
using CoopLessons.Web.Pages.Today;
using CoopLessons.Web.Planning;
using Microsoft.AspNetCore.Mvc;
using Microsoft.EntityFrameworkCore;
using IsoWeek = CoopLessons.Core.Calendar.Week;

namespace CoopLessons.Web.Pages.Week.Ways;

/// <summary>A day fell through, or some days in a row: what now.</summary>
public sealed class LostModel(AppDb db, TimeProvider clock, LayoutLine line, FamilyWork work) : WaysPage(db, clock, line)
{
    /// <summary>Longer than this, it is a break: that is written into the school year.</summary>
    public const int MostDays = 21;

    public DateOnly From { get; private set; }
    public DateOnly To { get; private set; }

    /// <summary>Lost through which day, as typed.</summary>
    [BindProperty(SupportsGet = true, Name = "to")]
    public string? Until { get; set; }

    /// <summary>The illness of some of the children, by which only what is theirs was hit; null where the days were lost for all.</summary>
    [BindProperty(SupportsGet = true, Name = "ill")]
    public Guid? Ill { get; set; }

    public override string Address => AddressOf(From, To, Ill);

    public static string AddressOf(DateOnly from, DateOnly to, Guid? ill)
    {
        string[] asks = [.. from == to ? [] : new[] { $"to={to.Iso()}" }, .. ill is null ? [] : new[] { $"ill={ill}" }];
        return $"/week/ways/{from.Iso()}{(asks.Length > 0 ? "?" : "")}{string.Join('&', asks)}";
    }

    public override string Title => Ill is not null ? $"What rested while somebody was ill, {(From == To ? "" : $"{From.InWords(Today)} to ")}{To.InWords(Today)}" : From == To ? TitleOfDay : $"{From.InWords(Today)} to {To.InWords(Today)} {(To < Today ? "fell" : "fall")} through";
    protected override string Key => Ill is { } spell ? FamilyWork.KeyOf(new DayRange(From, To), spell) : FamilyWork.KeyOf(new DayRange(From, To));

    private string TitleOfDay => From == Today ? "Today fell through" : $"{From.InWords(Today)} {(From < Today ? "fell" : "falls")} through";

    public async Task<IActionResult> OnGetAsync(string date) => await LoadAsync(date) ? Shown() : NotFound();

    public async Task<IActionResult> OnGetProgressAsync(string date) => await LoadAsync(date) ? this.Progress(Waiting) : NotFound();

    public async Task<IActionResult> OnPostAskAsync(string date)
    {
        if (!await LoadAsync(date))
            return NotFound();
        return ModelState.IsValid ? AskAgain() : Again();
    }

    public async Task<IActionResult> OnPostTakeAsync(string date, Guid job, FutureKind kind, Guid step) =>
        await LoadAsync(date) ? await TakeAsync(job, kind, step) : NotFound();

    protected override Guid? Ask() => Ill is { } spell ? work.AskIll(Family.Id, new DayRange(From, To), spell, $"Somebody was ill, {From:d MMMM} to {To:d MMMM}") : work.AskLost(Family.Id, new DayRange(From, To), From == To ? $"{From:dddd d MMMM} fell through" : $"{From:d MMMM} to {To:d MMMM} fell through");

    protected override IActionResult Taken(Guid stepId) => LocalRedirect($"/week/{IsoWeek.Of(From).Iso}?step={stepId}");

    private IActionResult Shown() => ModelState.IsValid ? Page() : Again();

    private async Task<bool> LoadAsync(string date)
    {
        if (!DayWords.TryRead(date, out var from) || Ill is { } spell && !await Db.IllSpells.AnyAsync(s => s.Id == spell, Ct))
            return false;
        (From, To) = (from, from);
        if (!string.IsNullOrEmpty(Until))
        {
            if (!DayWords.TryRead(Until, out var to))
                ModelState.AddModelError("to", "Write the last day as a date.");
            else if (to < from)
                ModelState.AddModelError("to", "The last day lies before the first.");
            else if (to.DayNumber - from.DayNumber >= MostDays)
                ModelState.AddModelError("to", $"At most {MostDays} days can be looked at; a longer time is a break of the school year.");
            else
                To = to;
        }

        await FindAsync();
        return true;
    }
}
