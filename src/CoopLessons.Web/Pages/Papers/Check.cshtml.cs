using System.Security.Cryptography;
using CoopLessons.Core.Sealing;
using CoopLessons.Data;
using CoopLessons.Data.Sealing;
using CoopLessons.Data.Tenancy;
using CoopLessons.Web.Files;
using CoopLessons.Web.Security;
using Microsoft.AspNetCore.Mvc;
using Microsoft.AspNetCore.Mvc.RazorPages;
using Microsoft.AspNetCore.RateLimiting;
using Microsoft.EntityFrameworkCore;

namespace CoopLessons.Web.Pages.Papers;

/// <summary>What is known of a fingerprint or a file.</summary>
/// <param name="Kind">What the mark was given out for.</param>
/// <param name="On">The day on which it was given out.</param>
/// <param name="Later">Amendments of that learner's year since then.</param>
/// <param name="LastAmended">Null where there was none since.</param>
/// <param name="GivenOutHere">False where it came with a family from another server.</param>
/// <param name="Of">Whose year it is; null for somebody who is not of the family.</param>
public sealed record KnownPaper(MarkKind Kind, DateOnly SealedOn, DateOnly On, int Number, int Later, DateOnly? LastAmended, bool GivenOutHere, string? Of);

/// <summary>
/// Says of a fingerprint or a file whether it was given out here. For anybody, so it tells no names; digits that nobody holds
/// cannot be guessed, and tries are counted as those of other secrets are.
/// </summary>
[EnableRateLimiting(Access.Brake)]
[LargestUpload(MostBytes)]
[RequestSizeLimit(MostBytes + LargestUploadAttribute.Around)]
public sealed class CheckModel(AppDb db, CurrentFamily current) : PageModel
{
    public const long MostBytes = 60_000_000;

    [BindProperty]
    public string? Mark { get; set; }

    /// <summary>Something was asked.</summary>
    public bool Asked { get; private set; }

    public bool AskedOfFile { get; private set; }

    /// <summary>Null where nothing is known.</summary>
    public KnownPaper? Known { get; private set; }

    private CancellationToken Ct => HttpContext.RequestAborted;

    public IActionResult OnGet()
    {
        if (!LargestUploadAttribute.Refused(HttpContext))
            return Page();
        ModelState.AddModelError("File", "The file is larger than any paper made here. Paste the fingerprint that stands in it.");
        Response.StatusCode = StatusCodes.Status413PayloadTooLarge;
        return Page();
    }

    public async Task<IActionResult> OnPostAsync(IFormFile? file)
    {
        string digits;
        if (file is { Length: > 0 })
        {
            await using var content = file.OpenReadStream();
            digits = Convert.ToHexStringLower(await SHA256.HashDataAsync(content, Ct));
            AskedOfFile = true;
        }
        else if (string.IsNullOrWhiteSpace(Mark))
        {
            return Fault("Paste a fingerprint, or choose a file.");
        }
        else if (!Fingerprint.TryRead(Mark, out digits))
        {
            return Fault("A fingerprint is made of the digits 0 to 9 and the letters a to f: 64 of them, or the first twelve as they stand at a sheet’s foot.");
        }

        Asked = true;
        Known = await FindAsync(digits);
        return Page();
    }

    private PageResult Fault(string says)
    {
        ModelState.AddModelError(nameof(Mark), says);
        Response.StatusCode = StatusCodes.Status422UnprocessableEntity;
        return Page();
    }

    private async Task<KnownPaper?> FindAsync(string digits)
    {
        var (family, isGuardian) = (current.FamilyId, current.Role == Role.Guardian);
        var opening = KnownMark.OpeningOf(digits);
        current.Hold(opening);
        // Nobody can say beforehand of which family a paper is; whoever holds its digits may read what they stand for.
        var found = (await db.KnownMarks.IgnoreQueryFilters([AppDb.FamilyFilter]).AsNoTracking().Where(m => m.Opening == opening).ToListAsync(Ct))
            .Where(m => m.Mark.StartsWith(digits, StringComparison.Ordinal)).ToList();
        // What this server gave out goes before what families brought along.
        if (found.Exists(m => m.GivenOutHere))
            found.RemoveAll(m => !m.GivenOutHere);
        // Twelve digits that two records share say nothing of either. Papers of one day may be alike byte for byte.
        if (found.Count == 0 || found.Select(m => m.Mark).Distinct().Skip(1).Any())
            return null;
        var mark = found.Find(m => m.FamilyId == family) ?? found[0];
        var isOwn = mark.FamilyId == family && isGuardian;
        current.ActForProgram(mark.FamilyId);
        // A mark that came with a family may stand for a record that did not.
        if (await db.SealedYears.AsNoTracking().SingleOrDefaultAsync(y => y.SchoolYearId == mark.SchoolYearId, Ct) is not { } year
            || await db.SealedRecords.Where(r => r.SchoolYearId == mark.SchoolYearId && r.LearnerId == mark.LearnerId).Select(r => r.LearnerName).SingleOrDefaultAsync(Ct) is not { } learner)
            return null;
        var number = mark.Kind == MarkKind.File ? await NumberOfFileAsync(mark) : mark.Number;
        var later = await db.Amendments.Where(a => a.SchoolYearId == mark.SchoolYearId && a.LearnerId == mark.LearnerId && a.Number > number).Select(a => a.AmendedOn).ToListAsync(Ct);
        var of = isOwn ? $"{learner}, {year.YearName}" : null;
        return new KnownPaper(mark.Kind, year.SealedOn, mark.On, number, later.Count, later.Count > 0 ? later.Max() : null, mark.GivenOutHere, of);
    }

    // Which record a file stands on: the sealing's own, or that of an amendment.
    private async Task<int> NumberOfFileAsync(KnownMark mark)
    {
        var fingerprint = await db.PapersMade.Where(p => p.SchoolYearId == mark.SchoolYearId && p.LearnerId == mark.LearnerId && p.FileMark == mark.Mark).Select(p => p.Fingerprint).SingleOrDefaultAsync(Ct);
        return await db.Amendments.Where(a => a.SchoolYearId == mark.SchoolYearId && a.LearnerId == mark.LearnerId && a.Fingerprint == fingerprint).Select(a => a.Number).SingleOrDefaultAsync(Ct);
    }
}
