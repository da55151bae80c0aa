using System.ComponentModel.DataAnnotations;
using CoopLessons.Data;
using CoopLessons.Data.Coops.Days;
using Microsoft.AspNetCore.Mvc;
using Microsoft.AspNetCore.Mvc.Filters;
using Microsoft.EntityFrameworkCore;

namespace CoopLessons.Web.Pages.Coops;

public sealed record RoomAdults(TimetablePage Page, CoopClass Class);

/// <summary>A page of one class day.</summary>
public abstract class MeetingPage(AppDb db, TimeProvider clock) : TimetablePage(db, clock)
{
    [BindProperty(SupportsGet = true, Name = "meetingId")]
    public Guid MeetingId { get; set; }

    public CoopMeeting Meeting { get; private set; } = null!;

    /// <summary>Classes of the day by period and room.</summary>
    public IReadOnlyList<CoopClass> Held { get; private set; } = [];

    public override Task OnPageHandlerExecutionAsync(PageHandlerExecutingContext context, PageHandlerExecutionDelegate next) =>
        base.OnPageHandlerExecutionAsync(context, async () =>
        {
            if (!await FindAsync())
            {
                context.Result = NotFound();
                return new PageHandlerExecutedContext(PageContext, [], context.HandlerMethod, context.HandlerInstance);
            }

            return await next();
        });

    protected async Task<bool> FindAsync()
    {
        if (await Db.CoopMeetings.SingleOrDefaultAsync(m => m.CoopId == CoopId && m.Id == MeetingId, Ct) is not { } found)
            return false;
        Meeting = found;
        await ReadTableAsync();
        Held = [.. Table.On(Meeting.On)];
        return true;
    }
}

/// <summary>A class day: by period and room who teaches, who is there, and whether the room may open.</summary>
public sealed class DayModel(AppDb db, TimeProvider clock) : MeetingPage(db, clock)
{
    [BindProperty]
    public InputModel Input { get; set; } = new();

    public void OnGet() => Input = new() { On = Meeting.On, Where = Meeting.Where, Note = Meeting.Note, Version = Meeting.Version };

    public async Task<IActionResult> OnPostChangeAsync()
    {
        if (!Mine.Leads)
            return Forbid();
        if (Input.On is { } on && (on < Today.AddYears(-1) || on > Today.AddYears(3)))
            ModelState.AddModelError("Input.On", "A day from last year until three years ahead.");
        if (ModelState.IsValid && await Db.CoopMeetings.AnyAsync(m => m.CoopId == CoopId && m.Id != MeetingId && m.On == Input.On, Ct))
            ModelState.AddModelError("Input.On", "The co-op meets on this day already.");
        if (ModelState.IsValid && Input.On != Meeting.On && await WasTakenAsync())
            ModelState.AddModelError("Input.On", "Attendance was taken on this day, so it stays where it is.");
        if (!ModelState.IsValid)
            return Again();
        Expect(Meeting, Input.Version);
        Meeting.Describe(Input.On!.Value, Input.Where?.Trim() ?? "", Input.Note?.Trim() ?? "");
        if (!await SaveAsync())
        {
            await FindAsync();
            return Again(StatusCodes.Status409Conflict);
        }

        Say("Saved. All families see it.");
        return LocalRedirect($"{Here}/days/{MeetingId}");
    }

    public async Task<IActionResult> OnPostRemoveAsync()
    {
        ModelState.Clear();
        if (!Mine.Leads)
            return Forbid();
        OnGet();
        if (await WasTakenAsync())
            return Refused("", "Attendance was taken on this day, so it stays.");
        Db.CoopMeetings.Remove(Meeting);
        if (!await SaveAsync())
        {
            await FindAsync();
            return Again(StatusCodes.Status409Conflict);
        }

        Say("The day is removed.");
        return LocalRedirect($"{Here}/days");
    }

    private Task<bool> WasTakenAsync() => Db.AttendancesTaken.AnyAsync(a => a.CoopId == CoopId && a.MeetingId == MeetingId, Ct);

    public sealed class InputModel
    {
        [Required(ErrorMessage = "Choose a day.")]
        public DateOnly? On { get; set; }

        [StringLength(CoopMeeting.LongestWhere, ErrorMessage = "At most {1} signs here.")]
        public string? Where { get; set; }

        [StringLength(CoopMeeting.LongestNote, ErrorMessage = "At most {1} signs here.")]
        public string? Note { get; set; }

        public int Version { get; set; }
    }
}
