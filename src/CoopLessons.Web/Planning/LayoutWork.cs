using CoopLessons.Core.Schedule;

namespace CoopLessons.Web.Planning;

/// <summary>Does what stands in line, one job at a time, while the server runs.</summary>
public sealed class LayoutWork(LayoutLine line, ILogger<LayoutWork> log) : BackgroundService
{
    protected override async Task ExecuteAsync(CancellationToken stoppingToken)
    {
        try
        {
            while (true)
            {
                using var job = await line.TakeAsync(stoppingToken);
                await DoAsync(job, stoppingToken);
            }
        }
        catch (OperationCanceledException) when (stoppingToken.IsCancellationRequested)
        {
            // The server stops; what waited is forgotten with it.
        }
    }

    private async Task DoAsync(LayoutJob job, CancellationToken stoppingToken)
    {
        using var ending = CancellationTokenSource.CreateLinkedTokenSource(job.Cancelled, stoppingToken);
        try
        {
            // The work may compute for a second before it first waits for anything.
            var result = await Task.Run(() => job.WorkAsync(new Told(line, job), ending.Token), ending.Token);
            line.Change(job, (j, now) => j.Finish(result, now));
        }
        catch (OperationCanceledException) when (ending.IsCancellationRequested)
        {
            line.Change(job, (j, now) => j.Drop(null, now));
        }
        catch (Exception fault) when (fault is not OutOfMemoryException)
        {
            log.LogError(fault, "A layout of “{Key}” failed", job.Key);
            line.Change(job, (j, now) => j.Fail(JobWords.Failed, now));
        }
    }

    // Told at once and in order, which the platform's own progress does not promise.
    private sealed class Told(LayoutLine line, LayoutJob job) : IProgress<LayoutProgress>
    {
        public void Report(LayoutProgress value) => line.Change(job, (j, _) => j.Tell(value));
    }
}
