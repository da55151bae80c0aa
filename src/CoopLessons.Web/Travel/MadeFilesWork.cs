namespace CoopLessons.Web.Travel;

/// <summary>Takes made files away once they have lain their day.</summary>
public sealed class MadeFilesWork(IEnumerable<MadeFiles> rooms, TimeProvider clock, ILogger<MadeFilesWork> log) : BackgroundService
{
    private static readonly TimeSpan Every = TimeSpan.FromMinutes(10);

    protected override async Task ExecuteAsync(CancellationToken stoppingToken)
    {
        try
        {
            while (true)
            {
                await Task.Delay(Every, clock, stoppingToken);
                Sweep();
            }
        }
        catch (OperationCanceledException) when (stoppingToken.IsCancellationRequested)
        {
            // The server stops.
        }
    }

    private void Sweep()
    {
        try
        {
            foreach (var made in rooms)
                made.Sweep(clock.GetUtcNow().UtcDateTime);
        }
        catch (IOException fault)
        {
            log.LogError(fault, "A made file could not be taken away");
        }
    }
}
