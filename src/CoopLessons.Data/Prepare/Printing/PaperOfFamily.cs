using CoopLessons.Core.Prepare.Printing;
using Microsoft.EntityFrameworkCore;

namespace CoopLessons.Data.Prepare.Printing;

/// <summary>The paper that a family prints on.</summary>
public static class PaperOfFamily
{
    public static async Task<PaperSize> PaperSizeAsync(this AppDb db, CancellationToken ct) =>
        await db.PrintHabits.AsNoTracking().Select(h => (PaperSize?)h.Paper).SingleOrDefaultAsync(ct) ?? PrintHabits.Usual.Paper;
}
