using CoopLessons.Core.Calendar;
using CoopLessons.Core.Log;
using CoopLessons.Core.Log.Sheets;
using CoopLessons.Data.Families;
using Microsoft.EntityFrameworkCore;

namespace CoopLessons.Data.Log.Sheets;

/// <summary>A brought sheet as it is read now: its text, the names met in it, its rows, and which of them the log has already.</summary>
/// <param name="Learners">Names as they stand in the sheet, each once; of more than <see cref="MostNames"/> those that nobody knows come first, and the rest is not asked about.</param>
/// <param name="There">Lines of rows that equal an entry which stands: day, words, learners and minutes.</param>
/// <param name="NewSubjects">Subjects that are made when it is taken in.</param>
public sealed record SheetAtHand(
    BroughtSheet Sheet, SheetText Text, SheetRecords Records, SheetColumns Columns, IReadOnlyList<NameMeant> Learners, IReadOnlyList<NameMeant> Subjects,
    SheetReading Reading, IReadOnlySet<int> There, IReadOnlyList<(Guid Id, string Name)> NewSubjects)
{
    public const int MostNames = 60;

    public static async Task<SheetAtHand> LoadAsync(AppDb db, BroughtSheet sheet, DateOnly today, CancellationToken ct)
    {
        var text = SheetText.Of(sheet.Content);
        var records = SheetRecords.Of(text.Text);
        var columns = sheet.Choices.Columns ?? SheetColumns.Guess(records);
        var learners = await db.Learners.AsNoTracking().OrderBy(l => l.Order).Select(l => new { l.Id, l.Name }).ToListAsync(ct);
        var subjects = await db.Subjects.AsNoTracking().OrderBy(s => s.Order).Select(s => new { s.Id, s.Name, s.Code }).ToListAsync(ct);
        var body = records.Records.Skip(columns.Headed ? 1 : 0).ToList();
        var met = Meant(Met(body, columns.Who, c => NamesInCells.Of(c)), sheet.Choices.Learners, k => learners.Find(l => FoldedWords.Key(l.Name) == k)?.Id);
        var taught = Meant(Met(body, columns.Subject, c => NamesInCells.Weighted(c).Select(w => w.Name)), sheet.Choices.Subjects, k => subjects.Find(s => FoldedWords.Key(s.Name) == k || FoldedWords.Key(s.Code) == k)?.Id);
        var made = taught.Where(s => s.Meant == NameMeant.New).Select(s => (Id: NewSubjectId(sheet.Id, s.Name), s.Name)).ToList();
        var names = new SheetNames(
            Known(met, learners.Select(l => l.Id), _ => null),
            Known(taught, subjects.Select(s => s.Id), n => made.Find(m => m.Name == n) is { Name: not null } one ? one.Id : null));
        var reading = SheetReading.Of(records, columns, names, today);
        return new SheetAtHand(sheet, text, records, columns, Asked(met), Asked(taught), reading, await ThereAsync(db, reading, ct), made);
    }

    private static List<string> Met(IEnumerable<SheetRecord> records, int? column, Func<string, IEnumerable<string>> names) => column is null ? [] :
        [.. records.SelectMany(r => names(r.Cell(column))).DistinctBy(FoldedWords.Key).Where(n => FoldedWords.Key(n).Length > 0)];

    private static List<NameMeant> Asked(List<NameMeant> names) => names.Count <= MostNames ? names : [.. names.OrderBy(n => n.Meant.Length > 0).Take(MostNames)];

    private static List<NameMeant> Meant(List<string> met, IReadOnlyList<NameMeant> said, Func<string, Guid?> known) =>
        [.. met.Select(n => said.FirstOrDefault(s => FoldedWords.Key(s.Name) == FoldedWords.Key(n)) is { } told ? new NameMeant(n, told.Meant) : new NameMeant(n, known(FoldedWords.Key(n))?.ToString() ?? ""))];

    private static Dictionary<string, Guid> Known(IEnumerable<NameMeant> names, IEnumerable<Guid> ids, Func<string, Guid?> made)
    {
        var own = ids.ToHashSet();
        var known = new Dictionary<string, Guid>(StringComparer.Ordinal);
        foreach (var name in names)
        {
            if ((Guid.TryParse(name.Meant, out var id) && own.Contains(id) ? id : name.Meant == NameMeant.New ? made(name.Name) : null) is { } meant)
                known[FoldedWords.Key(name.Name)] = meant;
        }

        return known;
    }

    private static Guid NewSubjectId(Guid sheet, string name) => LogImport.EntryId(LogImport.EntryId(sheet, -1), FoldedWords.Key(name).Aggregate(17, (h, c) => unchecked(h * 31 + c)));

    private static async Task<IReadOnlySet<int>> ThereAsync(AppDb db, SheetReading reading, CancellationToken ct)
    {
        if (reading.Rows.Count == 0)
            return new HashSet<int>();
        var logged = await db.LoggedAsync(new DayRange(reading.Rows.Min(r => r.Date), reading.Rows.Max(r => r.Date)), null, ct);
        var known = logged.Select(e => (e.Date, FoldedWords.Key(e.What), Who(e.Learners))).ToHashSet();
        return reading.Rows.Where(r => known.Contains((r.Date, FoldedWords.Key(r.What), Who(r.Times)))).Select(r => r.Line).ToHashSet();
    }

    private static string Who(IEnumerable<Core.Hours.LearnerTime> times) => string.Join(' ', times.Select(t => $"{t.LearnerId:N}:{t.Minutes.Value}").Order(StringComparer.Ordinal));
}
