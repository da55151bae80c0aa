using CoopLessons.Core.Hours;
using CoopLessons.Core.Requirements;

namespace CoopLessons.Web.Pages.Law;

/// <summary>How every page says what the law asks.</summary>
public static class LawWords
{
    /// <summary>Whether the figure binds, in a word or two; the longer form is <see cref="Meaning"/>.</summary>
    public static string Of(FigureStatus status) => status switch
    {
        FigureStatus.Required => "required",
        FigureStatus.Derived => "worked out",
        FigureStatus.Disputed => "disputed",
        _ => "binds others",
    };

    public static string Meaning(FigureStatus status) => status switch
    {
        FigureStatus.Required => "The law, the rule or the office asks for it.",
        FigureStatus.Derived => "The law gives no number here; this one follows from its words by arithmetic or by likeness.",
        FigureStatus.Disputed => "Somebody says that it binds, and others deny it.",
        _ => "It binds others, such as public schools; shown to compare with.",
    };

    public static string Of(SpanReason because) => because switch
    {
        SpanReason.Begins => "home teaching begins",
        SpanReason.Moves => "moved here",
        _ => "changed",
    };

    /// <summary>What a parent tells.</summary>
    public static string Of(LegalEvent told) => told switch
    {
        LegalEvent.Begin => "home teaching began",
        LegalEvent.Move => "moved to this place or to another district",
        LegalEvent.Withdrawal => "left a school",
        LegalEvent.End => "home teaching ended",
        LegalEvent.YearStart => "the school year began",
        LegalEvent.YearEnd => "the school year ended",
        LegalEvent.PublicSchoolStart => "the public schools here opened",
        LegalEvent.FormReceived => "the office’s form came",
        LegalEvent.NoticeReceived => "the office wrote that something is missing",
        LegalEvent.FirstApproval => "the office approved our program for the first time",
        _ => "we filed for the first time",
    };

    /// <summary>The figure without its name: “at least 600 hours a year, taught at home”.</summary>
    public static string Figure(Requirement asked) => asked switch
    {
        DaysRequirement days => Amount(days.Days, "school day", (days.MinutesADay is { } minutes ? $" of at least {Length(minutes)}" : "") + Each(days.Per)),
        HoursRequirement hours => Amount(hours.Hours, "hour", Each(hours.Per)) + (hours.Place == Place.Home ? ", taught at home" : ""),
        AverageRequirement average => $"{Length(average.MinutesADay)} a day on average over {average.OverDays} days, {Hours(average.MinutesADay * average.OverDays / 60m)} in all",
        MonthsRequirement months => months.Months == 1 ? "instruction in at least 1 month" : $"instruction in at least {months.Months} months",
        TermsRequirement terms => $"the hours of each of {terms.Terms} terms" + (terms.Hours is { } share ? $", about {Hours(share)} each" : ""),
        AnyOf any => "one of these is enough: " + string.Join("; or ", any.Of.Select(Part)),
        AllOf all => "all of these: " + string.Join("; and ", all.Of.Select(Part)),
        JudgedRequirement judged => judged.Text,
        _ => "",
    };

    /// <summary>“hours in core subjects: at least 600 hours a year”.</summary>
    public static string NameAndFigure(Requirement asked) => $"{asked.Name}: {Figure(asked)}";

    /// <summary>A part of an alternative; its name only where the figure does not speak for itself.</summary>
    private static string Part(Requirement asked) =>
        (asked is DaysRequirement or HoursRequirement { Subjects: null } or AllOf or AnyOf ? Figure(asked) : NameAndFigure(asked))
        + (Whom(asked) is { Length: > 0 } whom ? $" ({whom})" : "");

    /// <summary>For whom a figure or a paper holds; empty for everybody.</summary>
    public static string Whom(Grades? grades, int? fromAge, int? underAge)
    {
        var parts = new List<string>();
        if (grades is not null)
            parts.Add(Of(grades));
        if (fromAge is { } from)
            parts.Add($"from the {Ordinal(from)} birthday");
        if (underAge is { } under)
            parts.Add($"until the {Ordinal(under)} birthday");
        return string.Join(", ", parts);
    }

    public static string Whom(Requirement asked) => Whom(asked.Grades, asked.FromAge, asked.UnderAge);

    public static string Of(Grades grades) => grades.Text switch
    {
        "K" => "kindergarten",
        { Length: 1 } or "10" or "11" or "12" => "grade " + grades.Text,
        _ => "grades " + grades.Text.Replace("-", "–", StringComparison.Ordinal).Replace(",", ", ", StringComparison.Ordinal),
    };

    public static string Grade(int grade) => new Core.Families.Level(grade).Name;

    public static string Of(DutyAges ages)
    {
        if (ages is { From: null, To: null })
            return "no age given";
        var begins = ages.From is { } from ? $"from the {Ordinal(from)} birthday" + (ages.By is { } by ? $" (a child of {from} by {by.Words} for that whole school year)" : "") : "";
        var ends = ages.To is { } to ? $"to the {Ordinal(to)} birthday" + (ages.Ends == DutyEnd.Year ? " and the end of that year" : "") : "";
        return string.Join(" ", new[] { begins, ends }.Where(p => p.Length > 0));
    }

    public static string Of(DutyKind kind) => kind switch
    {
        DutyKind.Notice => "notice",
        DutyKind.Plan => "plan",
        DutyKind.Report => "report",
        DutyKind.Assessment => "test or evaluation",
        DutyKind.Evaluation => "evaluation",
        DutyKind.Enrolment => "enrollment",
        _ => "other",
    };

    public static string Kept(RecordToKeep record) => record switch
    {
        { KeepAlways: true } => "kept for good",
        { KeepYears: 0 } => "kept to the end of the year",
        { KeepYears: 1 } => "kept for a year after the school year",
        { KeepYears: { } years } => $"kept for {years} years after the school year",
        _ => "the law gives no time",
    };

    public static string Hours(decimal hours) => hours == 1 ? "1 hour" : $"{hours:#,0.##} hours";

    /// <summary>A length of a day: “4 h 30”, “45 min”.</summary>
    public static string Length(int minutes) => (minutes / 60, minutes % 60) switch
    {
        (0, var rest) => $"{rest} min",
        (var hours, 0) => $"{hours} h",
        var (hours, rest) => $"{hours} h {rest:00}",
    };

    public static string Of(DateOnly date) => date.ToString("d MMMM yyyy");

    /// <summary>The basis and the date of the last look: “statute text, checked 25 November 2026”.</summary>
    public static string Basis(Source source) => source.Basis switch
    {
        Core.Requirements.Basis.Family => "your own",
        Core.Requirements.Basis.Memory => $"{source.BasisWords}; written down {Of(source.Checked)}",
        _ => $"{source.BasisWords}, checked {Of(source.Checked)}",
    };

    private static string Amount(decimal? number, string one, string each) => number switch
    {
        null => $"a number of {one}s{each} that is set where you live",
        1 => $"at least 1 {one}{each}",
        _ => $"at least {number:#,0.##} {one}s{each}",
    };

    private static string Each(Per per) => per switch
    {
        Per.Quarter => " in each quarter",
        Per.Half => " in each half of the year",
        _ => " a year",
    };

    private static string Ordinal(int number) => number + ((number % 100) is 11 or 12 or 13 ? "th" : (number % 10) switch { 1 => "st", 2 => "nd", 3 => "rd", _ => "th" });
}
