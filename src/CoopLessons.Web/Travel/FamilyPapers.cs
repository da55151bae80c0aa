using CoopLessons.Core.Sealing;
using CoopLessons.Data;
using CoopLessons.Data.Hours;
using CoopLessons.Data.Prepare;
using CoopLessons.Data.Sealing;
using CoopLessons.Data.Travel;
using CoopLessons.Documents.Reports;
using CoopLessons.Web.Pages.Records;
using Microsoft.EntityFrameworkCore;

namespace CoopLessons.Web.Travel;

/// <summary>A paper of a sealed year that is in the file.</summary>
/// <param name="Kind">As papers are called that are given out.</param>
public sealed record SealedPaper(Guid SchoolYearId, Guid LearnerId, string Kind, SealMark Seal, byte[] Bytes);

/// <summary>The papers that go into a family's file: hours report and reading list of each learner and school year.</summary>
public static class FamilyPapers
{
    /// <param name="today">In the family's time zone.</param>
    /// <param name="made">Told of each paper of a sealed year once it is drawn.</param>
    public static async Task<IReadOnlyList<TravelPaper>> OfAsync(AppDb db, DateOnly today, Action<SealedPaper> made, CancellationToken ct)
    {
        var years = await db.SchoolYears.AsNoTracking().Include(y => y.Breaks).OrderBy(y => y.First).ThenBy(y => y.Id).ToListAsync(ct);
        var learners = await db.Learners.AsNoTracking().OrderBy(l => l.Order).ThenBy(l => l.Id).ToListAsync(ct);
        var papers = new List<TravelPaper>();
        var taken = new HashSet<string>(StringComparer.OrdinalIgnoreCase);
        foreach (var (learner, year) in learners.SelectMany(l => years.Select(y => (l, y))))
        {
            papers.Add(new TravelPaper(Free("hours", learner.Name, year.Name, taken), c => SealedAsync("hours", async seal =>
                (await HoursFile.WriteAsync(db, (await LearnerYear.LoadAsync(db, learner.Id, year.Days, c))!, year, year.Name, today, "pdf", c, seal)).Bytes, c)));
            papers.Add(new TravelPaper(Free("reading", learner.Name, year.Name, taken), c => SealedAsync("reading list", async seal =>
                ReadingListPdf.Write(await ListOfReading.LoadAsync(db, learner, year, today, c), seal), c)));

            async Task<byte[]> SealedAsync(string kind, Func<SealMark?, Task<byte[]>> write, CancellationToken c)
            {
                var seal = await db.SealMarkAsync(year.Id, learner.Id, c);
                var bytes = await write(seal);
                if (seal is not null)
                    made(new SealedPaper(year.Id, learner.Id, kind, seal, bytes));
                return bytes;
            }
        }

        return papers;
    }

    /// <summary>Two children may bear one name, and a name may have no letters that every system takes.</summary>
    private static string Free(string paper, string learner, string year, HashSet<string> taken)
    {
        var stem = Path.GetFileNameWithoutExtension(HoursFile.Named(paper, learner, year, "pdf", "", []).AsciiName);
        var name = stem + ".pdf";
        for (var n = 2; !taken.Add(name); n++)
            name = $"{stem}-{n}.pdf";
        return name;
    }
}
