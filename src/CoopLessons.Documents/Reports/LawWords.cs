using CoopLessons.Core.Requirements;
using CoopLessons.Core.Requirements.Papers;
using CoopLessons.Core.Requirements.Standing;

namespace CoopLessons.Documents.Reports;

/// <summary>The words of the report's section on the law, the same in every form of it.</summary>
internal static class LawWords
{
    public const string Title = "What the law asks";
    public const string Subjects = "How our subjects are read";
    public const string NoSubjects = "This program knows no subjects that are asked under this pathway in this grade.";
    public const string NoFamilySubject = "none";
    public const string NoFigures = "This program knows no number of days or hours that counts under this pathway.";
    public const string CutDown = "cut down to those days: arithmetic, not law";
    public const string Confirm = "confirm this";
    public const string CautionTitle = "What this is not";

    public const string Caution =
        "This paper shows what the family logged beside figures of law as this program knows them, with source and date. Law changes; confirm with the state's own text or office or a licensed adviser. It is no legal advice and no finding that a duty is met.";

    public static string Opening(LawSection law) =>
        $"The log as it stood on {ReportWords.Date(law.AsOf)}, beside the figures that count for the learner. “On pace” and “behind” are arithmetic from the last weeks of the log.";

    public static string Source(Source source) =>
        $"{ReportWords.Given(source.Cite)}; {source.BasisWords}; {Checked(source)}{(source.NeedsConfirming ? "; " + Confirm : "")}";

    public static string Full(FigureLine figure) => (figure.Full, figure.FullWords.Length) switch
    {
        ({ } full, 0) => full.ToString(),
        ({ } full, _) when figure.FullWords.StartsWith("of ", StringComparison.Ordinal) => $"{full} {figure.FullWords}",
        ({ } full, _) => $"{full}, {figure.FullWords}",
        _ => figure.FullWords,
    };

    public static string Subject(SubjectLine subject) => subject.Pools.Count == 0 ? ReportWords.Given(subject.Name)
        : $"{ReportWords.Given(subject.Name)} (not asked by itself; counts in: {string.Join("; ", subject.Pools)})";

    public static string Family(SubjectLine subject) =>
        subject.Family.Count == 0 ? NoFamilySubject : string.Join(", ", subject.Family.Select(name => ReportWords.Given(PlainText.OneLine(name))));

    private static string Checked(Source source) => $"{(source.Basis == Basis.Memory ? "written down" : "checked")} {ReportWords.Date(source.Checked)}";
}
