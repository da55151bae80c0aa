using CoopLessons.Core.Log.Sheets;
using CoopLessons.Data;
using CoopLessons.Data.Log.Sheets;
using CoopLessons.Web.Files;
using Microsoft.AspNetCore.Mvc;
using Microsoft.EntityFrameworkCore;

namespace CoopLessons.Web.Pages.Records.Bringing;

/// <summary>Takes a file of separated values to be looked at, and lists what was brought before.</summary>
[LargestUpload(BroughtSheet.MostBytes)]
[RequestSizeLimit(BroughtSheet.MostBytes + LargestUploadAttribute.Around)]
public sealed class IndexModel(AppDb db, TimeProvider clock) : FamilyPage(db, clock)
{
    private const string TooLarge = "This file is larger than 5 megabytes. Save a year at a time, and bring one after the other.";

    /// <summary>Minted with the page, so that a second sending changes nothing.</summary>
    [BindProperty]
    public Guid NewId { get; set; }

    [BindProperty]
    public IFormFile? Sheet { get; set; }

    public IReadOnlyList<BroughtSheet> Waiting { get; private set; } = [];
    public IReadOnlyList<LogImport> Imports { get; private set; } = [];

    public async Task<IActionResult> OnGetAsync()
    {
        await ListAsync();
        return LargestUploadAttribute.Refused(HttpContext) ? Refused(TooLarge, StatusCodes.Status413PayloadTooLarge) : Page();
    }

    public async Task<IActionResult> OnPostAsync()
    {
        await ListAsync();
        if (NewId == Guid.Empty)
            return Refused("The page is incomplete. Open it again and choose the file once more.");
        if (Sheet is not { Length: > 0 } file)
            return Refused(Sheet is null ? "Choose a file." : "This file is empty.");
        if (file.Length > BroughtSheet.MostBytes)
            return Refused(TooLarge);
        using var content = new MemoryStream((int)file.Length);
        await file.CopyToAsync(content, Ct);
        if (Fault(content.ToArray()) is { } fault)
            return Refused(fault);
        if (await Db.BroughtSheets.AnyAsync(s => s.Id == NewId, Ct) || await Db.LogImports.AnyAsync(i => i.Id == NewId, Ct))
            return LocalRedirect($"/log/bring/{NewId}");
        var old = Now - BroughtSheet.Life;
        await Db.BroughtSheets.Where(s => s.At < old).ExecuteDeleteAsync(Ct);
        Db.BroughtSheets.Add(new BroughtSheet(NewId, UploadWords.FileName(file.FileName, Path.GetExtension(file.FileName).ToLowerInvariant() is ".txt" or ".tsv" ? ".txt" : ".csv", BroughtSheet.LongestName), content.ToArray(), Now));
        if (!await SaveNewAsync() && !await Db.BroughtSheets.AnyAsync(s => s.Id == NewId, Ct))
            return AgainAfterOthers(nameof(Sheet));
        return LocalRedirect($"/log/bring/{NewId}");
    }

    private static string? Fault(byte[] content)
    {
        if (content.AsSpan().StartsWith("PK\u0003\u0004"u8) || content.AsSpan().StartsWith((ReadOnlySpan<byte>)[0xD0, 0xCF, 0x11, 0xE0]))
            return "This is a workbook and not a file of separated values. Open it in your spreadsheet program and save it as CSV.";
        var text = SheetText.Of(content).Text;
        if (text.Contains('\0', StringComparison.Ordinal))
            return "This is no text, so there are no rows in it. Save the sheet as CSV and bring that.";
        var sheet = SheetRecords.Of(text);
        if (sheet.OpenQuote is { } line)
            return $"A quotation mark on line {line} opens a cell that is never closed. Mend it in the file, or save the sheet anew.";
        if (sheet.Records.Count == 0)
            return "There are no rows in this file.";
        if (sheet.Records.Count > SheetRecords.MostRecords || sheet.Columns > SheetRecords.MostColumns)
            return $"This file has {sheet.Records.Count:N0} rows and {sheet.Columns} columns; {SheetRecords.MostRecords:N0} and {SheetRecords.MostColumns} are the most. Save a year at a time.";
        return null;
    }

    private IActionResult Refused(string sentence, int status = StatusCodes.Status422UnprocessableEntity)
    {
        ModelState.AddModelError(nameof(Sheet), sentence);
        return Again(status);
    }

    private async Task ListAsync()
    {
        if (NewId == Guid.Empty && HttpMethods.IsGet(Request.Method))
            NewId = Guid.CreateVersion7();
        var since = Now - BroughtSheet.Life;
        Waiting = await Db.BroughtSheets.AsNoTracking().Where(s => s.At >= since).OrderByDescending(s => s.At).ToListAsync(Ct);
        Imports = await Db.LogImports.AsNoTracking().OrderByDescending(i => i.At).ThenBy(i => i.Id).ToListAsync(Ct);
    }
}
