using CoopLessons.Data;
using CoopLessons.Data.Families;
using CoopLessons.Data.Schedule;
using CoopLessons.Data.Units;
using CoopLessons.Web.Pages.Today;
using CoopLessons.Web.Pages.Units;
using Microsoft.AspNetCore.Mvc;
using Microsoft.AspNetCore.Mvc.ModelBinding;
using Microsoft.EntityFrameworkCore;
using IsoWeek = CoopLessons.Core.Calendar.Week;

namespace CoopLessons.Web.Pages.Week;

/// <summary>Gives an activity a day.</summary>
public sealed class PlaceModel(AppDb db, TimeProvider clock) : UnitsPage(db, clock)
{
    public sealed class InputModel : PlanForm
    {
        /// <summary>Minted with the page: a second sending is known by it.</summary>
        public Guid SessionId { get; set; }

        public List<Guid> Learners { get; set; } = [];
    }

    [BindProperty]
    public InputModel Input { get; set; } = new();

    public Activity Activity { get; private set; } = null!;
    public IReadOnlyList<Learner> Learners { get; private set; } = [];

    public MinutesOffers Minutes { get; private set; } = null!;

    /// <summary>Days on which it is planned already.</summary>
    public IReadOnlyList<DateOnly> Already { get; private set; } = [];

    /// <param name="week">The week for which a day is looked for.</param>
    public async Task<IActionResult> OnGetAsync(Guid activityId, string? week)
    {
        if (!await LoadAsync(activityId))
            return NotFound();
        await ProposeAsync(week);
        return Page();
    }

    /// <summary>Takes minutes that the log's memory offers for the activity, before it is placed.</summary>
    public async Task<IActionResult> OnPostTakeMinutesAsync(Guid activityId, int minutes, int version)
    {
        if (!await LoadAsync(activityId))
            return NotFound();
        // The form that places it is another one: what it lacks is no fault here.
        if (ModelState.GetFieldValidationState(nameof(minutes)) == ModelValidationState.Invalid || ModelState.GetFieldValidationState(nameof(version)) == ModelValidationState.Invalid)
            return BadRequest();
        ModelState.Clear();
        if (Activity.HandsOnMinutes == minutes || await TakeMinutesAsync(await Db.Activities.SingleAsync(a => a.Id == activityId, Ct), Minutes, minutes, version))
            return LocalRedirect($"/week/place/{activityId}");
        await LoadAsync(activityId);
        await ProposeAsync(null);
        return Again(StatusCodes.Status409Conflict);
    }

    private async Task ProposeAsync(string? week)
    {
        var from = IsoWeek.TryParse(week, out var shown) && shown.Monday > Today ? shown.Monday : Today;
        Input = new InputModel
        {
            SessionId = Guid.CreateVersion7(),
            Date = (await TeachingDays.LoadAsync(Db, Ct)).After(from.AddDays(-1), 1)[0],
            Learners = [.. Learners.Where(l => !l.SetAside).Select(l => l.Id)],
            Pinned = true,
        };
    }

    public async Task<IActionResult> OnPostAsync(Guid activityId)
    {
        if (!await LoadAsync(activityId) || Input.Learners.Any(id => Learners.All(l => l.Id != id)))
            return NotFound();
        if (Input.SessionId == Guid.Empty)
            return BadRequest();
        if (Input.Learners.Count == 0)
            ModelState.AddModelError("Input.Learners", "Tick at least one child.");
        if (Input.Read(ModelState) is not { } date)
            return Again();
        if (!await Db.PlannedSessions.AnyAsync(s => s.Id == Input.SessionId, Ct))
        {
            var order = await Db.PlannedSessions.Where(s => s.Date == date).MaxAsync(s => (int?)s.Order, Ct) ?? -1;
            var session = new PlannedSession(Input.SessionId, activityId, date, Input.StartsAt, order + 1, Input.Learners.Distinct());
            session.Pin(Input.Pinned);
            Db.PlannedSessions.Add(session);
            await SaveOnceAsync();
        }

        var doubt = (await TeachingDays.LoadAsync(Db, Ct)).Doubt(date);
        Say($"“{Activity.Title}” is planned for {date.InWords(Today)}{(doubt is null ? "" : $", {doubt}")}.");
        return LocalRedirect($"/week/{IsoWeek.Of(date).Iso}");
    }

    private async Task SaveOnceAsync()
    {
        try
        {
            await Db.SaveChangesAsync(Ct);
        }
        catch (DbUpdateException)
        {
            // Two sendings that arrived together: one of them is written.
            Db.ChangeTracker.Clear();
            if (!await Db.PlannedSessions.AnyAsync(s => s.Id == Input.SessionId, Ct))
                throw;
        }
    }

    private async Task<bool> LoadAsync(Guid activityId)
    {
        if (await Db.Activities.AsNoTracking().SingleOrDefaultAsync(a => a.Id == activityId, Ct) is not { } activity)
            return false;
        Activity = activity;
        Learners = await Db.Learners.AsNoTracking().OrderBy(l => l.Order).ThenBy(l => l.Id).ToListAsync(Ct);
        Minutes = await MinutesOffers.LoadAsync(Db, activity, Learners, $"/week/place/{activityId}?handler=TakeMinutes", Ct);
        Already = await Db.PlannedSessions.Where(s => s.ActivityId == activityId && s.State != SessionState.LetGo).Select(s => s.Date).Distinct().OrderBy(d => d).ToListAsync(Ct);
        return true;
    }
}
