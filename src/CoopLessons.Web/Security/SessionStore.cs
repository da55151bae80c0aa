using System.Security.Claims;
using System.Security.Cryptography;
using System.Text;
using CoopLessons.Data;
using CoopLessons.Data.People;
using Microsoft.AspNetCore.Authentication;
using Microsoft.AspNetCore.Authentication.Cookies;
using Microsoft.AspNetCore.DataProtection;
using Microsoft.EntityFrameworkCore;

namespace CoopLessons.Web.Security;

/// <summary>
/// Keeps sign-ins on the server: the cookie carries a random key, the row its hash and the sealed ticket. Ending a row
/// ends the sign-in at once, wherever the cookie has been copied to.
/// </summary>
public sealed class SessionStore(IServiceScopeFactory scopes, IDataProtectionProvider protection, IHttpContextAccessor http, TimeProvider clock) : ITicketStore
{
    private static readonly object Here = new();

    private readonly IDataProtector _seal = protection.CreateProtector("CoopLessons.SignInSession");

    public static string Hash(string key) => Convert.ToHexStringLower(SHA256.HashData(Encoding.UTF8.GetBytes(key)));

    /// <summary>The hash of the session that this request came with; null where it came with none.</summary>
    public static string? HashHere(HttpContext context) => context.Items[Here] as string;

    public async Task<string> StoreAsync(AuthenticationTicket ticket)
    {
        var key = Convert.ToHexStringLower(RandomNumberGenerator.GetBytes(32));
        await using var scope = scopes.CreateAsyncScope();
        var db = scope.ServiceProvider.GetRequiredService<AppDb>();
        var now = clock.GetUtcNow().UtcDateTime;
        var person = Guid.Parse(ticket.Principal.FindFirstValue(ClaimTypes.NameIdentifier)!);
        db.SignInSessions.Add(new SignInSession(Hash(key), person, Sealed(ticket), Device(), now, EndOf(ticket, now)));
        await db.SaveChangesAsync();
        await db.SignInSessions.Where(s => s.EndsAt < now).ExecuteDeleteAsync();
        return key;
    }

    public async Task RenewAsync(string key, AuthenticationTicket ticket)
    {
        await using var scope = scopes.CreateAsyncScope();
        var db = scope.ServiceProvider.GetRequiredService<AppDb>();
        var hash = Hash(key);
        var session = await db.SignInSessions.SingleOrDefaultAsync(s => s.KeyHash == hash);
        if (session is null)
            return;
        var now = clock.GetUtcNow().UtcDateTime;
        session.Renew(Sealed(ticket), now, EndOf(ticket, now));
        await db.SaveChangesAsync();
    }

    public async Task<AuthenticationTicket?> RetrieveAsync(string key)
    {
        await using var scope = scopes.CreateAsyncScope();
        var db = scope.ServiceProvider.GetRequiredService<AppDb>();
        var hash = Hash(key);
        var now = clock.GetUtcNow().UtcDateTime;
        var session = await db.SignInSessions.AsNoTracking().SingleOrDefaultAsync(s => s.KeyHash == hash && s.EndsAt > now);
        if (session is null)
            return null;
        if (http.HttpContext is { } context)
            context.Items[Here] = hash;
        return TicketSerializer.Default.Deserialize(_seal.Unprotect(session.Ticket));
    }

    public async Task RemoveAsync(string key)
    {
        await using var scope = scopes.CreateAsyncScope();
        var hash = Hash(key);
        await scope.ServiceProvider.GetRequiredService<AppDb>().SignInSessions.Where(s => s.KeyHash == hash).ExecuteDeleteAsync();
    }

    private byte[] Sealed(AuthenticationTicket ticket) => _seal.Protect(TicketSerializer.Default.Serialize(ticket));

    private static DateTime EndOf(AuthenticationTicket ticket, DateTime now) => ticket.Properties.ExpiresUtc?.UtcDateTime ?? now.AddDays(14);

    private string Device()
    {
        var agent = http.HttpContext?.Request.Headers.UserAgent.ToString() ?? "";
        return agent.Length > 120 ? agent[..120] : agent;
    }
}
