using CoopLessons.Core.Calendar;
using CoopLessons.Core.Prepare.Books;
using CoopLessons.Core.Units;

namespace CoopLessons.Documents.Reports;

/// <summary>The words of the reading list, the same in every form of it.</summary>
public static class ReadingListWords
{
    public const string Title = "Reading list";
    public const string Rule = "A book stands in each school year in which it was under way, with its own days. Levels are the parents’ own.";

    public static string How(ReadingListLine line) => line.How switch
    {
        BookUse.Heard => "heard",
        BookUse.ReadAlone => "read alone",
        BookUse.ListenedTo => "listened to",
        _ => "looked through",
    };

    public static string Ended(ReadingListLine line) => line.EndedOn is { } ended ? line.Unfinished ? $"{ended.Plain()}, put away unfinished" : ended.Plain() : "goes on";

    /// <summary>“7 books, 5 of them finished”.</summary>
    public static string Counted(ReadingList list) => $"{(list.Lines.Count == 1 ? "1 book" : $"{list.Lines.Count} books")}, {(list.Lines.Count == list.Finished ? "all finished" : $"{list.Finished} of them finished")}";
}
