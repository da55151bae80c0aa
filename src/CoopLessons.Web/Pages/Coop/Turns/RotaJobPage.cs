using CoopLessons.Data;
using CoopLessons.Web.Planning;
using Microsoft.AspNetCore.Mvc;

namespace CoopLessons.Web.Pages.Coops;

/// <summary>A page that asks for turns, shows how far they are, and shows them before they are taken.</summary>
public abstract class RotaJobPage(AppDb db, TimeProvider clock, LayoutLine line) : CoopPage(db, clock)
{
    public const string Busy = "The server is busy with what others asked for. Ask again in a minute.";

    public JobStanding? Job { get; protected set; }

    public abstract string Address { get; }

    protected LayoutLine Line => line;

    /// <summary>How the job stands, in one sentence.</summary>
    public string JobTells => Job switch
    {
        { State: JobState.Waiting, Place: 1 } => "This is the next to be worked out.",
        { State: JobState.Waiting } => "Others are worked out before this one.",
        { State: JobState.Running, Step.Length: > 0 } => Job.Step + ".",
        { State: JobState.Failed } => "The turns could not be worked out. What happened is in the server’s log; the rota is as it was.",
        { State: JobState.Dropped } => "This was called off.",
        { State: JobState.Done } => "This is worked out.",
        _ => "This is being worked out.",
    };

    public WorkAtHand Waiting => new(Job, JobTells, Address, Address + "?handler=Progress");

    protected IActionResult CalledOff()
    {
        if (Job is { IsOver: false })
            line.Cancel(CoopId, Job.Id);
        return LocalRedirect(Address);
    }

    protected IActionResult Refused(string sentence, int status = StatusCodes.Status422UnprocessableEntity)
    {
        ModelState.AddModelError("", sentence);
        return Again(status);
    }
}
