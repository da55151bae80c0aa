using CoopLessons.Web.Hosting;

namespace CoopLessons.Web.Notices;

/// <summary>Goes round every half minute, where the host has set a mail server.</summary>
public sealed class MailWork(MailRound round, ServerSettings settings, TimeProvider clock, ILogger<MailWork> log) : BackgroundService
{
    private static readonly TimeSpan Every = TimeSpan.FromSeconds(30);

    protected override async Task ExecuteAsync(CancellationToken stoppingToken)
    {
        if (settings.Mail is null)
            return;
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
            log.LogError(fault, "A round of mails failed");
        }
    }
}
