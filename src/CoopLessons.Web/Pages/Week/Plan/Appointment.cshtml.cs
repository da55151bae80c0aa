using CoopLessons.Core.Calendar;
using CoopLessons.Data;
using CoopLessons.Data.Planning;
using CoopLessons.Web.Pages.Today;
using Microsoft.AspNetCore.Mvc;

namespace CoopLessons.Web.Pages.Planning;

/// <summary>An appointment: what, who, when, and how it comes back.</summary>
public sealed class AppointmentModel(AppDb db, TimeProvider clock) : PlanThingPage<Appointment, AppointmentInput>(db, clock)
{
    private const int DaysShown = 5;

    /// <summary>The next days on which it takes place, as saved or, where they were asked for, as the form says.</summary>
    public IReadOnlyList<DateOnly> NextDays { get; private set; } = [];

    protected override IQueryable<Appointment> Rows(Guid id) => Db.Appointments.Where(a => a.Id == id);

    protected override AppointmentInput FormOf(Appointment row)
    {
        NextDays = Next(row);
        return AppointmentInput.Of(row);
    }

    protected override string TitleOf(Appointment row) => row.Title;

    protected override bool NamesOwn() => Choices.HasLearners(Input.Learners) && Choices.HasAdults(Input.Adults) && Choices.HasSubject(Input.SubjectId);

    protected override void Check() => Input.Check(ModelState);

    protected override Task BeginAsync()
    {
        Input = new AppointmentInput { Kind = AppointmentKind.LessonOut, First = Today, Minutes = 60, Learners = [.. Choices.Taught.Select(l => l.Id)] };
        return Task.CompletedTask;
    }

    protected override Task<Appointment> MakeAsync(Guid id) => Task.FromResult(new Appointment(id, Input.Read()));

    protected override void Write(Appointment row) => row.Describe(Input.Read());

    protected override string Saved(Appointment row) =>
        Next(row) is { Count: > 0 } days ? $"“{row.Title}” is saved; it is next on {days[0].InWords(Today)}." : $"“{row.Title}” is saved. None of its days is still to come.";

    protected override Task<IReadOnlyList<string>> BecomesAsync(Appointment row) => Task.FromResult<IReadOnlyList<string>>(
        ["It goes from every day, also from days gone by. What was logged of it stays as it is written.", "Sessions that are planned stay where they are. To end it, give it a last day instead."]);

    /// <summary>Shows the next days that the form would give. Nothing is saved.</summary>
    public async Task<IActionResult> OnPostDatesAsync(string id)
    {
        if (!await FindAsync(id) || !NamesOwn())
            return NotFound();
        Check();
        if (!ModelState.IsValid)
            return Again();
        NextDays = Next(new Appointment(Guid.Empty, Input.Read()));
        return Page();
    }

    private IReadOnlyList<DateOnly> Next(Appointment appointment)
    {
        RepeatRule.TryRead(appointment.Repeats, out var rule, out _);
        return [.. rule.Next(appointment.First, Today, DaysShown + appointment.Except.Count).Where(d => !appointment.Except.Contains(d)).Take(DaysShown)];
    }
}
