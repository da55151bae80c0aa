using System.ComponentModel.DataAnnotations;
using CoopLessons.Data;
using CoopLessons.Data.Coops.Off;
using Microsoft.AspNetCore.Mvc;
using Microsoft.EntityFrameworkCore;

namespace CoopLessons.Web.Pages.Coops;

/// <summary>A leading family finds a day on which a lost meeting is made up for, each day looked at against what the co-op has.</summary>
public sealed class AgainModel(AppDb db, TimeProvider clock) : LostMeetingPage(db, clock)
{
    private const int MostDays = 6;

    /// <summary>A day that the leader wants looked at besides.</summary>
    [BindProperty(SupportsGet = true)]
    public DateOnly? Other { get; set; }

    [BindProperty]
    public InputModel Input { get; set; } = new();

    public IReadOnlyList<MakeUpDay> Days { get; private set; } = [];

    public IReadOnlyList<string> OnAnyDay { get; private set; } = [];

    protected override bool IsForLeaders => true;

    public async Task<IActionResult> OnGetAsync()
    {
        if (!await FindAsync())
            return NotFound();
        (Input.NewId, Input.NoticeId) = (Guid.CreateVersion7(), Guid.CreateVersion7());
        Show(await MakeUpDays.ReadAsync(Db, Meeting, Ct));
        return ModelState.IsValid ? Page() : Again();
    }

    public async Task<IActionResult> OnPostAsync()
    {
        if (!await FindAsync())
            return NotFound();
        if (await Db.CoopMeetings.AnyAsync(m => m.CoopId == CoopId && m.Id == Input.NewId, Ct))
            return LocalRedirect(NewsPath(Input.NoticeId));
        var ask = await MakeUpDays.ReadAsync(Db, Meeting, Ct);
        if (Meeting.Stands)
            ModelState.AddModelError("", "The meeting stands: it needs no other day.");
        else if (Instead is not null)
            ModelState.AddModelError("", "Another day stands already.");
        else if (Input.On is not { } on)
            ModelState.AddModelError("Input.On", "Choose a day.");
        else if (!ask.IsFree(on, Today))
            ModelState.AddModelError("Input.On", Taken(ask, on));
        if (!ModelState.IsValid)
        {
            Show(ask);
            return Again();
        }

        var (meeting, notice) = (Input.NewId == Guid.Empty ? Guid.CreateVersion7() : Input.NewId, Input.NoticeId == Guid.Empty ? Guid.CreateVersion7() : Input.NoticeId);
        DayOff.MakeUp(Db, Meeting, Mine, meeting, notice, Input.On!.Value, Now);
        // Two leaders who choose two days at once must not both succeed.
        Db.Entry(Meeting).State = EntityState.Modified;
        if (!await SaveNewAsync())
            return LocalRedirect($"/coop/{CoopId}/days/{MeetingId}/again");
        Say("The day is taken, and all families are told.");
        return LocalRedirect(NewsPath(notice));
    }

    private void Show(MakeUpDays ask)
    {
        if (Meeting.Stands || Instead is not null)
            return;
        OnAnyDay = ask.OnAnyDay();
        var days = ask.Propose(Today, MostDays);
        if (Other is { } other && days.All(d => d.On != other))
        {
            if (ask.IsFree(other, Today))
                days = [ask.Look(other), .. days];
            else
                ModelState.AddModelError(nameof(Other), Taken(ask, other));
        }

        Days = days;
        Input.On ??= Other is { } chosen && days.Any(d => d.On == chosen) ? chosen : (days is [var first, ..] ? first.On : null);
    }

    private static string Taken(MakeUpDays ask, DateOnly on) =>
        ask.Meetings.Any(m => m.On == on) ? $"The co-op has a meeting on {DayOff.Say(on)} already." : "A day instead lies ahead, and after the lost one.";

    public sealed class InputModel
    {
        public Guid NewId { get; set; }

        public Guid NoticeId { get; set; }

        [DataType(DataType.Date)]
        public DateOnly? On { get; set; }
    }
}
