using System.Globalization;
using CoopLessons.Core.Hours;

namespace CoopLessons.Core.Credits;

/// <summary>How pages and papers call areas, levels, bases and marks, and in which words they say how a credit was found.</summary>
public static class CreditWords
{
    public static string Of(CourseArea area) => area switch
    {
        CourseArea.English => "English",
        CourseArea.Mathematics => "Mathematics",
        CourseArea.Science => "Science",
        CourseArea.SocialStudies => "Social studies",
        CourseArea.Language => "Language",
        CourseArea.Arts => "Arts",
        CourseArea.HealthAndMovement => "Health and movement",
        _ => "Other",
    };

    public static string Of(CourseLevel level) => level switch
    {
        CourseLevel.Honors => "honors",
        CourseLevel.College => "college level",
        _ => "usual",
    };

    public static string Of(CreditBasis basis) => basis switch
    {
        CreditBasis.Hours => "hours",
        CreditBasis.Mastery => "mastery",
        CreditBasis.FinishedWork => "finished work",
        _ => "college course",
    };

    public static string Of(MarkKind kind, string mark) => kind switch
    {
        MarkKind.Graded => mark,
        MarkKind.Passed => "passed",
        MarkKind.NotPassed => "not passed",
        _ => "in progress",
    };

    /// <summary>One sentence on how a credit of this basis was found.</summary>
    /// <param name="perCredit">Minutes of one credit.</param>
    /// <param name="college">College credits of one credit, hundredths.</param>
    public static string Method(CreditBasis basis, Minutes perCredit, int college) => basis switch
    {
        CreditBasis.Hours => $"By hours: {PerCredit(perCredit)}, each hour in one course only; the parent awards the credit.",
        CreditBasis.Mastery => "By mastery: the parent found the content of the course mastered.",
        CreditBasis.FinishedWork => "By finished work: the text or set of lessons was completed.",
        _ => string.Create(CultureInfo.InvariantCulture, $"By college course: {new CreditCount(college).Text.TrimEnd('0').TrimEnd('.')} college credits make 1 credit (common practice, no source)."),
    };

    private static string PerCredit(Minutes minutes) => minutes == CreditCount.CarnegieUnit
        ? "120 hours of recorded study make 1 credit (the Carnegie unit)"
        : $"{minutes.Clock} hours of recorded study make 1 credit";
}
