using System.Security.Claims;
using System.Security.Cryptography;
using System.Text;
using System.Text.Json;
using CoopLessons.Data;
using CoopLessons.Web.Pages.Today;
using CoopLessons.Web.Security;
using Microsoft.AspNetCore.Antiforgery;
using Microsoft.EntityFrameworkCore;

namespace CoopLessons.Web.Phone;

/// <summary>What the scripts of a phone ask for besides pages.</summary>
public static class PhoneAddresses
{
    public const string Prefix = "/phone";

    public static void MapPhone(this WebApplication app)
    {
        app.MapGet(Prefix + "/here", HereAsync).RequireAuthorization(Access.Member).WithMetadata(new AsksForFamily());
        app.MapGet(Prefix + "/pages", PagesAsync).RequireAuthorization(Access.Member).WithMetadata(new AsksForFamily());
        app.MapGet("/worker.js", (PhoneWorker worker) => worker.Script()).AllowAnonymous();
        app.MapGet("/app.webmanifest", (PhoneWorker worker) => worker.Manifest()).AllowAnonymous();
    }

    /// <summary>Whom the server knows, its clock, and a token for what is sent next.</summary>
    private static async Task<IResult> HereAsync(HttpContext context, AppDb db, IAntiforgery antiforgery, TimeProvider clock)
    {
        var family = await db.Families.AsNoTracking().SingleAsync(context.RequestAborted);
        return Results.Json(new
        {
            person = context.User.FindFirstValue(ClaimTypes.NameIdentifier),
            family = family.Id,
            token = antiforgery.GetAndStoreTokens(context).RequestToken,
            now = clock.GetUtcNow(),
            zone = family.TimeZone,
        });
    }

    /// <summary>The pages of the coming days; nothing where the phone has them as they are.</summary>
    private static async Task<IResult> PagesAsync(HttpContext context, AppDb db, PageShots shots, TimeProvider clock)
    {
        var ct = context.RequestAborted;
        var family = await db.Families.AsNoTracking().SingleAsync(ct);
        var kept = new List<object>();
        foreach (var page in await PagesToKeep.OfAsync(db, family.Today(clock), ct))
        {
            if (await shots.OfAsync(context, page.Path) is { } html)
                kept.Add(new { path = page.Path, html, until = page.Until?.Iso() });
        }

        var json = JsonSerializer.SerializeToUtf8Bytes(new { person = context.User.FindFirstValue(ClaimTypes.NameIdentifier), family = family.Id, pages = kept });
        var tag = $"\"{Convert.ToHexStringLower(SHA256.HashData(json))[..32]}\"";
        context.Response.Headers.ETag = tag;
        // A tag that was made weak on its way, by a proxy that packed the answer, names the same.
        if (context.Request.Headers.IfNoneMatch.ToString().Replace("W/", "", StringComparison.Ordinal) == tag)
            return Results.StatusCode(StatusCodes.Status304NotModified);
        return Results.Text(Encoding.UTF8.GetString(json), "application/json; charset=utf-8");
    }
}
