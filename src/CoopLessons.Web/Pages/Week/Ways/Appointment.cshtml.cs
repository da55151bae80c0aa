using CoopLessons.Data;
using CoopLessons.Data.Planning;
using CoopLessons.Data.Planning.Futures;
using CoopLessons.Web.Pages.Today;
using CoopLessons.Web.Planning;
using Microsoft.AspNetCore.Mvc;
using Microsoft.EntityFrameworkCore;
using IsoWeek = CoopLessons.Core.Calendar.Week;

namespace CoopLessons.Web.Pages.Week.Ways;

/// <summary>An appointment came that takes hours in which something is planned: what now.</summary>
public sealed class AppointmentModel(AppDb db, TimeProvider clock, LayoutLine line, FamilyWork work) : WaysPage(db, clock, line)
{
    public Appointment Appointment { get; private set; } = null!;
    public IsoWeek Shown { get; private set; }

    public override string Address => $"/week/ways/{Shown.Iso}/appointment/{Appointment.Id}";
    public override string Title => $"{Appointment.Title} takes its time";
    protected override string Key => FamilyWork.KeyOf(Appointment.Id, Shown);

    public async Task<IActionResult> OnGetAsync(string week, Guid appointmentId) => await LoadAsync(week, appointmentId) ? Page() : NotFound();

    public async Task<IActionResult> OnGetProgressAsync(string week, Guid appointmentId) => await LoadAsync(week, appointmentId) ? this.Progress(Waiting) : NotFound();

    public async Task<IActionResult> OnPostAskAsync(string week, Guid appointmentId) => await LoadAsync(week, appointmentId) ? AskAgain() : NotFound();

    public async Task<IActionResult> OnPostTakeAsync(string week, Guid appointmentId, Guid job, FutureKind kind, Guid step) =>
        await LoadAsync(week, appointmentId) ? await TakeAsync(job, kind, step) : NotFound();

    protected override Guid? Ask() => work.AskAppointment(Family.Id, Appointment.Id, Shown, Title);

    protected override IActionResult Taken(Guid stepId) => LocalRedirect($"/week/{Shown.Iso}?step={stepId}");

    private async Task<bool> LoadAsync(string week, Guid appointmentId)
    {
        if (!DayWords.TryWeek(week, out var shown) || await Db.Appointments.AsNoTracking().SingleOrDefaultAsync(a => a.Id == appointmentId, Ct) is not { } appointment)
            return false;
        (Shown, Appointment) = (shown, appointment);
        await FindAsync();
        return true;
    }
}
