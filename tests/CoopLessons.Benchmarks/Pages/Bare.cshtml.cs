using CoopLessons.Benchmarks.Floor;
using Microsoft.AspNetCore.Mvc;
using Microsoft.AspNetCore.Mvc.RazorPages;

namespace CoopLessons.Benchmarks.Pages;

public sealed class BareModel(BareDb db) : PageModel
{
    public static IReadOnlyList<(string Name, int Minutes)> Items { get; } = [.. Enumerable.Range(1, 20).Select(i => ($"Piece of work {i}", 10 + i))];

    public async Task<IActionResult> OnPostAsync(string text)
    {
        db.Rows.Add(new BareRow { Id = Guid.CreateVersion7(), Text = text, WrittenAt = DateTime.UtcNow });
        await db.SaveChangesAsync(HttpContext.RequestAborted);
        return LocalRedirect("/");
    }
}
