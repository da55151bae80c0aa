using System.Globalization;
using CoopLessons.Data.Evidence;
using CoopLessons.Data.Files;
using CoopLessons.Documents.Uploads;
using CoopLessons.Web.Files;
using CoopLessons.Web.Pages.Today;

namespace CoopLessons.Web.Evidence;

/// <summary>What is said of photos, papers, sounds and videos that somebody brings as evidence.</summary>
public static class PieceWords
{
    /// <summary>What a phone offers where a file is chosen.</summary>
    public const string Accept = "image/*,video/*,audio/*,application/pdf";

    /// <summary>What may be brought, beside the field.</summary>
    public static string Hint => $"Photos, scans, PDFs, sounds and short videos, {EvidenceFile.MostBytes / UploadWords.Megabyte} megabytes each at most. Photos lose the place where they were taken.";

    /// <summary>Said wherever something is added.</summary>
    public const string Caution = "Ask before a child of another family is in the picture. The place is taken out of the file, but a house number or a school’s name may be in the picture itself.";

    public static string TooMany(int most) => string.Create(CultureInfo.InvariantCulture, $"At most {most} files at a time. Bring the others after these.");

    public static string TooMuchAtOnce(long bytes) => string.Create(CultureInfo.InvariantCulture, $"Together these files are larger than {bytes / UploadWords.Megabyte} megabytes, so nothing was taken. Bring fewer at a time; your browser’s way back shows what you typed.");

    public static string Of(EvidenceVerdict verdict) => verdict.Fault switch
    {
        FileFault.Empty => "This file is empty.",
        FileFault.TooLarge when verdict.Form == EvidenceForm.Pdf => $"This PDF is larger than {PrintableFile.MostBytes / UploadWords.Megabyte} megabytes. Bring the pages you need alone.",
        FileFault.TooLarge => $"This file is larger than {EvidenceFile.MostBytes / UploadWords.Megabyte} megabytes. A shorter video, or one recorded at a lower quality, is smaller.",
        FileFault.Svg => "This is an SVG drawing, which can hold programs. Bring a photo or a PDF of it.",
        FileFault.Heic => "This picture is of a kind that cannot be read here (HEIC or AVIF). In the phone’s camera settings choose JPEG, often called the most compatible format; or save this one as JPEG and bring that.",
        FileFault.Broken => "This file cannot be read: it is broken or did not arrive whole. Look whether it opens on your own device, and bring it once more.",
        FileFault.Located => "This recording holds, moment by moment or in its notes, the place where it was made, and that cannot be taken out here. Save it without its place on the phone, or record with the place turned off.",
        FileFault.Locked => "This PDF is locked (encrypted). Where you may, save it without a password and bring that.",
        FileFault.NoPages => "This PDF has no pages.",
        FileFault.TooManyPages => string.Create(CultureInfo.InvariantCulture, $"This PDF has {verdict.Pages} pages; {PrintableFile.MostPages} are the most. Bring the part that you need."),
        FileFault.TooManyDots => $"This picture has more dots than can be unpacked here: {EvidenceFile.MostDots / 1_000_000} million are the most. Save it smaller, or as JPEG, and bring that.",
        _ => "This is no photo, PDF, sound or video that is known here. JPEG, PNG and WebP pictures, PDFs, MP3, M4A and WAV sounds, MP4, WebM and Ogg recordings are taken.",
    };

    public static int Status(FileFault fault) => fault switch
    {
        FileFault.TooLarge => StatusCodes.Status413PayloadTooLarge,
        FileFault.NotKnown or FileFault.Svg or FileFault.Heic or FileFault.OtherImage => StatusCodes.Status415UnsupportedMediaType,
        _ => StatusCodes.Status422UnprocessableEntity,
    };

    public static StoredKind Kept(EvidenceForm form) => Enum.Parse<StoredKind>(form.ToString());

    public static PieceKind KindOf(EvidenceVerdict verdict) => verdict.Form switch
    {
        EvidenceForm.Pdf => PieceKind.Paper,
        EvidenceForm.Png or EvidenceForm.Jpeg => PieceKind.Photo,
        _ => verdict.HasPicture ? PieceKind.Video : PieceKind.Sound,
    };

    public static string Ending(EvidenceVerdict verdict) => verdict.Form switch
    {
        EvidenceForm.Mp4 => verdict.HasPicture ? ".mp4" : ".m4a",
        EvidenceForm.Jpeg => ".jpg",
        var form => "." + form.ToString().ToLowerInvariant(),
    };

    public static string ContentType(PieceKind piece, StoredKind kind) => kind switch
    {
        StoredKind.Pdf => "application/pdf",
        StoredKind.Png => "image/png",
        StoredKind.Jpeg => "image/jpeg",
        StoredKind.Mp3 => "audio/mpeg",
        StoredKind.Wav => "audio/wav",
        StoredKind.Mp4 => piece == PieceKind.Video ? "video/mp4" : "audio/mp4",
        StoredKind.WebM => piece == PieceKind.Video ? "video/webm" : "audio/webm",
        StoredKind.Ogg => piece == PieceKind.Video ? "video/ogg" : "audio/ogg",
        _ => "application/octet-stream",
    };

    /// <summary>“photo”, “PDF”.</summary>
    public static string Kind(PieceKind kind) => kind switch { PieceKind.Photo => "photo", PieceKind.Paper => "PDF", PieceKind.Sound => "sound", _ => "video" };

    public static string Icon(PieceKind kind) => kind switch { PieceKind.Photo => "image", PieceKind.Paper => "file-text", PieceKind.Sound => "volume-2", _ => "video" };

    /// <summary>“3 photos and files”, “1 photo”.</summary>
    public static string Count(IReadOnlyCollection<PieceKind> kinds)
    {
        var photos = kinds.Count(k => k == PieceKind.Photo);
        var others = kinds.Count - photos;
        string Of(int n, string one) => string.Create(CultureInfo.InvariantCulture, $"{n} {one}{(n == 1 ? "" : "s")}");
        return others == 0 ? Of(photos, "photo") : photos == 0 ? Of(others, "file") : $"{Of(photos, "photo")} and {Of(others, "file")}";
    }

    /// <summary>What stands for a piece where it cannot be seen: its caption, else what it is of which day.</summary>
    public static string Alt(Piece piece) => piece.Caption.Length > 0 ? piece.Caption : $"{Capital(Kind(piece.Kind))} of {piece.Date.InWords()}, without a caption";

    public static string Capital(string word) => char.ToUpperInvariant(word[0]) + word[1..];
}
