using System.IO.Compression;
using System.Net;
using System.Text;
using CoopLessons.Web.Tests.App;
using CoopLessons.Web.Tests.Documents;
using SkiaSharp;

namespace CoopLessons.Web.Tests.Printing;

[Collection(PlanningServer.Name)]
public sealed class Files_that_cannot_be_printed(TestServer server)
{
    public static TheoryData<string, string> Bad => new()
    {
        { "empty", "This file is empty." },
        { "text named .pdf", "neither a PDF nor a PNG or JPEG" },
        { "page named .pdf", "neither a PDF nor a PNG or JPEG" },
        { "SVG", "an SVG drawing" },
        { "SVG named .png", "an SVG drawing" },
        { "HEIC", "HEIC" },
        { "GIF", "taken as PNG or JPEG" },
        { "PDF cut in half", "cannot be read" },
        { "PDF of a head alone", "cannot be read" },
        { "PDF of brackets", "cannot be read" },
        { "PDF that unpacks to a lot", "cannot be read" },
        { "PDF whose pages hold themselves", "cannot be read" },
        { "PDF of brackets in a table", "cannot be read" },
        { "PDF without pages", "cannot be read" },
        { "PDF of 301 pages", "has 301 pages; 300 are the most" },
        { "PNG cut in half", "cannot be read" },
        { "PNG of too many dots", "more than 40 million dots" },
        { "JPEG of a head alone", "cannot be read" },
    };

    [Theory]
    [MemberData(nameof(Bad))]
    public async Task Are_refused_with_a_sentence_beside_the_field_and_nothing_is_kept(string what, string words)
    {
        var family = await PrintingFamily.MakeAsync(server);
        using var answer = await family.BringAsync(Made(what), what.Contains("named", StringComparison.Ordinal) ? "sheet" + what[what.LastIndexOf('.')..] : "sheet.pdf");

        Assert.Equal(HttpStatusCode.UnprocessableEntity, answer.StatusCode);
        var page = await Visitor.ParseAsync(answer);
        var field = page.QuerySelector("input[type=file][aria-invalid=true]")!;
        Assert.Contains(words, page.GetElementById(field.GetAttribute("aria-describedby")!.Split(' ')[0])!.TextContent, StringComparison.Ordinal);
        Assert.Single(page.QuerySelectorAll("[aria-invalid=true]"));
        Assert.Empty(await family.OnShelfAsync());
    }

    // Reference program: qpdf locks the file.
    [FactBeside("qpdf")]
    public async Task Are_refused_where_they_are_locked_with_a_password_or_without()
    {
        var family = await PrintingFamily.MakeAsync(server);
        using var bench = new Workbench();
        var open = bench.Put("open.pdf", SamplePages.Sheet("mill-visit"));
        foreach (var user in new[] { "", "seven stars" })
        {
            var locked = Path.Combine(bench.Folder("locked" + user.Length), "locked.pdf");
            var (code, _, errors) = await ReferenceProgram.Named("qpdf").Run("--encrypt", user, "owner", "256", "--", open, locked);
            Assert.True(code == 0, errors);
            using var answer = await family.BringAsync(await File.ReadAllBytesAsync(locked), "sheet.pdf");
            Assert.Equal(HttpStatusCode.UnprocessableEntity, answer.StatusCode);
            Assert.Contains("This PDF is locked", (await Visitor.ParseAsync(answer)).Body!.TextContent, StringComparison.Ordinal);
        }

        Assert.Empty(await family.OnShelfAsync());
    }

    [Theory]
    [InlineData(25_000_001)]
    [InlineData(25_500_000)]
    public async Task Are_refused_where_they_are_too_large(int bytes)
    {
        var family = await PrintingFamily.MakeAsync(server);
        using var answer = await family.BringAsync(new byte[bytes], "sheet.pdf");

        Assert.Equal(HttpStatusCode.RequestEntityTooLarge, answer.StatusCode);
        var page = await Visitor.ParseAsync(answer);
        Assert.Contains("larger than 25 megabytes", page.QuerySelector(".fault:not(:empty)")!.TextContent, StringComparison.Ordinal);
        Assert.Equal("true", page.QuerySelector("#print-0 input[type=file]")!.GetAttribute("aria-invalid"));
        Assert.Empty(await family.OnShelfAsync());
    }

    [Fact]
    public async Task Are_asked_for_where_none_was_chosen()
    {
        var family = await PrintingFamily.MakeAsync(server);
        using var answer = await family.BringAsync(null, "");
        Assert.Equal(HttpStatusCode.UnprocessableEntity, answer.StatusCode);
        Assert.Contains("Choose a file.", (await Visitor.ParseAsync(answer)).Body!.TextContent, StringComparison.Ordinal);
    }

    private static byte[] Made(string what) => what switch
    {
        "empty" => [],
        "text named .pdf" => Encoding.UTF8.GetBytes("Dear miller, thank you for the visit."),
        "page named .pdf" => Encoding.UTF8.GetBytes("<!doctype html><script>alert(1)</script>"),
        "SVG" or "SVG named .png" => Encoding.UTF8.GetBytes("<?xml version=\"1.0\"?><svg xmlns=\"http://www.w3.org/2000/svg\"><script>alert(1)</script></svg>"),
        "HEIC" => [0, 0, 0, 24, .. "ftypheic"u8, .. new byte[40]],
        "GIF" => [.. "GIF89a"u8, .. new byte[40]],
        "PDF cut in half" => SamplePages.Sheet("mill-visit")[..9_000],
        "PDF of a head alone" => [.. "%PDF-1.7\n"u8],
        "PDF of brackets" => Encoding.ASCII.GetBytes("%PDF-1.7\n1 0 obj\n" + new string('[', 400_000)),
        "PDF that unpacks to a lot" => Packed(new byte[1_000_000], 200),
        "PDF whose pages hold themselves" => Encoding.ASCII.GetBytes("%PDF-1.4\n1 0 obj\n<</Type/Catalog/Pages 2 0 R>>\nendobj\n2 0 obj\n<</Type/Pages/Kids[2 0 R]/Count 1>>\nendobj\nxref\n0 3\n0000000000 65535 f \n0000000009 00000 n \n0000000054 00000 n \ntrailer\n<</Size 3/Root 1 0 R>>\nstartxref\n105\n%%EOF\n"),
        "PDF of brackets in a table" => Packed(Enumerable.Repeat((byte)'[', 1_000_000).ToArray(), 1),
        "PDF without pages" => Encoding.ASCII.GetBytes("%PDF-1.4\n1 0 obj\n<</Type/Catalog/Pages 2 0 R>>\nendobj\n2 0 obj\n<</Type/Pages/Kids[]/Count 0>>\nendobj\ntrailer\n<</Root 1 0 R>>\nstartxref\n0\n%%EOF\n"),
        "PDF of 301 pages" => SamplePages.Blank(301),
        "PNG cut in half" => SamplePages.Picture(SKEncodedImageFormat.Png)[..300],
        "PNG of too many dots" => Huge(),
        _ => [0xFF, 0xD8, 0xFF, 0xE0, 0, 16, .. "JFIF\0"u8],
    };

    /// <summary>A table of objects, packed small.</summary>
    private static byte[] Packed(byte[] content, int times)
    {
        using var packed = new MemoryStream();
        using (var zlib = new ZLibStream(packed, CompressionLevel.SmallestSize, leaveOpen: true))
        {
            for (var i = 0; i < times; i++)
                zlib.Write(content);
        }

        return [.. "%PDF-1.7\n1 0 obj\n<</Type/Obj#53tm/N 1/First 4/Filter/FlateDecode/Length "u8, .. Encoding.ASCII.GetBytes($"{packed.Length}>>\nstream\n"), .. packed.ToArray(), .. "\nendstream\nendobj\n"u8];
    }

    /// <summary>A picture whose head says 60,000 by 60,000.</summary>
    private static byte[] Huge()
    {
        var png = SamplePages.Picture(SKEncodedImageFormat.Png);
        byte[] size = [0, 0, 0xEA, 0x60, 0, 0, 0xEA, 0x60];
        size.CopyTo(png, 16);
        var sum = Crc(png.AsSpan(12, 17));
        (png[29], png[30], png[31], png[32]) = ((byte)(sum >> 24), (byte)((sum >> 16) & 0xFF), (byte)((sum >> 8) & 0xFF), (byte)(sum & 0xFF));
        return png;
    }

    // The check of a PNG's part, as its specification's annex D gives it.
    private static uint Crc(ReadOnlySpan<byte> bytes)
    {
        var sum = uint.MaxValue;
        foreach (var one in bytes)
        {
            sum ^= one;
            for (var k = 0; k < 8; k++)
                sum = (sum & 1) == 1 ? 0xEDB88320 ^ (sum >> 1) : sum >> 1;
        }

        return ~sum;
    }
}
