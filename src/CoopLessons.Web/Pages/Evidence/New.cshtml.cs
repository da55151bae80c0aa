using CoopLessons.Data;
using CoopLessons.Web.Evidence;
using CoopLessons.Web.Files;
using CoopLessons.Web.Pages.Today;
using Microsoft.AspNetCore.Mvc;
using Microsoft.EntityFrameworkCore;

namespace CoopLessons.Web.Pages.Pieces;

/// <summary>Brings photos, papers, sounds and videos, several at once, in a form that needs no script.</summary>
[LargestUpload(BroughtPieces.MostBytesOfForm)]
[RequestSizeLimit(BroughtPieces.MostBytesOfForm + LargestUploadAttribute.Around)]
public sealed class NewModel(AppDb db, TimeProvider clock, BroughtPieces brought) : PieceFormPage(db, clock)
{
    /// <summary>Minted with the page: a second sending is known by it.</summary>
    [BindProperty]
    public Guid Id { get; set; }

    /// <summary>Where one goes from here.</summary>
    public string Back => EntryId is { } entry ? $"/log/{entry}" : $"/evidence/day/{(Date is { } day && day <= Today ? day : Today).Iso()}";

    public async Task<IActionResult> OnGetAsync(Guid? entry, string? date)
    {
        if (!ModelState.IsValid || (date is not null && !DayWords.TryRead(date, out _)))
            return NotFound();
        EntryId = entry;
        if (!await FindAsync())
            return NotFound();
        Id = Guid.CreateVersion7();
        if (Entry?.Facts is { } said)
        {
            Date = said.Date;
            Learners = [.. said.Times.Select(t => t.LearnerId)];
            SubjectId = said.Split.MaxBy(s => s.Weight)?.SubjectId;
        }
        else if (DayWords.TryRead(date, out var day))
        {
            Date = day;
        }

        if (!LargestUploadAttribute.Refused(HttpContext))
            return Page();
        ModelState.AddModelError("Files", PieceWords.TooMuchAtOnce(BroughtPieces.MostBytesOfForm));
        return Again(StatusCodes.Status413PayloadTooLarge);
    }

    public async Task<IActionResult> OnPostAsync(List<IFormFile> files)
    {
        if (!await FindAsync())
            return NotFound();
        if (Id == Guid.Empty)
            return BadRequest();
        Check();
        if (files.Count == 0)
            ModelState.AddModelError("Files", "Choose at least one photo or file.");
        else if (files.Count > BroughtPieces.MostOfForm)
            ModelState.AddModelError("Files", PieceWords.TooMany(BroughtPieces.MostOfForm));
        if (!ModelState.IsValid)
            return Again();
        await using var looked = new LookedForm(Db, brought, Id);
        if (await looked.LookAsync(files, ModelState, Ct) is { } refused)
            return Again(refused);
        var author = await AuthorAsync();
        var last = Today;
        foreach (var (id, piece) in looked.Pieces)
        {
            var (facts, takenAt) = FactsOf(piece.Verdict);
            await brought.TakeAsync(id, piece, takenAt, facts, Family.KeepOriginals, author, Now, Ct);
            last = facts.Date;
        }

        Say(looked.Said());
        if (EntryId is { } entry)
            return LocalRedirect($"/log/{entry}#pieces");
        return files.Count == 1 && await Db.Pieces.AnyAsync(p => p.Id == PieceIds.Of(Id, 0), Ct) ? LocalRedirect($"/evidence/{PieceIds.Of(Id, 0)}") : LocalRedirect($"/evidence/day/{last.Iso()}");
    }
}
