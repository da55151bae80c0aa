using CoopLessons.Core.Schedule;

namespace CoopLessons.Web.Planning;

/// <summary>Where a long computation stands.</summary>
public enum JobState
{
    /// <summary>In line, behind others.</summary>
    Waiting,
    Running,
    Done,

    /// <summary>It ended in a fault; what happened is in the server's log.</summary>
    Failed,

    /// <summary>Nobody needs it any more: it was cancelled, or a newer one took its place.</summary>
    Dropped,
}

/// <summary>A long computation as it stood at one moment.</summary>
/// <param name="Key">What it is about, within its owner's jobs, such as a week.</param>
/// <param name="Place">1 for the next in line; 0 where it is not waiting.</param>
/// <param name="Step">A sentence without a full stop; empty before the first.</param>
/// <param name="Share">0 to 1, never falling.</param>
/// <param name="Result">What it came to; null unless it is done.</param>
/// <param name="Fault">A sentence to show; null unless it failed.</param>
/// <param name="ReplacedBy">The job that took the place of one that was dropped; null where it was cancelled.</param>
public sealed record JobStanding(
    Guid Id, string Key, JobState State, int Place, string Step, double Share, object? Result, string? Fault, Guid? ReplacedBy)
{
    public bool IsOver => State is JobState.Done or JobState.Failed or JobState.Dropped;
}

/// <summary>One long computation. Its line changes it under the line's lock and nobody else does.</summary>
/// <param name="number">Greater than that of every job that was asked for before.</param>
internal sealed class LayoutJob(long number, Guid ownerId, string key, Func<IProgress<LayoutProgress>, CancellationToken, Task<object>> work) : IDisposable
{
    private readonly CancellationTokenSource _cancelling = new();
    private readonly TaskCompletionSource _over = new(TaskCreationOptions.RunContinuationsAsynchronously);
    private (string Text, double Share) _step = ("", 0);
    private object? _result;
    private string? _fault;
    private Guid? _replacedBy;

    public Guid Id { get; } = Guid.CreateVersion7();
    public long Number => number;
    public Guid OwnerId => ownerId;
    public string Key => key;
    public JobState State { get; private set; }
    public DateTimeOffset OverSince { get; private set; }
    public bool IsOpen => State is JobState.Waiting or JobState.Running;

    /// <summary>Done, failed or dropped.</summary>
    public Task Over => _over.Task;

    /// <summary>Asked once, before the job can be over.</summary>
    public CancellationToken Cancelled => _cancelling.Token;

    public Task<object> WorkAsync(IProgress<LayoutProgress> progress, CancellationToken ct) => work(progress, ct);

    public JobStanding Standing(int place) => new(Id, key, State, place, _step.Text, _step.Share, _result, _fault, _replacedBy);

    public void Start() => State = JobState.Running;

    public void Tell(LayoutProgress progress)
    {
        if (State == JobState.Running)
            _step = (progress.Step, Math.Clamp(progress.Share, _step.Share, 1));
    }

    public void Finish(object result, DateTimeOffset now)
    {
        (_result, _step) = (result, (_step.Text, 1));
        End(JobState.Done, now);
    }

    public void Fail(string sentence, DateTimeOffset now)
    {
        _fault = sentence;
        End(JobState.Failed, now);
    }

    public void Drop(Guid? replacedBy, DateTimeOffset now)
    {
        _replacedBy = replacedBy;
        End(JobState.Dropped, now);
    }

    /// <summary>Tells the work to stop. Callbacks of the work run here, so that the line calls it outside its lock.</summary>
    public void Cancel()
    {
        try
        {
            _cancelling.Cancel();
        }
        catch (ObjectDisposedException)
        {
            // The work ended in the same moment: there is nothing to stop.
        }
    }

    public void Dispose() => _cancelling.Dispose();

    private void End(JobState state, DateTimeOffset now)
    {
        (State, OverSince) = (state, now);
        _over.SetResult();
    }
}
