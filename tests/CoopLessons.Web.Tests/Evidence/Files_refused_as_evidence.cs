using System.Text;
using CoopLessons.Documents.Uploads;
using CoopLessons.Web.Tests.Documents;
using SkiaSharp;

namespace CoopLessons.Web.Tests.Evidence;

/// <summary>Files by what is in them; how they are named is never asked.</summary>
public sealed class Files_refused_as_evidence
{
    private static readonly byte[] Script = [.. "<svg xmlns=\"http://www.w3.org/2000/svg\"><script>alert(1)</script></svg>"u8];

    public static TheoryData<string, FileFault> Bad => new()
    {
        { "empty", FileFault.Empty },
        { "SVG", FileFault.Svg },
        { "SVG behind a head of XML", FileFault.Svg },
        { "page", FileFault.NotKnown },
        { "text", FileFault.NotKnown },
        { "archive", FileFault.NotKnown },
        { "program", FileFault.NotKnown },
        { "HEIC", FileFault.Heic },
        { "AVIF", FileFault.Heic },
        { "photo cut in half", FileFault.Broken },
        { "drawing cut in half", FileFault.Broken },
        { "photo of a head alone", FileFault.Broken },
        { "PDF of a head alone", FileFault.Broken },
        { "larger than fifty megabytes", FileFault.TooLarge },
        { "PDF larger than a PDF may be", FileFault.TooLarge },
        { "Matroska", FileFault.NotKnown },
        { "sound of one frame and then words", FileFault.Broken },
    };

    [Theory]
    [MemberData(nameof(Bad))]
    public void Leave_nothing_behind(string what, FileFault fault)
    {
        var (verdict, kept, small) = Looked.At(Made(what));
        Assert.Equal(fault, verdict.Fault);
        Assert.Empty(kept);
        Assert.Empty(small);
    }

    internal static byte[] Made(string what) => what switch
    {
        "empty" => [],
        "SVG" => Script,
        "SVG behind a head of XML" => [.. "<?xml version=\"1.0\"?>\n<!-- a loaf -->\n"u8, .. Script],
        "page" => [.. "<!doctype html><script>alert(1)</script>"u8],
        "text" => Encoding.UTF8.GetBytes("Dear miller, thank you for the visit."),
        "archive" => [(byte)'P', (byte)'K', 3, 4, .. new byte[60]],
        "program" => [0x7F, .. "ELF"u8, .. new byte[60]],
        // The head that a phone writes: a box of 24 bytes that names its brand (ISO/IEC 23008-12).
        "HEIC" => [0, 0, 0, 24, .. "ftypheic"u8, 0, 0, 0, 0, .. "mif1heic"u8, .. new byte[400]],
        "AVIF" => [0, 0, 0, 24, .. "ftypavif"u8, 0, 0, 0, 0, .. "mif1avif"u8, .. new byte[400]],
        "photo cut in half" => SamplePhotos.Photo() is var photo ? photo[..(photo.Length / 2)] : [],
        "drawing cut in half" => SamplePages.Picture(SKEncodedImageFormat.Png)[..300],
        "photo of a head alone" => [0xFF, 0xD8, 0xFF, 0xE0, 0, 16, .. "JFIF\0"u8],
        "PDF of a head alone" => [.. "%PDF-1.7\n"u8],
        "larger than fifty megabytes" => [0xFF, 0xD8, 0xFF, .. new byte[50_000_000]],
        "PDF larger than a PDF may be" => [.. "%PDF-1.7\n"u8, .. new byte[25_000_000]],
        "Matroska" => [0x1A, 0x45, 0xDF, 0xA3, 0x8B, 0x42, 0x82, 0x88, .. "matroska"u8, .. new byte[40]],
        _ => [.. SampleRecordings.Mp3()[20..437], .. "and then nothing that sounds"u8],
    };
}
