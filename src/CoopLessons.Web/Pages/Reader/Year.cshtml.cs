using CoopLessons.Data;
using CoopLessons.Data.Evidence;
using CoopLessons.Data.Files;
using CoopLessons.Data.Tenancy;
using CoopLessons.Documents.Portfolios;
using Microsoft.AspNetCore.Mvc;

namespace CoopLessons.Web.Pages.Reader;

/// <summary>The year as its reader was given it.</summary>
public sealed class YearModel(AppDb db, CurrentFamily current, TimeProvider clock, FileShelf shelf) : ReaderDoor(db, current, clock, shelf)
{
    public string Secret { get; private set; } = "";

    public async Task<IActionResult> OnGetAsync(string secret)
    {
        if (!await OpenAsync(secret))
            return NotFound();
        Secret = secret;
        await NoteAsync("the page");
        return Page();
    }

    /// <summary>The piece behind a sample; null where nothing of it is shown as a picture here.</summary>
    public Piece? PieceOf(SamplePaper sample) => sample.Hash is { } hash ? Pieces.Values.FirstOrDefault(p => p.Hash == hash && p.Date == sample.Date) : null;
}
