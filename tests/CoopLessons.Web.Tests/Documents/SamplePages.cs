using CoopLessons.Data.Scenario;
using CoopLessons.Documents.Placing;
using CoopLessons.Documents.Reports;
using CoopLessons.Documents.Uploads;
using PdfSharp.Pdf;
using SkiaSharp;
using Xunit;

namespace CoopLessons.Web.Tests.Documents;

/// <summary>Files of pages as somebody would bring them.</summary>
internal static class SamplePages
{
    public static byte[] Sheet(string name) => ScenarioFiles.Bytes($"scenario/printables/{name}.pdf");

    /// <summary>Several pages, each of which says at its foot which page of how many it is.</summary>
    public static byte[] Numbered() => HoursPdf.Write(SampleReports.Of("Alder", "Wren", [.. Enumerable.Range(1, 90).Select(i => $"Subject {i}")], SampleReports.WholeYear));

    /// <summary>A PDF of pages with nothing on them.</summary>
    public static byte[] Blank(int pages)
    {
        using var document = new PdfDocument();
        for (var i = 0; i < pages; i++)
            document.AddPage();
        using var file = new MemoryStream();
        document.Save(file, closeStream: false);
        return file.ToArray();
    }

    /// <summary>A picture in three colours on a clear ground, wider than high.</summary>
    public static byte[] Picture(SKEncodedImageFormat format, int width = 300, int height = 200)
    {
        using var bitmap = new SKBitmap(width, height);
        using (var canvas = new SKCanvas(bitmap))
        {
            canvas.Clear(format == SKEncodedImageFormat.Png ? SKColors.Transparent : SKColors.White);
            using var red = new SKPaint { Color = new SKColor(200, 30, 20) };
            using var green = new SKPaint { Color = new SKColor(20, 140, 40) };
            using var blue = new SKPaint { Color = new SKColor(20, 40, 180, 128) };
            canvas.DrawRect(0, 0, width / 2f, height / 2f, red);
            canvas.DrawCircle(width * 0.7f, height * 0.5f, height * 0.3f, green);
            canvas.DrawRect(width / 3f, height / 3f, width / 3f, height / 2f, blue);
        }

        using var image = SKImage.FromBitmap(bitmap);
        return image.Encode(format, 90).ToArray();
    }

    /// <summary>A photograph that says that it was taken with the device on its side, and where (Exif 2.3, tags 0x0112 and 0x8825).</summary>
    public static byte[] Sideways()
    {
        byte[] tags =
        [
            0xFF, 0xE1, 0x00, 0x2E, .. "Exif\0\0"u8, .. "MM\0*"u8, 0, 0, 0, 8, 0, 2,
            0x01, 0x12, 0, 3, 0, 0, 0, 1, 0, 6, 0, 0,
            0x88, 0x25, 0, 4, 0, 0, 0, 1, 0, 0, 0, 0x26, 0, 0, 0, 0,
        ];
        tags[3] = (byte)(tags.Length - 2);
        var plain = Picture(SKEncodedImageFormat.Jpeg);
        return [.. plain[..2], .. tags, .. plain[2..]];
    }

    /// <summary>Kept as an upload is kept.</summary>
    public static (PageSource Source, int Pages) Kept(Workbench bench, string name, byte[] bytes)
    {
        using var kept = new MemoryStream();
        var verdict = PrintableFile.Look(new MemoryStream(bytes), kept, CancellationToken.None);
        Assert.Null(verdict.Fault);
        return (new PageSource(bench.Put(name, kept.ToArray()), verdict.Kind), verdict.Pages);
    }
}
