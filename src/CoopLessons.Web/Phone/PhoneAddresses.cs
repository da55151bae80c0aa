using System.Security.Claims;
using System.Security.Cryptography;
using System.Text;
using System.Text.Encodings.Web;
using System.Text.Json;
using System.Text.Json.Serialization;
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

    /// <summary>A header with the tags of the pages that a phone has.</summary>
    private const string KeptPages = "Kept-Pages";

    private static readonly JsonSerializerOptions s_brief = new(JsonSerializerDefaults.Web)
    {
        DefaultIgnoreCondition = JsonIgnoreCondition.WhenWritingNull,
        // It is read by a script, never set into a page.
        Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping,
    };

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

    /// <summary>The pages of the coming days; of those that the phone has as they are, named by their tags, only the path and the tag.</summary>
    private static async Task<IResult> PagesAsync(HttpContext context, AppDb db, PageShots shots, TimeProvider clock)
    {
        var ct = context.RequestAborted;
        var family = await db.Families.AsNoTracking().SingleAsync(ct);
        var has = context.Request.Headers[KeptPages].ToString().Split(' ').ToHashSet();
        var kept = new List<PageForPhone>();
        foreach (var page in await PagesToKeep.OfAsync(db, family.Today(clock), ct))
        {
            if (await shots.OfAsync(context, page.Path) is { } html)
            {
                var tag = Convert.ToHexStringLower(SHA256.HashData(Encoding.UTF8.GetBytes(page.Path + html)))[..16];
                kept.Add(new(page.Path, tag, page.Until?.Iso(), has.Contains(tag) ? null : html));
            }
        }

        // Written as one piece, since every piece is packed by itself.
        return Results.Bytes(
            JsonSerializer.SerializeToUtf8Bytes(new { person = context.User.FindFirstValue(ClaimTypes.NameIdentifier), family = family.Id, pages = kept }, s_brief),
            "application/json; charset=utf-8");
    }

    private sealed record PageForPhone(string Path, string Tag, string? Until, string? Html);
}
