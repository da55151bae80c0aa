using CoopLessons.Data.Files;
using CoopLessons.Data.Prepare.Printing;
using Microsoft.EntityFrameworkCore;

namespace CoopLessons.Data.Scenario;

/// <summary>Puts a family's printables onto its shelf and into its activities, as somebody would who brought them one by one.</summary>
internal sealed class PrintsOfFamily(AppDb db, FileShelf shelf, Household house, IReadOnlyList<CoopPrint> told)
{
    /// <summary>Adds everything to the unit of work. Nothing is saved here but the files, which no row names until then.</summary>
    public async Task AddAsync(CancellationToken ct)
    {
        var units = await db.Units.Include(u => u.Activities).ToListAsync(ct);
        var at = house.Utc(house.Family.Years[^1].First, 20 * 60);
        var files = new Dictionary<string, StoredFile>(StringComparer.Ordinal);
        foreach (var print in told)
        {
            using var content = new MemoryStream(ScenarioFiles.Bytes($"scenario/printables/{print.File}"), writable: false);
            var hash = await shelf.PutAsync(db.Current.FamilyId!.Value, content, ct);
            if (!files.TryGetValue(hash, out var file))
                db.StoredFiles.Add(files[hash] = file = new StoredFile(hash, StoredKind.Pdf, content.Length, print.Pages, house.Adults[0].Name, at));
            var unit = units.Single(u => u.Title == ScenarioFiles.Units[print.Unit].Title);
            var source = new PrintSource(Guid.CreateVersion7(), unit.Activities.Single(a => a.Code == print.Activity).Id, print.Printable, file, print.File);
            source.Choose(print.Choices.Select(c => c.ToCore()));
            db.PrintSources.Add(source);
        }
    }
}
