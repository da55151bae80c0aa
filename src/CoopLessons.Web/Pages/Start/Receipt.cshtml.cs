using System.Globalization;
using System.Text;
using CoopLessons.Data;
using CoopLessons.Data.Families;
using CoopLessons.Data.Families.Going;
using Microsoft.AspNetCore.Mvc;
using Microsoft.AspNetCore.Mvc.RazorPages;
using Microsoft.EntityFrameworkCore;

namespace CoopLessons.Web.Pages.Start;

/// <summary>For whoever holds its address: that a family's deletion was asked for, and when it was done. It names nobody.</summary>
public sealed class ReceiptModel(AppDb db) : PageModel
{
    private LeavingReceipt _receipt = null!;

    public IReadOnlyList<string> Lines => _receipt switch
    {
        { DoneAt: { } done } => [Asked, $"It was done on {At(done)}: {Count(_receipt.Rows, "row")} and {Count(_receipt.Files, "file")} of the family were deleted from this server’s database and files.", "Copies that whoever runs the server made before that stay until they are thrown away there."],
        { StoppedAt: { } stopped } => [Asked, $"It was stopped on {At(stopped)}; nothing was deleted."],
        _ => [Asked, $"It is due on {At(_receipt.DueAt)}. Until then a guardian can stop it."],
    };

    private string Asked => $"On {At(_receipt.AskedAt)} it was asked that everything of a family be deleted from this server.";

    public async Task<IActionResult> OnGetAsync(string secret) => await FindAsync(secret) ? Page() : NotFound();

    public async Task<IActionResult> OnGetTextAsync(string secret) => await FindAsync(secret)
        ? File(Encoding.UTF8.GetBytes(string.Join("\r\n", Lines.Append($"{Request.Scheme}://{Request.Host}{Request.PathBase}{Request.Path}")) + "\r\n"), "text/plain; charset=utf-8", "receipt.txt")
        : NotFound();

    private async Task<bool> FindAsync(string secret)
    {
        var hash = Invitation.Hash(secret);
        var found = await db.LeavingReceipts.AsNoTracking().SingleOrDefaultAsync(r => r.SecretHash == hash, HttpContext.RequestAborted);
        if (found is not null)
            _receipt = found;
        return found is not null;
    }

    private static string At(DateTime utc) => utc.ToString("d MMMM yyyy, HH:mm 'UTC'", CultureInfo.InvariantCulture);

    private static string Count(int count, string what) => string.Create(CultureInfo.InvariantCulture, $"{count:N0} {what}{(count == 1 ? "" : "s")}");
}
