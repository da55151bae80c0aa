using CoopLessons.Core.Schedule;
using CoopLessons.Data;
using CoopLessons.Data.Files;
using CoopLessons.Data.Tenancy;
using CoopLessons.Data.Travel;
using CoopLessons.Documents.Reports;
using CoopLessons.Web.Planning;
using CoopLessons.Web.Sealing;
using Microsoft.EntityFrameworkCore;

namespace CoopLessons.Web.Travel;

/// <summary>Makes the file of a whole family in the line of long works.</summary>
public sealed class OutWork(LayoutLine line, IServiceScopeFactory scopes, FileShelf shelf, FilesOfFamilies made, TimeProvider clock)
{
    public const string Key = "everything out";

    /// <summary>The id of the job; null where the line is full.</summary>
    public Guid? Ask(Guid family, Guid by) => line.Ask(family, Key, async (progress, ct) =>
    {
        await using var scope = scopes.CreateAsyncScope();
        scope.ServiceProvider.GetRequiredService<CurrentFamily>().ActForProgram(family);
        var now = clock.GetUtcNow().UtcDateTime;
        made.Sweep(now);
        var file = made.Begin([family], by, now);
        try
        {
            await using (file)
                await WriteAsync(scope.ServiceProvider.GetRequiredService<AppDb>(), shelf, file, clock, p => progress.Report(new LayoutProgress(p.Step, p.Share)), ct);
            made.Keep(file.Name);
            return "made";
        }
        catch
        {
            File.Delete(file.Name);
            throw;
        }
    });

    /// <summary>Writes the file of the family at hand.</summary>
    public static async Task WriteAsync(AppDb db, FileShelf shelf, Stream to, TimeProvider clock, Action<TravelProgress> tell, CancellationToken ct)
    {
        var family = await db.Families.AsNoTracking().SingleAsync(ct);
        var today = family.Today(clock);
        var given = new List<SealedPaper>();
        var papers = await FamilyPapers.OfAsync(db, today, given.Add, ct);
        await new FamilyOut(db, shelf, SpreadsheetText.Guarded).WriteAsync(to, papers, clock.GetUtcNow().UtcDateTime, tell, ct);
        // Whoever is shown one of them may ask here whether it is unchanged.
        foreach (var paper in given)
            await db.GiveOutAsync(paper.SchoolYearId, paper.LearnerId, paper.Kind, paper.Seal, paper.Bytes, today, ct);
    }
}
