using CoopLessons.Core.Calendar;
using CoopLessons.Core.Hours;

namespace CoopLessons.Core.Credits;

/// <summary>One course on a transcript.</summary>
/// <param name="Computed">What hours or college credits make; null where the credit rests on neither.</param>
/// <param name="Awarded">What the parent awards, zero where it earned none; null while the course is open.</param>
/// <param name="Mark">As printed: a mark of the scale, "passed", "in progress".</param>
public sealed record TranscriptLine(string Title, CourseArea Area, CourseLevel Level, CreditBasis Basis, Minutes Studied, CreditCount? Computed, CreditCount? Awarded, string Mark);

/// <summary>The courses that ended, or are to end, in one year.</summary>
/// <param name="Grade">9–12 as a rule; null where the family did not say.</param>
/// <param name="Average">Of this year's courses alone.</param>
public sealed record TranscriptYear(string Name, int? Grade, IReadOnlyList<TranscriptLine> Lines, GradeAverage Average)
{
    public CreditCount Awarded => Lines.Select(l => l.Awarded ?? CreditCount.Zero).Sum();
}

/// <summary>What stands at the head of a transcript, as the family typed it. What is empty is not printed.</summary>
/// <param name="School">The school as the family names it; never empty.</param>
/// <param name="FullName">The learner's whole name; never empty.</param>
/// <param name="Signer">Who signs, in words.</param>
public sealed record TranscriptHeading(string School, string Address, string FullName, DateOnly? Born, DateOnly? Graduated, string Signer);

/// <summary>A learner's high school years on one page. All sums are made here and in what it holds.</summary>
/// <param name="Methods">How credits were found, a sentence each; only methods in use.</param>
public sealed record Transcript(
    TranscriptHeading Heading,
    IReadOnlyList<TranscriptYear> Years,
    GradeScale Scale,
    GradeAverage Average,
    IReadOnlyList<string> Methods,
    DateOnly MadeOn)
{
    public CreditCount Awarded => Years.Select(y => y.Awarded).Sum();

    public int Courses => Years.Sum(y => y.Lines.Count);

    /// <summary>Credits by area, in the order of areas, those with none left out.</summary>
    public IReadOnlyList<(CourseArea Area, CreditCount Awarded)> ByArea =>
        [.. Years.SelectMany(y => y.Lines).GroupBy(l => l.Area).OrderBy(g => g.Key).Select(g => (g.Key, g.Select(l => l.Awarded ?? CreditCount.Zero).Sum())).Where(a => a.Item2 > CreditCount.Zero)];

    /// <summary>The twelve months from July to June in which a day lies, as a year is called that the family did not name: <c>2024–25</c>.</summary>
    public static string YearOf(DateOnly day)
    {
        var first = day.Month >= 7 ? day.Year : day.Year - 1;
        return string.Create(System.Globalization.CultureInfo.InvariantCulture, $"{first}–{(first + 1) % 100:00}");
    }

    /// <summary>Those months themselves.</summary>
    public static DayRange MonthsOf(DateOnly day)
    {
        var first = new DateOnly(day.Month >= 7 ? day.Year : day.Year - 1, 7, 1);
        return new DayRange(first, first.AddYears(1).AddDays(-1));
    }
}

/// <summary>A course with its description.</summary>
/// <param name="Years">In which it was taken, as the transcript calls them.</param>
/// <param name="Text">As the parent wrote it, a paragraph a line; never empty.</param>
public sealed record DescribedCourse(TranscriptLine Line, IReadOnlyList<string> Years, string Text);

/// <summary>What a learner's courses held: the paper that goes beside a transcript.</summary>
/// <param name="Courses">In the order of the transcript; those without a description left out.</param>
public sealed record CourseDescriptions(TranscriptHeading Heading, IReadOnlyList<DescribedCourse> Courses, DateOnly MadeOn);
