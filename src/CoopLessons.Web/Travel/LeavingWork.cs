namespace CoopLessons.Web.Travel;

/// <summary>Goes round every ten minutes.</summary>
public sealed class LeavingWork(LeavingRound round, TimeProvider clock, ILogger<LeavingWork> log) : BackgroundService
{
    private static readonly TimeSpan Every = TimeSpan.FromMinutes(10);

    protected override async Task ExecuteAsync(CancellationToken stoppingToken)
    {
        try
        {
            while (true)
            {
                await Task.Delay(Every, clock, stoppingToken);
                await RoundAsync(stoppingToken);
            }
        }
        catch (OperationCanceledException) when (stoppingToken.IsCancellationRequested)
        {
            // The server stops.
        }
    }

    private async Task RoundAsync(CancellationToken ct)
    {
        try
        {
            await round.RunAsync(ct);
        }
        catch (Exception fault) when (fault is not OperationCanceledException and not OutOfMemoryException)
        {
            log.LogError(fault, "A round of families that leave failed");
        }
    }
}
