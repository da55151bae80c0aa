using System.Diagnostics;
using System.Globalization;
using CoopLessons.Core.Calendar;
using CoopLessons.Core.Families;
using CoopLessons.Core.Hours;
using CoopLessons.Core.Prepare.Printing;
using CoopLessons.Documents.Placing;
using CoopLessons.Documents.Portfolios;
using CoopLessons.Documents.Reports;
using SkiaSharp;

namespace CoopLessons.Benchmarks.Measured;

/// <summary>
/// A full portfolio of 150 photos as a phone takes them, with a year's log day by day: seconds and peak memory of a process
/// that makes nothing else, beside copying the same photos in the same run. The hours report of the same year is counted and
/// written there too, in milliseconds.
/// </summary>
public static class MakingAPortfolio
{
    private const int Photos = 150;
    private const int Reports = 21;
    private static readonly DayRange Year = new(new(2025, 7, 1), new(2026, 6, 30));

    /// <summary>Makes the photos, then has the portfolio made and the photos copied, each three times by a process of its own.</summary>
    public static int Print(TextWriter text)
    {
        var folder = Directory.CreateTempSubdirectory("cooplessons-portfolio-").FullName;
        try
        {
            for (var i = 0; i < Photos; i++)
                File.WriteAllBytes(Path.Combine(folder, $"photo-{i:000}.jpg"), Photo(i));
            var files = Directory.GetFiles(folder, "photo-*.jpg");
            text.WriteLine(string.Create(CultureInfo.InvariantCulture, $"{files.Length} photos, {files.Sum(f => new FileInfo(f).Length) / 1e6:0.0} MB"));
            text.WriteLine("| | seconds: three runs | peak memory, MB |");
            text.WriteLine("|---|---|---|");
            var made = Enumerable.Range(0, 3).Select(_ => MakingAPacket.Alone(Environment.ProcessPath!, [.. MakingAPacket.Self(), "portfolio", "in", folder])).ToList();
            MakingAPacket.Row(text, "the full portfolio, and the hours report 21 times", made);
            if (File.Exists("/bin/sh"))
            {
                var copied = Enumerable.Range(0, 3).Select(_ => MakingAPacket.Alone("/bin/sh", ["-c", $"cat {folder}/photo-*.jpg > {folder}/all"])).ToList();
                MakingAPacket.Row(text, "copying the same photos", copied);
                text.WriteLine(string.Create(CultureInfo.InvariantCulture, $"| ratio of the medians | {MakingAPacket.Median(made, m => m.Seconds) / MakingAPacket.Median(copied, m => m.Seconds):0.0} | {MakingAPacket.Median(made, m => m.Memory) / MakingAPacket.Median(copied, m => m.Memory):0.0} |"));
            }

            text.WriteLine(File.ReadAllText(Path.Combine(folder, "told")));
            return made.TrueForAll(m => m.Memory < 300) ? 0 : 1;
        }
        finally
        {
            Directory.Delete(folder, recursive: true);
        }
    }

    /// <summary>In the process of its own: the portfolio, then the hours report.</summary>
    public static int Make(string folder)
    {
        var (ledger, subjects) = Log();
        var heading = new ReportHeading("Alder", "Linnet", "2025–26", "We count lessons and projects.", new(2026, 7, 2));
        HoursReport Report() => HoursReport.Of(ledger, SchoolDays.Of(ledger, new Minutes(180), new Dictionary<DateOnly, bool>()), heading);
        var report = Report();
        var files = Directory.GetFiles(folder, "photo-*.jpg").Order(StringComparer.Ordinal).ToList();
        var papers = subjects.Select((s, k) => new SubjectPaper(
            s.Name, "", ["Taught the year through."], "She asks before she guesses.",
            [.. files.Where((_, i) => i % subjects.Count == k).Select((f, i) => new SamplePaper(f, 1, Year.First.AddDays(i * 17), "photo", "Middle", "It lifts eleven paper clips"))], [])).ToList();
        var names = subjects.ToDictionary(s => s.Id, s => s.Name);
        var log = ledger.Entries.Select(e => new LogPaper(e.Date, e.What, names[e.Split[0].SubjectId], e.Learners[0].Minutes, "at home")).ToList();
        var clock = Stopwatch.StartNew();
        using (var to = new FileStream(Path.Combine(folder, "portfolio.pdf"), FileMode.Create))
        using (var aside = new FileStream(Path.Combine(folder, "aside"), FileMode.Create, FileAccess.ReadWrite, FileShare.None, 81_920, FileOptions.DeleteOnClose))
        {
            PortfolioPdf.Write(
                new PortfolioPapers(report, "grade 4", "Missouri: Home school", "", "", Months: true, [], null, papers, [], log, null, Full: true, PaperSize.Letter),
                new PaperFiles(to, aside, files.ToDictionary(f => f, f => new PageSource(f, PageKind.Jpeg))), CancellationToken.None);
        }

        var portfolio = clock.Elapsed;
        var runs = Enumerable.Range(0, Reports).Select(_ => Timed(() => HoursPdf.Write(Report()))).ToList();
        File.WriteAllText(Path.Combine(folder, "told"), string.Create(
            CultureInfo.InvariantCulture,
            $"the portfolio alone: {portfolio.TotalSeconds:0.00} s, {new FileInfo(Path.Combine(folder, "portfolio.pdf")).Length / 1e6:0.0} MB; the hours report of {ledger.Entries.Count} entries: {runs.Order().ElementAt(Reports / 2):0} ms in the middle of {Reports}, {runs.Min():0} to {runs.Max():0}"));
        return 0;
    }

    private static double Timed(Func<byte[]> write)
    {
        var clock = Stopwatch.StartNew();
        if (write().Length == 0)
            throw new InvalidOperationException("Nothing was written.");
        return clock.Elapsed.TotalMilliseconds;
    }

    private static (HoursLedger Ledger, List<Subject> Subjects) Log()
    {
        var linnet = Guid.NewGuid();
        var subjects = new[] { "Reading", "Writing", "Mathematics", "Science", "History", "Geography", "Art", "Music", "Health", "Movement" }.Select(n => new Subject(Guid.NewGuid(), n)).ToList();
        var log = Year.Days().Where(d => d.DayOfWeek is not (DayOfWeek.Saturday or DayOfWeek.Sunday)).Take(200).SelectMany((d, i) => Enumerable.Range(0, 8).Select(k => new LoggedEntry(
            Guid.NewGuid(), 1, d, null, $"Lesson {i} of the mill and its river, part {k}", Place.Home, [new LearnerTime(linnet, new Minutes(20 + (i + k) % 35))], [new SubjectWeight(subjects[(i + k) % subjects.Count].Id, 1)], [])));
        return (HoursLedger.Of(linnet, subjects, Year, log), subjects);
    }

    /// <summary>A grainy photo as large as one is kept.</summary>
    private static byte[] Photo(int seed)
    {
        using var bitmap = new SKBitmap(2048, 1536);
        using (var canvas = new SKCanvas(bitmap))
        {
            canvas.Clear(new SKColor(230, 224, 210));
            using var paint = new SKPaint { StrokeWidth = 3, IsAntialias = true };
            var lot = new Random(seed);
            for (var i = 0; i < 9_000; i++)
            {
                paint.Color = new SKColor((byte)lot.Next(256), (byte)lot.Next(256), (byte)lot.Next(256), (byte)lot.Next(60, 200));
                var (x, y) = (lot.Next(2048), lot.Next(1536));
                canvas.DrawLine(x, y, x + lot.Next(-30, 31), y + lot.Next(-30, 31), paint);
            }
        }

        using var image = SKImage.FromBitmap(bitmap);
        return image.Encode(SKEncodedImageFormat.Jpeg, 86).ToArray();
    }
}
