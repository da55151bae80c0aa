using System.Globalization;
using System.Text;
using CoopLessons.Data.Files;
using CoopLessons.Data.Prepare.Printing;
using CoopLessons.Documents.Placing;
using CoopLessons.Documents.Uploads;

namespace CoopLessons.Web.Files;

/// <summary>What is said of a file that somebody brings, and what it is called.</summary>
public static class UploadWords
{
    public const long Megabyte = 1_000_000;

    /// <summary>What may be brought, beside the field.</summary>
    public static string Hint => $"A PDF, PNG or JPEG of at most {PrintableFile.MostBytes / Megabyte} megabytes; a PDF of at most {PrintableFile.MostPages} pages.";

    public static string TooLarge => $"This file is larger than {PrintableFile.MostBytes / Megabyte} megabytes. A PDF of the pages you need alone is smaller, as is a picture saved as JPEG.";

    public const string RoomFull = "Other files are being looked at just now. Nothing was saved; try again in a minute.";

    public const string NoLook = "Files cannot be looked at on this server just now, so nothing was saved. Whoever runs it finds the reason in its log.";

    public const string Changed = "Somebody changed this while you brought the file, so it was not taken. It is shown as it is now; bring the file once more where it still belongs here.";

    public static string ThereAlready(string printable) => $"There is a file for “{printable}” already. Exchange it there, under “Print it from another file”.";

    public static string Of(FileVerdict verdict) => verdict.Fault switch
    {
        FileFault.Empty => "This file is empty.",
        FileFault.TooLarge => TooLarge,
        FileFault.Svg => "This is an SVG drawing, which can hold programs. Save or print it as a PDF and bring that.",
        FileFault.Heic => "This is a picture as some phones keep them (HEIC). Save it as JPEG and bring that.",
        FileFault.OtherImage => "Pictures are taken as PNG or JPEG. Save this one so and bring that.",
        FileFault.Broken => "This file cannot be read: it is broken or not whole. Open it on your own machine, print it as a PDF, and bring that.",
        FileFault.Locked => "This PDF is locked (encrypted). Where you may print it, print it as a PDF on your own machine and bring that.",
        FileFault.NoPages => "This PDF has no pages.",
        FileFault.TooManyPages => string.Create(CultureInfo.InvariantCulture, $"This PDF has {verdict.Pages} pages; {PrintableFile.MostPages} are the most. Bring the part that you need."),
        FileFault.TooManyDots => $"This picture has more than {PrintableFile.MostDots / 1_000_000} million dots, more than paper shows. Save it smaller and bring that.",
        _ => "This is neither a PDF nor a PNG or JPEG picture.",
    };

    public static StoredKind Kept(PageKind kind) => kind switch { PageKind.Pdf => StoredKind.Pdf, PageKind.Png => StoredKind.Png, _ => StoredKind.Jpeg };

    public static PageKind Taken(StoredKind kind) => kind switch { StoredKind.Pdf => PageKind.Pdf, StoredKind.Png => PageKind.Png, _ => PageKind.Jpeg };

    public static string ContentType(StoredKind kind) => kind switch { StoredKind.Pdf => "application/pdf", StoredKind.Png => "image/png", _ => "image/jpeg" };

    /// <inheritdoc cref="FileName(string?, string, int)" />
    public static string FileName(string? given, PageKind kind) =>
        FileName(given, kind switch { PageKind.Pdf => ".pdf", PageKind.Png => ".png", _ => ".jpg" }, PrintSource.LongestFileName);

    /// <summary>What a device called the file, as one line without the folders it lay in and with the ending of what it is.</summary>
    /// <param name="longest">With the ending.</param>
    public static string FileName(string? given, string ending, int longest)
    {
        var name = new StringBuilder();
        foreach (var rune in (given ?? "")[((given ?? "").LastIndexOfAny(['/', '\\']) + 1)..].EnumerateRunes())
        {
            if (!Rune.IsControl(rune) && Rune.GetUnicodeCategory(rune) is not (UnicodeCategory.Format or UnicodeCategory.LineSeparator or UnicodeCategory.ParagraphSeparator) && rune.Value is not ('"' or ':' or '*' or '?' or '<' or '>' or '|' or 0xFFFD))
                name.Append(rune.ToString());
        }

        var stem = name.ToString().Trim(' ', '.');
        var dot = stem.LastIndexOf('.');
        if (dot > 0 && stem.Length - dot <= 6)
            stem = stem[..dot].Trim(' ', '.');
        if (stem.Length == 0)
            stem = "file";
        var kept = new StringBuilder();
        foreach (var rune in stem.EnumerateRunes())
        {
            if (kept.Length + rune.Utf16SequenceLength + ending.Length > longest)
                break;
            kept.Append(rune.ToString());
        }

        return kept + ending;
    }

    /// <summary><c>3 pages, 1.2 MB</c>.</summary>
    public static string Size(StoredFile file)
    {
        var pages = file.Pages == 1 ? "1 page" : string.Create(CultureInfo.InvariantCulture, $"{file.Pages} pages");
        return $"{pages}, {Size(file.Bytes)}";
    }

    /// <summary><c>1.2 MB</c>.</summary>
    public static string Size(long bytes) => bytes < Megabyte
        ? string.Create(CultureInfo.InvariantCulture, $"{Math.Max(1, bytes / 1000)} kB")
        : string.Create(CultureInfo.InvariantCulture, $"{bytes / (decimal)Megabyte:0.#} MB");
}
