using CoopLessons.Core.Calendar;
using CoopLessons.Data;
using CoopLessons.Data.Evidence;
using CoopLessons.Web.Pages.Log;
using CoopLessons.Web.Pages.Today;
using Microsoft.AspNetCore.Mvc;

namespace CoopLessons.Web.Pages.Pieces;

/// <summary>The photos and files of one day: for a helper today's alone.</summary>
public sealed class DayModel(AppDb db, TimeProvider clock) : FamilyPage(db, clock)
{
    public DateOnly Shown { get; private set; }

    public PieceList List { get; private set; } = null!;

    public async Task<IActionResult> OnGetAsync(string? date)
    {
        if (date is null)
            Shown = Today;
        else if (DayWords.TryRead(date, out var day))
            Shown = day;
        else
            return NotFound();
        var pieces = await Db.PiecesInAsync(new DayRange(Shown, Shown), Ct);
        // Of another day a helper sees what they brought themselves.
        if (!IsGuardian && Shown != Today)
            pieces = [.. pieces.Where(p => p.BroughtById == Db.Current.PersonId)];
        List = new PieceList(pieces, await EntryWords.LoadAsync(Db, Ct), Day: false);
        return Page();
    }
}
