using CoopLessons.Core.Hours;

namespace CoopLessons.Core.Log.Sheets;

/// <summary>A row of a sheet that can go into the log.</summary>
/// <param name="Line">In the file, from 1.</param>
/// <param name="Times">Each learner once, all as long.</param>
public sealed record SheetRow(
    int Line, DateOnly Date, TimeOnly? Start, string What, Place Place, string Note, IReadOnlyList<LearnerTime> Times, IReadOnlyList<SubjectWeight> Split);

/// <summary>A row that cannot, and everything that is wrong with it.</summary>
public sealed record SheetFault(int Line, IReadOnlyList<string> Sentences);

/// <summary>What a sheet says, as somebody chose it to be read.</summary>
public sealed record SheetReading(IReadOnlyList<SheetRow> Rows, IReadOnlyList<SheetFault> Faults)
{
    public const int LongestWhat = 200;
    public const int LongestNote = 4000;
    private static readonly DateOnly s_earliest = new(2000, 1, 1);

    private static readonly Dictionary<string, Place> s_places = new(StringComparer.Ordinal)
    {
        ["home"] = Place.Home,
        ["at home"] = Place.Home,
        ["house"] = Place.Home,
        ["another home"] = Place.AnotherHome,
        ["other home"] = Place.AnotherHome,
        ["anotherhome"] = Place.AnotherHome,
        ["co op"] = Place.Coop,
        ["coop"] = Place.Coop,
        ["at the co op"] = Place.Coop,
        ["elsewhere"] = Place.Elsewhere,
        ["out"] = Place.Elsewhere,
        ["away"] = Place.Elsewhere,
        ["outside"] = Place.Elsewhere,
        ["field trip"] = Place.Elsewhere,
        ["library"] = Place.Elsewhere,
        ["park"] = Place.Elsewhere,
    };

    /// <param name="today">In the family's time zone: what is still to come cannot have been done.</param>
    public static SheetReading Of(SheetRecords sheet, SheetColumns columns, SheetNames names, DateOnly today)
    {
        var (rows, faults) = (new List<SheetRow>(), new List<SheetFault>());
        foreach (var record in sheet.Records.Skip(columns.Headed ? 1 : 0))
        {
            var wrong = new List<string>();
            var row = Row(record, columns, names, today, wrong);
            if (wrong.Count == 0)
                rows.Add(row!);
            else
                faults.Add(new SheetFault(record.Line, wrong));
        }

        return new SheetReading(rows, faults);
    }

    private static SheetRow? Row(SheetRecord record, SheetColumns columns, SheetNames names, DateOnly today, List<string> wrong)
    {
        var day = Day(record.Cell(columns.Day), columns.DayForm, today, wrong);
        var minutes = Minutes(record.Cell(columns.Length), columns.LengthForm, wrong);
        var who = columns.Who is null ? columns.Everybody : Learners(record.Cell(columns.Who), names, wrong);
        var split = columns.Subject is null ? columns.Subject0 is { } one ? [new SubjectWeight(one, 1)] : [] : Subjects(record.Cell(columns.Subject), names, wrong);
        if (columns.Who is null && who.Count == 0)
            wrong.Add("No child is chosen for the rows of this file.");
        if (columns.Subject is null && split.Count == 0)
            wrong.Add("No subject is chosen for the rows of this file.");
        var what = record.Cell(columns.What);
        if (what.Length == 0)
            what = record.Cell(columns.Subject);
        what = string.Join(' ', what.Split((char[]?)null, StringSplitOptions.RemoveEmptyEntries));
        if (what.Length == 0)
            wrong.Add("It does not say what was done.");
        else if (what.Length > LongestWhat)
            wrong.Add($"What was done has {what.Length} signs; {LongestWhat} are the most.");
        var start = record.Cell(columns.Start) is { Length: > 0 } clock ? SheetForms.Clock(clock) ?? Wrong<TimeOnly>($"“{Short(clock)}” is no time of day such as 9:30.", wrong) : (TimeOnly?)null;
        var place = record.Cell(columns.Place) is { Length: > 0 } where ? s_places.TryGetValue(FoldedWords.Key(where), out var known) ? known : Wrong<Place>($"“{Short(where)}” is none of home, another home, co-op, out.", wrong) : Place.Home;
        var note = record.Cell(columns.Note);
        if (note.Length > LongestNote)
            wrong.Add($"The note has {note.Length} signs; {LongestNote} are the most.");
        return wrong.Count > 0 ? null : new SheetRow(record.Line, day, start, what, place, note, [.. who.Select(w => new LearnerTime(w, new Minutes(minutes)))], split);
    }

    private static DateOnly Day(string text, string form, DateOnly today, List<string> wrong)
    {
        if (text.Length == 0)
            return Wrong<DateOnly>("It has no day.", wrong);
        if (SheetForms.Day(text, form) is not { } day)
            return Wrong<DateOnly>($"“{Short(text)}” is no day in the form that was chosen.", wrong);
        if (day > today)
            return Wrong<DateOnly>($"“{Short(text)}” is still to come.", wrong);
        return day < s_earliest ? Wrong<DateOnly>($"“{Short(text)}” is before the year 2000.", wrong) : day;
    }

    private static int Minutes(string text, LengthForm form, List<string> wrong)
    {
        if (text.Length == 0)
            return Wrong<int>("It does not say how long.", wrong);
        var shown = form switch { LengthForm.Minutes => "whole minutes such as 45", LengthForm.Clock => "hours and minutes such as 0:45", _ => "hours such as 0.75" };
        return SheetForms.Length(text, form) switch
        {
            null => Wrong<int>($"“{Short(text)}” is no length: {shown} are expected.", wrong),
            < 1 => Wrong<int>($"“{Short(text)}” is no time at all.", wrong),
            > 1440 => Wrong<int>($"“{Short(text)}” is longer than a day.", wrong),
            { } minutes => minutes,
        };
    }

    private static IReadOnlyList<Guid> Learners(string cell, SheetNames names, List<string> wrong)
    {
        var parts = NamesInCells.Of(cell);
        if (parts.Count == 0)
            wrong.Add("It names no child.");
        return [.. parts.Select(p => names.Learners.TryGetValue(FoldedWords.Key(p), out var id) ? id : Wrong<Guid>($"“{Short(p)}” is none of your children.", wrong)).Distinct()];
    }

    private static IReadOnlyList<SubjectWeight> Subjects(string cell, SheetNames names, List<string> wrong)
    {
        var parts = NamesInCells.Weighted(cell);
        if (parts.Count == 0)
            wrong.Add("It names no subject.");
        var met = parts.Select(p => (Id: names.Subjects.TryGetValue(FoldedWords.Key(p.Name), out var id) ? id : Wrong<Guid>($"“{Short(p.Name)}” is none of your subjects.", wrong), p.Weight)).ToList();
        return [.. met.GroupBy(m => m.Id).Select(g => new SubjectWeight(g.Key, g.Sum(m => m.Weight)))];
    }

    private static T Wrong<T>(string sentence, List<string> wrong)
        where T : struct
    {
        wrong.Add(sentence);
        return default;
    }

    private static string Short(string text) => text.Length > 40 ? text[..40] + "…" : text;
}
