using System.ComponentModel.DataAnnotations;
using CoopLessons.Data;
using CoopLessons.Data.Coops.Days;
using CoopLessons.Web.Pages.Today;
using Microsoft.AspNetCore.Mvc;
using Microsoft.EntityFrameworkCore;

namespace CoopLessons.Web.Pages.Coops;

/// <summary>The days on which a co-op meets.</summary>
public sealed class DaysModel(AppDb db, TimeProvider clock) : CoopPage(db, clock)
{
    /// <summary>As many weeks as a year has.</summary>
    public const int MostAtOnce = 53;

    [BindProperty]
    public InputModel Input { get; set; } = new();

    public IReadOnlyList<CoopMeeting> Ahead { get; private set; } = [];

    public IReadOnlyList<CoopMeeting> Past { get; private set; } = [];

    public string Here => $"/coop/{CoopId}";

    public async Task OnGetAsync()
    {
        await ListAsync();
        Input.NewId = Guid.CreateVersion7();
        Input.Where = Ahead.Concat(Past).FirstOrDefault()?.Where;
    }

    public async Task<IActionResult> OnPostAddAsync()
    {
        await ListAsync();
        if (!Mine.Leads)
            return Forbid();
        var known = Ahead.Concat(Past).ToList();
        if (known.Any(m => m.Id == Input.NewId))
            return Back();
        if (Input.On is { } day && (day < Today.AddYears(-1) || day > Today.AddYears(3)))
            ModelState.AddModelError("Input.On", "A day from last year until three years ahead.");
        var days = ModelState.IsValid ? Days() : [];
        if (ModelState.IsValid && days.All(d => known.Any(m => m.On == d)))
            ModelState.AddModelError("Input.On", days.Count == 1 ? "The co-op meets on this day already." : "The co-op meets on these days already.");
        if (!ModelState.IsValid)
            return Again();
        var added = days.Where(d => known.All(m => m.On != d)).ToList();
        for (var i = 0; i < added.Count; i++)
            Db.CoopMeetings.Add(new CoopMeeting(CoopId, i == 0 && Input.NewId != Guid.Empty ? Input.NewId : Guid.CreateVersion7(), added[i], Input.Where?.Trim() ?? ""));
        if (!await SaveNewAsync())
            return AgainAfterOthers("Input.On");
        Say(added.Count == 1 ? $"Added: {added[0].InWords(Today)}." : $"{added.Count} days are added, from {added[0].InWords(Today)} to {added[^1].InWords(Today)}.");
        return Back();
    }

    private List<DateOnly> Days()
    {
        var days = new List<DateOnly> { Input.On!.Value };
        if (Input.Until is not { } until)
            return days;
        if (until < days[0])
            ModelState.AddModelError("Input.Until", "The last day comes after the first.");
        else if (until > days[0].AddDays(7 * MostAtOnce))
            ModelState.AddModelError("Input.Until", "At most a year at once.");
        else
            for (var next = days[0].AddDays(7); next <= until; next = next.AddDays(7))
                days.Add(next);
        return days;
    }

    private LocalRedirectResult Back() => LocalRedirect($"{Here}/days");

    private async Task ListAsync()
    {
        var all = await Db.CoopMeetings.AsNoTracking().Where(m => m.CoopId == CoopId).OrderBy(m => m.On).ToListAsync(Ct);
        (Ahead, Past) = ([.. all.Where(m => m.On >= Today)], [.. all.Where(m => m.On < Today).Reverse()]);
    }

    public sealed class InputModel
    {
        public Guid NewId { get; set; }

        [Required(ErrorMessage = "Choose a day.")]
        public DateOnly? On { get; set; }

        public DateOnly? Until { get; set; }

        [StringLength(CoopMeeting.LongestWhere, ErrorMessage = "At most {1} signs here.")]
        public string? Where { get; set; }
    }
}
