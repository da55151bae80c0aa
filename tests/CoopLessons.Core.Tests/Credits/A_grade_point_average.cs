using CoopLessons.Core.Credits;

namespace CoopLessons.Core.Tests.Credits;

/// <summary>Worked examples that schools publish, and what a family's own cases come to.</summary>
public class A_grade_point_average
{
    private static MarkedCourse Course(string mark, int credits, CourseLevel level = CourseLevel.Usual) => new(level, MarkKind.Graded, mark, new CreditCount(credits));

    // "Calculating Your G.P.A.", Unionville High School, as read on 28 November 2026: plus and minus at three tenths,
    // honors half a point and college-level courses a whole one more, nothing for an F. Eight courses over 6.25 credits,
    // 22.65 quality points, printed as 3.624. The unweighted sum is not printed there: 20.65, added up here.
    private static readonly MarkedCourse[] Unionville =
    [
        Course("B+", 100, CourseLevel.Honors), Course("B+", 100), Course("B+", 100, CourseLevel.College), Course("C+", 100, CourseLevel.Honors),
        Course("A-", 100), Course("A", 50), Course("A", 50), Course("B", 25),
    ];

    [Fact]
    public void Is_what_a_high_schools_guide_works_out()
    {
        var average = GradeAverage.Of(GradeScale.WithPlusAndMinus, Unionville);
        Assert.Equal(625, average.Over.Hundredths);
        Assert.Equal("3.62", GradeAverage.Text(average.Weighted!.Value));
        Assert.Equal("3.30", GradeAverage.Text(average.Unweighted!.Value));
    }

    // "Calculating GPA", registrar of Southern Polytechnic State University, as read on 28 November 2026: A over 4, A over 2,
    // C over 3, F over 3 and B over 2 credits: 36 points over 14, 2.57. An F counts among the credits.
    [Fact]
    public void Is_what_a_registrar_works_out_with_an_F()
    {
        var average = GradeAverage.Of(GradeScale.Plain, [Course("A", 400), Course("A", 200), Course("C", 300), Course("F", 300), Course("B", 200)]);
        Assert.Equal((257, 257), (average.Unweighted, average.Weighted));
        Assert.Equal(1400, average.Over.Hundredths);
    }

    [Fact]
    public void Leaves_out_what_was_only_passed_and_what_is_not_marked_yet()
    {
        var average = GradeAverage.Of(GradeScale.Plain,
            [Course("B", 100), new(CourseLevel.Usual, MarkKind.Passed, "", new CreditCount(100)), new(CourseLevel.Usual, MarkKind.NotPassed, "", new CreditCount(100)), new(CourseLevel.Honors, MarkKind.Open, "", new CreditCount(100))]);
        Assert.Equal((300, 300, 100), (average.Unweighted, average.Weighted, average.Over.Hundredths));
    }

    [Fact]
    public void Is_none_where_no_course_has_a_mark()
    {
        var average = GradeAverage.Of(GradeScale.Plain, [new(CourseLevel.Usual, MarkKind.Open, "", new CreditCount(100))]);
        Assert.Null(average.Unweighted);
        Assert.Null(average.Weighted);
    }

    [Fact]
    public void Says_how_many_marks_the_scale_does_not_have() =>
        Assert.Equal(1, GradeAverage.Of(GradeScale.Plain, [Course("A-", 100), Course("A", 100)]).Unknown);

    [Theory]
    // 8 credits of A and C: (5 × 400 + 3 × 200) ÷ 8 = 325.0; 1 of 8 hundredths: half goes up.
    [InlineData(500, 300, 325)]
    [InlineData(7, 1, 375)]
    [InlineData(1, 3, 250)]
    public void Weighs_marks_by_credits(int ofA, int ofC, int average) =>
        Assert.Equal(average, GradeAverage.Of(GradeScale.Plain, [Course("A", ofA), Course("C", ofC)]).Unweighted);

    [Fact]
    public void Is_rounded_once_and_half_goes_up()
    {
        // 399.5 and 399.4…
        Assert.Equal(400, GradeAverage.Of(new GradeScale([new("A", 400), new("B", 399)], 0, 0), [Course("A", 50), Course("B", 50)]).Unweighted);
        Assert.Equal(399, GradeAverage.Of(new GradeScale([new("A", 400), new("B", 399)], 0, 0), [Course("A", 50), Course("B", 51)]).Unweighted);
    }
}
