namespace CoopLessons.Web.Pages.Records.Sealing;

/// <summary>How these pages call what was sealed.</summary>
public static class SealWords
{
    public static string Amendments(int count) => count == 1 ? "1 amendment" : $"{count} amendments";

    public static string Corrections(int count) => count == 1 ? "1 late correction" : $"{count} late corrections";

    /// <summary>Under which name a record's file is kept.</summary>
    public static string FileName(int number) => number == 0 ? "record.json" : $"amendment-{number}.json";
}
