using CoopLessons.Data.Scenario;
using CoopLessons.Web.Security;

namespace CoopLessons.Web.Hosting;

/// <summary>The invented co-op, loaded into an empty server for somebody who would like to look around.</summary>
public sealed class DemoCoop(IServiceProvider services, TimeProvider clock, ILogger<DemoCoop> log)
{
    /// <summary>Loads it with one password for all its people, made for this once and kept nowhere.</summary>
    public async Task<(MillraceLoaded Coop, string Password)> LoadAsync(CancellationToken ct)
    {
        var password = RandomPassword.Make();
        // The co-op lives in the Central zone.
        var zone = TimeZoneInfo.FindSystemTimeZoneById("America/Chicago");
        var today = DateOnly.FromDateTime(TimeZoneInfo.ConvertTime(clock.GetUtcNow(), zone).DateTime);
        var progress = new Progress<string>(sentence => log.LogInformation("{Sentence}", sentence));
        return (await Millrace.LoadAsync(services, today, password, progress, ct), password);
    }
}
