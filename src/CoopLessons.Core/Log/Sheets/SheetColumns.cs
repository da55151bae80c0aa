namespace CoopLessons.Core.Log.Sheets;

/// <summary>Which column of a sheet says what. Columns count from 0; null where none says it.</summary>
/// <param name="Headed">The first record names the columns and is no entry.</param>
/// <param name="DayForm">One of <see cref="SheetForms.Days"/>.</param>
/// <param name="Everybody">Where no column names learners: these.</param>
/// <param name="Subject0">Where no column names a subject: this one.</param>
public sealed record SheetColumns(
    bool Headed, int? Day, int? What, int? Who, int? Subject, int? Length, int? Start, int? Place, int? Note, string DayForm, LengthForm LengthForm, IReadOnlyList<Guid> Everybody, Guid? Subject0)
{
    private static readonly string[][] s_words =
    [
        ["date", "day", "datum", "fecha"], ["what", "title", "activity", "description", "lesson", "task", "name of lesson"], ["learner", "child", "student", "who", "learners", "children", "students", "name"],
        ["subject", "subjects", "course", "area"], ["minutes", "min", "mins", "hours", "time spent", "duration", "length", "hrs"], ["start", "begin", "start time", "from", "time"], ["place", "where", "location"], ["note", "notes", "comment", "comments", "remarks"],
    ];

    /// <summary>What the names of the columns and the first records suggest; to be looked at before anything is read by it.</summary>
    public static SheetColumns Guess(SheetRecords sheet)
    {
        var first = sheet.Records.Count == 0 ? [] : sheet.Records[0].Cells.Select(c => FoldedWords.Key(c)).ToList();
        var headed = s_words.Any(w => first.Exists(w.Contains));
        var taken = new HashSet<int>();
        var found = s_words.Select(words => headed && words.Select(w => first.IndexOf(w)).FirstOrDefault(i => i >= 0 && taken.Add(i), -1) is var at and >= 0 ? at : (int?)null).ToArray();
        var samples = sheet.Records.Skip(headed ? 1 : 0).Take(50).ToList();
        found[0] ??= Enumerable.Range(0, sheet.Columns).Where(i => SheetForms.DaysOf(Filled(samples, i)).Count > 0 && taken.Add(i)).Select(i => (int?)i).FirstOrDefault();
        // A length is needed and a start is not, so a column “time” of lengths says how long.
        if (found[4] is null && SheetForms.LengthsOf(Filled(samples, found[5])).Count > 0)
            (found[4], found[5]) = (found[5], null);
        found[4] ??= Enumerable.Range(0, sheet.Columns).Where(i => SheetForms.LengthsOf(Filled(samples, i)).Count > 0 && taken.Add(i)).Select(i => (int?)i).FirstOrDefault();
        // A few cells that cannot be read must not make all the others unreadable.
        var day = SheetForms.DayOfMost(Filled(samples, found[0])) ?? SheetForms.Days[0].Form;
        var saysHours = found[4] is { } at4 && headed && first[at4] is "hours" or "hrs";
        LengthForm[] order = saysHours ? [LengthForm.Hours, LengthForm.Minutes, LengthForm.Clock] : [LengthForm.Minutes, LengthForm.Clock, LengthForm.Hours];
        var length = SheetForms.LengthOfMost(Filled(samples, found[4]), order) ?? LengthForm.Minutes;
        return new SheetColumns(headed, found[0], found[1], found[2], found[3], found[4], found[5], found[6], found[7], day, length, [], null);
    }

    /// <summary>The first texts of a column, none of them empty.</summary>
    public static IReadOnlyList<string> Filled(IEnumerable<SheetRecord> records, int? column, int most = 50) =>
        column is null ? [] : [.. records.Select(r => r.Cell(column)).Where(c => c.Length > 0).Take(most)];
}
