using System.Security.Claims;
using CoopLessons.Data;
using CoopLessons.Data.Families;
using CoopLessons.Data.OwnLists;
using CoopLessons.Data.Tenancy;
using CoopLessons.Web.Hosting;
using Microsoft.EntityFrameworkCore;

namespace CoopLessons.Web.Security;

/// <summary>
/// Lets the family's tablet in, and the child whose list is open on it. Each request asks the database: a tablet that was
/// ended, a child who was set aside, or a maker who is no guardian any more is out with the next one.
/// </summary>
public sealed class TabletDoor(AppDb db, CurrentFamily current, ServerSettings settings, TimeProvider clock)
{
    public const string Scheme = "family tablet";

    // What was used a moment ago need not be written again.
    private static readonly TimeSpan Grain = TimeSpan.FromMinutes(1);
    private static readonly TimeSpan CookieGrain = TimeSpan.FromDays(1);

    private string CookieName => Cookie().Name!;

    /// <summary>Whether the browser carries a tablet's key, valid or not.</summary>
    public bool IsCarriedBy(HttpContext context) => context.Request.Cookies.ContainsKey(CookieName);

    private void Hand(HttpContext context, string key, DateTime now, TimeSpan life) =>
        context.Response.Cookies.Append(CookieName, key, Cookie().Build(context, now + life));

    public void TakeAway(HttpContext context) => context.Response.Cookies.Delete(CookieName, Cookie().Build(context));

    /// <summary>The device of this request opens lists from now on. Whoever is signed in on it is signed out by the page that asks for this.</summary>
    /// <param name="make">From the hash of its key and what the browser calls itself.</param>
    public async Task TurnAsync(HttpContext context, DateTime now, Func<string, string, FamilyTablet> make)
    {
        var key = Invitation.NewSecret();
        var agent = context.Request.Headers.UserAgent.ToString();
        // One that it was before is over.
        var before = Invitation.Hash(context.Request.Cookies[CookieName] ?? "");
        await db.FamilyTablets.Where(t => t.EndsAt <= now || t.KeyHash == before).ExecuteDeleteAsync(context.RequestAborted);
        var tablet = db.FamilyTablets.Add(make(Invitation.Hash(key), agent.Length > 120 ? agent[..120] : agent)).Entity;
        await db.SaveChangesAsync(context.RequestAborted);
        Hand(context, key, now, tablet.EndsAt - now);
        // Pages that the browser kept for the person are not the children's.
        context.Response.Headers["Clear-Site-Data"] = "\"cache\", \"storage\"";
    }

    public async Task EnterAsync(HttpContext context)
    {
        if (!context.Request.Cookies.TryGetValue(CookieName, out var key) || key is not { Length: > 0 and <= 100 })
            return;
        var now = clock.GetUtcNow().UtcDateTime;
        var ct = context.RequestAborted;
        var hash = Invitation.Hash(key);
        current.Hold(hash);
        // The family is not known before the tablet is read; whoever holds its key may read this one row.
        var tablet = await db.FamilyTablets.IgnoreQueryFilters([AppDb.FamilyFilter]).AsNoTracking().SingleOrDefaultAsync(t => t.KeyHash == hash, ct);
        if (tablet is null || tablet.IsOver(now))
            return;
        current.ActOnTablet(tablet.FamilyId, tablet.Id, null);
        if (!await db.Memberships.AnyAsync(m => m.PersonId == tablet.MadeById && m.Role == Role.Guardian, ct))
        {
            current.Leave();
            return;
        }

        var child = tablet.ChildAt(now) is { } open && await IsListedAsync(open, ct) ? open : (Guid?)null;
        current.ActOnTablet(tablet.FamilyId, tablet.Id, child);
        // Claims are what a form's token is bound to: a page of one child cannot be sent for another.
        context.User = new ClaimsPrincipal(new ClaimsIdentity([new("tablet", tablet.Id.ToString()), new("child", child?.ToString() ?? "")], Scheme));
        await UseAsync(context, key, tablet, child, now);
    }

    private Task<bool> IsListedAsync(Guid learnerId, CancellationToken ct) =>
        db.OwnLists.AnyAsync(l => l.LearnerId == learnerId && l.Shown && db.Learners.Any(c => c.Id == learnerId && !c.SetAside), ct);

    // Set without a version: that a tablet was used a moment ago stands in nobody's way.
    private async Task UseAsync(HttpContext context, string key, FamilyTablet tablet, Guid? child, DateTime now)
    {
        if (tablet.Lent || now - tablet.SeenAt < Grain)
            return;
        var (ends, idle) = (now + FamilyTablet.Life, now + FamilyTablet.Idle);
        var row = db.FamilyTablets.Where(t => t.Id == tablet.Id);
        await row.ExecuteUpdateAsync(s => s.SetProperty(t => t.SeenAt, now).SetProperty(t => t.EndsAt, ends), context.RequestAborted);
        if (child is not null)
            await row.Where(t => t.OpenFor == child).ExecuteUpdateAsync(s => s.SetProperty(t => t.OpenUntil, idle), context.RequestAborted);
        if (now - tablet.SeenAt >= CookieGrain)
            Hand(context, key, now, FamilyTablet.Life);
    }

    private CookieBuilder Cookie()
    {
        var cookie = new CookieBuilder();
        SignIns.Secure(cookie, settings, "tablet");
        return cookie;
    }
}
