using System.Text.Json.Serialization;
using CoopLessons.Core.Calendar;
using CoopLessons.Core.Requirements.Scores;

namespace CoopLessons.Core.Requirements;

public enum DutyKind
{
    Notice,
    Plan,
    Report,
    Assessment,
    Evaluation,
    Enrolment,
    Other,
}

/// <summary>What a report on a term or a year may be asked to hold.</summary>
public enum ReportPart
{
    /// <summary>Hours of instruction in the term.</summary>
    Hours,

    /// <summary>School days in the term.</summary>
    Attendance,

    /// <summary>How much of what was planned in each subject was covered.</summary>
    Material,

    /// <summary>How the child came on in each subject: a mark, or sentences.</summary>
    Progress,
}

/// <summary>What a report is asked to hold.</summary>
/// <param name="ExplainUnder">Per cent of a subject's planned material below which an explanation is asked for; null where none is.</param>
public sealed record ReportShape(IReadOnlyList<ReportPart> Parts, int? ExplainUnder = null);

public enum Repeats
{
    /// <summary>When home instruction under the pathway begins.</summary>
    Once,

    /// <summary>In every school year.</summary>
    Yearly,

    /// <summary>Whenever its event happens.</summary>
    Event,
}

/// <summary>A paper, a test or an evaluation with its due date.</summary>
/// <param name="Words">When it is due, in words.</param>
/// <param name="NotFirstYear">A yearly duty that begins with the second year.</param>
/// <param name="From">In force from this day.</param>
/// <param name="Until">In force to this day, included.</param>
/// <param name="ByOthers">The office's or the school's duty, shown so that the family can wait for it.</param>
/// <param name="When">A condition that the log cannot show.</param>
/// <param name="Threshold">For a test or an evaluation: what counts as enough, and what follows if not.</param>
/// <param name="Report">For a report on a term or a year: what it is asked to hold.</param>
/// <param name="Scores">The scores that the threshold names, for arithmetic beside it.</param>
/// <param name="Lead">Days before the due date at which to begin (common practice, no source).</param>
public sealed record Duty(
    string Id,
    DutyKind Kind,
    string What,
    string Words,
    DueRule Due,
    Repeats Repeats,
    FigureStatus Status,
    Source Source,
    string? To = null,
    bool NotFirstYear = false,
    Grades? Grades = null,
    int? FromAge = null,
    int? UnderAge = null,
    DateOnly? From = null,
    DateOnly? Until = null,
    bool Voluntary = false,
    bool ByOthers = false,
    string? When = null,
    string? Threshold = null,
    int? Lead = null,
    string? Note = null,
    ReportShape? Report = null,
    IReadOnlyList<ScoreFloor>? Scores = null);

/// <summary>Something that happens to a family, from which days are counted.</summary>
public enum LegalEvent
{
    /// <summary>Home instruction of the child begins.</summary>
    Begin,

    /// <summary>The family moves into the place or a district.</summary>
    Move,

    /// <summary>The child leaves a school.</summary>
    Withdrawal,

    /// <summary>Home instruction ends.</summary>
    End,
    YearStart,
    YearEnd,

    /// <summary>The local public schools open.</summary>
    PublicSchoolStart,

    /// <summary>The office's form reaches the family.</summary>
    FormReceived,

    /// <summary>The office finds something missing.</summary>
    NoticeReceived,
    FirstApproval,
    FirstFiling,
}

public enum DueUnit
{
    Days,

    /// <summary>Monday to Friday without federal holidays (common practice, no source).</summary>
    BusinessDays,

    /// <summary>The family's teaching days.</summary>
    SchoolDays,
    Weeks,
    Months,
}

/// <summary>How a due date is found.</summary>
[JsonPolymorphic(TypeDiscriminatorPropertyName = "rule")]
[JsonDerivedType(typeof(OnDate), "on")]
[JsonDerivedType(typeof(AfterEvent), "after")]
[JsonDerivedType(typeof(BeforeEvent), "before")]
[JsonDerivedType(typeof(AtEvent), "at")]
[JsonDerivedType(typeof(LaterOf), "later-of")]
[JsonDerivedType(typeof(EarlierOf), "earlier-of")]
[JsonDerivedType(typeof(WithDuty), "with")]
[JsonDerivedType(typeof(InTerms), "terms")]
[JsonDerivedType(typeof(OnBirthday), "birthday")]
[JsonDerivedType(typeof(InYear), "in-year")]
[JsonDerivedType(typeof(OnRequest), "on-request")]
public abstract record DueRule;

public enum WeekendRule
{
    FridayBefore,
}

/// <summary>
/// A fixed date of every year: the first such date on or after 1 July of the year in which the school year begins;
/// with <paramref name="After"/>, the first one after the school year's last day.
/// </summary>
/// <param name="Before">Strictly before the date: due on the day before.</param>
public sealed record OnDate(MonthDay Date, bool After = false, bool Before = false, WeekendRule? Weekend = null) : DueRule;

/// <summary>At most so many units after the event.</summary>
public sealed record AfterEvent(LegalEvent Event, int Count, DueUnit Unit) : DueRule;

/// <summary>At least so many units before the event.</summary>
public sealed record BeforeEvent(LegalEvent Event, int Count, DueUnit Unit) : DueRule;

public sealed record AtEvent(LegalEvent Event) : DueRule;

/// <summary>The latest of several dates; unknown while one of them is.</summary>
public sealed record LaterOf(IReadOnlyList<DueRule> Of) : DueRule;

/// <summary>The earliest of several dates; unknown while one of them is.</summary>
public sealed record EarlierOf(IReadOnlyList<DueRule> Of) : DueRule;

/// <summary>Together with another duty of the pathway: the last of its dates.</summary>
public sealed record WithDuty(string Duty) : DueRule;

/// <summary>So many times in the year, on dates that the family sets; the ends of even parts are proposed.</summary>
public sealed record InTerms(int Count) : DueRule;

public sealed record OnBirthday(int Age) : DueRule;

/// <summary>Once in the school year, no date in the law.</summary>
public sealed record InYear : DueRule;

/// <summary>When the office asks.</summary>
public sealed record OnRequest : DueRule;
