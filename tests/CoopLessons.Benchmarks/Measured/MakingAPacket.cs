using System.Diagnostics;
using System.Globalization;
using CoopLessons.Core.Prepare.Printing;
using CoopLessons.Documents.Packets;
using CoopLessons.Documents.Placing;
using CoopLessons.Documents.Uploads;
using PdfSharp.Drawing;
using PdfSharp.Pdf;
using SkiaSharp;

namespace CoopLessons.Benchmarks.Measured;

/// <summary>
/// A packet of 200 pages from files such as families bring, half of them text and half scans of some 300 kB each: seconds
/// and peak memory of a process that makes nothing else, beside qpdf joining the same pages of the same files in the same
/// run. qpdf only copies; it draws no dividers and names, takes no colour away and tags nothing.
/// </summary>
public static class MakingAPacket
{
    private const int Pages = 200;
    private const int FileLength = 25;

    /// <summary>Makes the files, then has the packet made and the files joined, each three times by a process of its own.</summary>
    public static int Print(TextWriter text)
    {
        var folder = Directory.CreateTempSubdirectory("cooplessons-packet-").FullName;
        try
        {
            var files = Files(folder);
            text.WriteLine(string.Create(CultureInfo.InvariantCulture, $"{files.Count} files, {files.Sum(f => new FileInfo(f).Length) / 1e6:0.0} MB"));
            text.WriteLine("| 200 pages | seconds: three runs | peak memory, MB |");
            text.WriteLine("|---|---|---|");
            var made = Enumerable.Range(0, 3).Select(_ => Alone(Environment.ProcessPath!, [.. Self(), "packet", "in", folder])).ToList();
            Row(text, "the packet, dividers, blanks, names and all", made);
            List<(double Seconds, double Memory)> joined = [];
            if (File.Exists("/usr/bin/qpdf"))
            {
                joined = [.. Enumerable.Range(0, 3).Select(_ => Alone("/usr/bin/qpdf", ["--empty", "--pages", .. files, "--", Path.Combine(folder, "joined.pdf")]))];
                Row(text, "qpdf joining the same files", joined);
                text.WriteLine(string.Create(CultureInfo.InvariantCulture, $"| ratio of the medians | {Median(made, m => m.Seconds) / Median(joined, m => m.Seconds):0.0} | {Median(made, m => m.Memory) / Median(joined, m => m.Memory):0.0} |"));
            }

            return made.TrueForAll(m => m.Memory < 300) ? 0 : 1;
        }
        finally
        {
            Directory.Delete(folder, recursive: true);
        }
    }

    /// <summary>In the process of its own: the packet, and nothing else.</summary>
    public static int Make(string folder)
    {
        var learner = new PacketCopy(Guid.CreateVersion7(), "Wren");
        var files = Directory.GetFiles(folder, "source-*.pdf").Order(StringComparer.Ordinal).ToList();
        var sections = files.Select((f, i) => new PacketSection(
            Guid.CreateVersion7(), [new PacketPiece(Guid.CreateVersion7(), $"Sheets {i + 1}", f, [.. Enumerable.Range(1, FileLength)], Colour: false, Up: 1, [learner])])).ToList();
        var dividers = sections.Select((_, i) => new Divider(
            $"Subject {i + 1}", "Packet for the week of 30 November 2026 · Alder",
            [new DividerActivity("Grind wheat by hand", "Monday 30 November", "for Wren", ["Sheets, 25 pages for Wren"], [new DividerCaution("Raw flour", "Raw flour is not eaten.")])],
            "These cautions do not replace your own judgement.")).ToList();
        var plan = PacketPlan.Of(sections, bothSides: true);
        var sources = files.ToDictionary(f => f, f => new PageSource(f, PageKind.Pdf));
        using var to = new FileStream(Path.Combine(folder, "packet.pdf"), FileMode.Create);
        using var aside = new FileStream(Path.Combine(folder, "aside"), FileMode.Create, FileAccess.ReadWrite, FileShare.None, 81_920, FileOptions.DeleteOnClose);
        PacketPdf.Write(new PacketPapers("Packet", "Alder", new DateOnly(2026, 11, 29), PaperSize.Letter, plan, dividers, sources), to, aside, CancellationToken.None);
        return 0;
    }

    internal static string[] Self() =>
        Path.GetFileNameWithoutExtension(Environment.ProcessPath!).Equals("dotnet", StringComparison.OrdinalIgnoreCase) ? [typeof(MakingAPacket).Assembly.Location] : [];

    /// <summary>Seconds by the clock from start to end, and the most memory that the process ever held (VmHWM), in MB.</summary>
    internal static (double Seconds, double Memory) Alone(string program, string[] arguments)
    {
        var clock = Stopwatch.StartNew();
        using var process = Process.Start(new ProcessStartInfo(program, arguments) { RedirectStandardError = true })!;
        var peak = 0L;
        // The system keeps the peak itself, and takes it away with the process: the last reading before the end holds.
        do
        {
            peak = Math.Max(peak, Peak(process.Id));
        }
        while (!process.WaitForExit(5));
        return process.ExitCode == 0 ? (clock.Elapsed.TotalSeconds, peak / 1024.0) : throw new InvalidOperationException(process.StandardError.ReadToEnd());
    }

    private static long Peak(int id)
    {
        try
        {
            var line = Array.Find(File.ReadAllLines($"/proc/{id}/status"), l => l.StartsWith("VmHWM:", StringComparison.Ordinal));
            return line is null ? 0 : long.Parse(line.Split(' ', StringSplitOptions.RemoveEmptyEntries)[^2].Trim('\t'), CultureInfo.InvariantCulture);
        }
        catch (IOException)
        {
            return 0;
        }
    }

    internal static void Row(TextWriter text, string what, List<(double Seconds, double Memory)> runs) => text.WriteLine(string.Create(
        CultureInfo.InvariantCulture, $"| {what} | {string.Join(", ", runs.Select(r => r.Seconds.ToString("0.00", CultureInfo.InvariantCulture)))} | {string.Join(", ", runs.Select(r => r.Memory.ToString("0", CultureInfo.InvariantCulture)))} |"));

    internal static double Median(List<(double Seconds, double Memory)> runs, Func<(double Seconds, double Memory), double> of) => runs.Select(of).Order().ElementAt(runs.Count / 2);

    /// <summary>Four files of text and four of scans, 25 pages each.</summary>
    private static List<string> Files(string folder)
    {
        var files = new List<string>();
        for (var number = 0; number < Pages / FileLength; number++)
        {
            var path = Path.Combine(folder, $"source-{number}.pdf");
            using var document = new PdfDocument();
            for (var page = 0; page < FileLength; page++)
            {
                var sheet = document.AddPage();
                sheet.Width = XUnit.FromPoint(612);
                sheet.Height = XUnit.FromPoint(792);
                using var graphics = XGraphics.FromPdfPage(sheet);
                if (number % 2 == 0)
                    Rules(graphics, page);
                else
                    Scan(graphics, number * FileLength + page);
            }

            document.Save(path);
            files.Add(path);
            using var looked = File.OpenRead(path);
            if (PrintableFile.Look(looked, Stream.Null, CancellationToken.None).Fault is { } fault)
                throw new InvalidOperationException($"A file that was made for measuring is refused: {fault}.");
        }

        return files;
    }

    /// <summary>A page of a table and rules, as a record sheet is.</summary>
    private static void Rules(XGraphics graphics, int page)
    {
        for (var row = 0; row < 60; row++)
        {
            graphics.DrawLine(XPens.Black, 50, 60 + row * 11, 560, 60 + row * 11);
            for (var column = 0; column < 12; column++)
                graphics.DrawRectangle(new XPen(XColors.Sienna, 0.3), 50 + column * 42, 60 + row * 11, 30 + (page + row) % 9, 8);
        }
    }

    /// <summary>A grainy page in colour at 150 dots to the inch.</summary>
    private static void Scan(XGraphics graphics, int seed)
    {
        using var bitmap = new SKBitmap(1240, 1600);
        using (var canvas = new SKCanvas(bitmap))
        {
            canvas.Clear(new SKColor(245, 240, 228));
            using var paint = new SKPaint { StrokeWidth = 2, IsAntialias = true };
            var lot = new Random(seed);
            for (var i = 0; i < 5_500; i++)
            {
                paint.Color = new SKColor((byte)lot.Next(90), (byte)lot.Next(80), (byte)lot.Next(120), (byte)lot.Next(60, 255));
                var (x, y) = (lot.Next(1200), lot.Next(1560));
                canvas.DrawLine(x, y, x + lot.Next(-14, 15), y + lot.Next(-14, 15), paint);
            }
        }

        using var image = SKImage.FromBitmap(bitmap);
        using var stream = new MemoryStream(image.Encode(SKEncodedImageFormat.Jpeg, 72).ToArray());
        using var drawn = XImage.FromStream(stream);
        graphics.DrawImage(drawn, 0, 0, 612, 792);
    }
}
