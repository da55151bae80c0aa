using CoopLessons.Data.People;
using CoopLessons.Data.Scenario;
using CoopLessons.Web.Security;
using Microsoft.AspNetCore.Identity;
using Microsoft.EntityFrameworkCore;

namespace CoopLessons.Web.Hosting;

/// <summary>The invented co-op, loaded into an empty server for somebody who would like to look around.</summary>
public sealed class DemoCoop(IServiceProvider services, TimeProvider clock, ILogger<DemoCoop> log)
{
    /// <summary>Every address of the co-op ends like this; the ending is kept free for examples (RFC 2606), so nobody real has one.</summary>
    public const string AddressEnding = ".millrace.example";

    /// <summary>
    /// A new shared password for the people of a co-op that is here already; null where there are none, or others
    /// beside them.
    /// </summary>
    public async Task<(IReadOnlyList<Person> People, string Password)?> ReopenAsync(CancellationToken ct)
    {
        await using var scope = services.CreateAsyncScope();
        var manager = scope.ServiceProvider.GetRequiredService<UserManager<Person>>();
        var all = await manager.Users.OrderBy(p => p.Email).ToListAsync(ct);
        if (all.Count == 0 || !all.TrueForAll(p => p.Email?.EndsWith(AddressEnding, StringComparison.Ordinal) == true))
            return null;
        var password = RandomPassword.Make();
        foreach (var person in all)
        {
            await manager.RemovePasswordAsync(person);
            await manager.AddPasswordAsync(person, password);
        }

        return (all, password);
    }

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
