using System.Threading.Channels;
using CoopLessons.Core.Schedule;
using CoopLessons.Web.Hosting;

namespace CoopLessons.Web.Planning;

/// <summary>
/// The line of long computations: they are done one at a time, since each takes a whole core for a while, in the order in
/// which they were asked for. An owner, a family or a co-op, has at most one open job for a key; asking again drops the older
/// one. What is over is kept in memory for a while and forgotten when the server stops. A job is shown to its owner alone.
/// </summary>
public sealed class LayoutLine(ServerSettings settings, TimeProvider clock)
{
    /// <summary>How many jobs that are over are kept at most; the oldest go first.</summary>
    public const int MostKept = 200;

    /// <summary>How long a job that is over is kept.</summary>
    public static readonly TimeSpan Kept = TimeSpan.FromHours(1);

    private readonly Lock _lock = new();
    private readonly List<LayoutJob> _line = [];
    private readonly Dictionary<Guid, LayoutJob> _jobs = [];
    private long _asked;

    // One sign is enough, however many jobs were added since the last look.
    private readonly Channel<bool> _signs = Channel.CreateBounded<bool>(new BoundedChannelOptions(1) { FullMode = BoundedChannelFullMode.DropWrite });

    /// <summary>
    /// Puts a computation in line. One of the same owner and key that waits gives its place to this one; one that runs is
    /// stopped.
    /// </summary>
    /// <param name="work">Runs outside the request: it opens its own scope, acts for its owner itself and ends soon once it is cancelled.</param>
    /// <returns>The id of the job; null where the line is full and nothing was changed.</returns>
    public Guid? Ask<T>(Guid owner, string key, Func<IProgress<LayoutProgress>, CancellationToken, Task<T>> work)
        where T : class
    {
        var job = new LayoutJob(Interlocked.Increment(ref _asked), owner, key, async (progress, ct) => await work(progress, ct));
        LayoutJob? older;
        lock (_lock)
        {
            Forget();
            older = _jobs.Values.FirstOrDefault(j => j.IsOpen && j.OwnerId == owner && j.Key == key);
            var place = older is null ? -1 : _line.IndexOf(older);
            if (place < 0 && _line.Count >= settings.LayoutsInLine)
            {
                job.Dispose();
                return null;
            }

            if (place < 0)
                _line.Add(job);
            else
                _line[place] = job;
            _jobs.Add(job.Id, job);
            older?.Drop(job.Id, clock.GetUtcNow());
        }

        older?.Cancel();
        _signs.Writer.TryWrite(true);
        return job.Id;
    }

    /// <summary>How a job of the owner stands; null for another's, and for one that was forgotten or never was.</summary>
    public JobStanding? Find(Guid owner, Guid id)
    {
        lock (_lock)
        {
            Forget();
            return Own(owner, id) is { } job ? Standing(job) : null;
        }
    }

    /// <summary>The owner's newest job for a key, also one that is over; null where none is known.</summary>
    public JobStanding? Newest(Guid owner, string key)
    {
        lock (_lock)
        {
            Forget();
            return _jobs.Values.Where(j => j.OwnerId == owner && j.Key == key).MaxBy(j => j.Number) is { } job ? Standing(job) : null;
        }
    }

    /// <summary>Drops a job that waits or runs; one that is over stays as it is. False where the owner has none of that id.</summary>
    public bool Cancel(Guid owner, Guid id)
    {
        LayoutJob? job;
        lock (_lock)
        {
            job = Own(owner, id);
            if (job is null)
                return false;
            if (!job.IsOpen)
                return true;
            _line.Remove(job);
            job.Drop(null, clock.GetUtcNow());
        }

        job.Cancel();
        return true;
    }

    /// <summary>Waits until a job is over, or until the caller no longer wants to; at once where it is not known.</summary>
    public Task WaitAsync(Guid owner, Guid id, CancellationToken ct)
    {
        lock (_lock)
            return Own(owner, id)?.Over.WaitAsync(ct) ?? Task.CompletedTask;
    }

    /// <summary>The next job, already running; waits until there is one.</summary>
    internal async Task<LayoutJob> TakeAsync(CancellationToken ct)
    {
        while (true)
        {
            lock (_lock)
            {
                if (_line.Count > 0)
                {
                    var job = _line[0];
                    _line.RemoveAt(0);
                    job.Start();
                    return job;
                }
            }

            await _signs.Reader.ReadAsync(ct);
        }
    }

    /// <summary>Changes a job that still runs; one that was dropped meanwhile stays dropped.</summary>
    internal void Change(LayoutJob job, Action<LayoutJob, DateTimeOffset> change)
    {
        lock (_lock)
        {
            if (job.State == JobState.Running)
                change(job, clock.GetUtcNow());
        }
    }

    private LayoutJob? Own(Guid owner, Guid id) => _jobs.GetValueOrDefault(id) is { } job && job.OwnerId == owner ? job : null;

    private JobStanding Standing(LayoutJob job) => job.Standing(_line.IndexOf(job) + 1);

    private void Forget()
    {
        var now = clock.GetUtcNow();
        var over = _jobs.Values.Where(j => !j.IsOpen).OrderByDescending(j => j.OverSince).ThenByDescending(j => j.Number).ToList();
        foreach (var job in over.Where((j, i) => i >= MostKept || now - j.OverSince >= Kept))
            _jobs.Remove(job.Id);
    }
}
