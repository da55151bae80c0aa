using System.ComponentModel.DataAnnotations;
using CoopLessons.Data;
using CoopLessons.Data.Coops.News;
using CoopLessons.Data.Coops.Off;
using Microsoft.AspNetCore.Mvc;
using Microsoft.EntityFrameworkCore;

namespace CoopLessons.Web.Pages.Coops;

/// <summary>A leading family calls a meeting off, on a phone before breakfast, or says that it is held after all.</summary>
public sealed class CallOffModel(AppDb db, TimeProvider clock) : LostMeetingPage(db, clock)
{
    private const string SomethingElse = "other";

    /// <summary>By the value of the choice, what it says.</summary>
    public static readonly IReadOnlyList<(string Word, string Says)> Reasons = [("snow", "Snow"), ("illness", "Illness"), ("weather", "Other weather"), (SomethingElse, "Something else")];

    public const int LongestReason = 60;

    [BindProperty]
    public InputModel Input { get; set; } = new();

    public IReadOnlyList<SpoilsSoon> Spoils { get; private set; } = [];

    /// <summary>Titles of classes that say nothing of home.</summary>
    public IReadOnlyList<string> Unwritten { get; private set; } = [];

    /// <summary>Until the day is over, and while no other day stands instead.</summary>
    public bool MayMeet => !Meeting.Stands && Today <= Meeting.On && Instead is null;

    protected override bool IsForLeaders => true;

    public async Task<IActionResult> OnGetAsync()
    {
        if (!await FindAsync())
            return NotFound();
        Input.NewId = Guid.CreateVersion7();
        await ShowAsync();
        return Page();
    }

    public async Task<IActionResult> OnPostAsync()
    {
        if (!await FindAsync())
            return NotFound();
        // Called off already, perhaps by another leader in the same minute: the families are told once.
        if (!Meeting.Stands)
            return LocalRedirect(NewsPath(await NoticeAsync()));
        if (Today > Meeting.On)
            ModelState.AddModelError("", "That day is over.");
        if (Reasons.All(r => r.Word != Input.Why))
            ModelState.AddModelError("Input.Why", "Say why.");
        else if (Input.Why == SomethingElse && string.IsNullOrWhiteSpace(Input.Other))
            ModelState.AddModelError("Input.Other", "Say in a few words what it is.");
        // A page from before the meeting was called off and held after all says nothing new.
        if (await WasSentAsync())
            return LocalRedirect(NewsPath(Input.NewId));
        if (!ModelState.IsValid)
        {
            await ShowAsync();
            return Again();
        }

        var why = Input.Why == SomethingElse ? Input.Other!.Trim() : Input.Why == "weather" ? "the weather" : Input.Why!;
        DayOff.CallOff(Db, Meeting, Mine, Id, why, Input.Words ?? "", Now);
        if (!await SaveNewAsync())
            return LocalRedirect(await FindAsync() && !Meeting.Stands ? NewsPath(await NoticeAsync()) : $"/coop/{CoopId}/days/{MeetingId}/off");
        Say("It is called off, and all families are told.");
        return LocalRedirect(NewsPath(Id));
    }

    public async Task<IActionResult> OnPostAfterAsync()
    {
        if (!await FindAsync())
            return NotFound();
        if (Meeting.Stands || await WasSentAsync())
            return LocalRedirect($"/coop/{CoopId}/news");
        if (Instead is { } instead)
            ModelState.AddModelError("", $"{DayOff.Say(instead.On)} stands instead of it. Call that day off first.");
        else if (!MayMeet)
            ModelState.AddModelError("", "That day is over.");
        if (!ModelState.IsValid)
            return Again();
        DayOff.MeetAfterAll(Db, Meeting, Mine, Id, Input.Words ?? "", Now);
        if (!await SaveNewAsync())
            return LocalRedirect($"/coop/{CoopId}/days/{MeetingId}/off");
        Say("The meeting is held, and all families are told.");
        return LocalRedirect(NewsPath(Id));
    }

    private Guid Id => Input.NewId = Input.NewId == Guid.Empty ? Guid.CreateVersion7() : Input.NewId;

    private Task<bool> WasSentAsync() => Db.CoopNotices.AnyAsync(n => n.CoopId == CoopId && n.Id == Input.NewId, Ct);

    private async Task ShowAsync()
    {
        var held = await AtHome.HeldAsync(Db, Meeting, Ct);
        Unwritten = [.. held.Where(c => c.Details.HomeVersions.Count == 0).Select(c => c.Title)];
        Spoils = HomeDay.Spoils(held, await Db.CoopAdults.AsNoTracking().Where(a => a.CoopId == CoopId).ToListAsync(Ct));
    }

    public sealed class InputModel
    {
        public Guid NewId { get; set; }

        public string? Why { get; set; }

        [StringLength(LongestReason, ErrorMessage = "At most {1} signs here.")]
        public string? Other { get; set; }

        [StringLength(CoopNotice.LongestText, ErrorMessage = "At most {1} signs here.")]
        public string? Words { get; set; }
    }
}
