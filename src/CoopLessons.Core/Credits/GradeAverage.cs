using System.Globalization;

namespace CoopLessons.Core.Credits;

/// <summary>How a course was marked.</summary>
public enum MarkKind
{
    /// <summary>Not yet: the course is under way, or nobody marked it.</summary>
    Open,

    /// <summary>With a mark of the scale.</summary>
    Graded,

    /// <summary>Passed, without a mark.</summary>
    Passed,

    /// <summary>Not passed, without a mark.</summary>
    NotPassed,
}

/// <summary>A course as an average sees it.</summary>
/// <param name="Mark">A mark of the scale where <paramref name="Kind"/> says so; else not read.</param>
/// <param name="Weight">Credits with which it counts: those awarded, or those attempted where its mark earns none.</param>
public sealed record MarkedCourse(CourseLevel Level, MarkKind Kind, string Mark, CreditCount Weight);

/// <summary>
/// A grade-point average: Σ(points × credits) ÷ Σ credits over the courses with a mark of the scale, rounded once, half
/// up, to two decimals. Courses that were passed without a mark, and those not marked, carry no points and are left out
/// of both sums.
/// </summary>
/// <param name="Unweighted">Hundredths; null where no course counts.</param>
/// <param name="Weighted">The same with what levels add.</param>
/// <param name="Over">Credits over which it is taken.</param>
/// <param name="Unknown">Courses whose mark the scale does not have: left out.</param>
public sealed record GradeAverage(int? Unweighted, int? Weighted, CreditCount Over, int Unknown)
{
    public static GradeAverage Of(GradeScale scale, IEnumerable<MarkedCourse> courses)
    {
        long plain = 0, weighted = 0;
        var (over, unknown) = (0, 0);
        foreach (var course in courses.Where(c => c.Kind == MarkKind.Graded))
        {
            if (scale.Step(course.Mark) is not { } step)
            {
                unknown++;
                continue;
            }

            var credits = course.Weight.Hundredths;
            plain += (long)step.Points * credits;
            weighted += (long)(step.Points + scale.Adds(course.Level, step)) * credits;
            over += credits;
        }

        return new GradeAverage(Rounded(plain, over), Rounded(weighted, over), new CreditCount(over), unknown);
    }

    /// <summary>Hundredths of a point with two decimals: 362 gives <c>3.62</c>.</summary>
    public static string Text(int points) => string.Create(CultureInfo.InvariantCulture, $"{points / 100}.{points % 100:00}");

    // Points stand in hundredths already, so the quotient does too; half a hundredth goes up.
    private static int? Rounded(long sum, int credits) => credits == 0 ? null : (int)((2 * sum + credits) / (2L * credits));
}
