using CoopLessons.Core.Families;

namespace CoopLessons.Core.Tests.Families;

public class A_level
{
    [Theory]
    [InlineData(0, "kindergarten")]
    [InlineData(1, "grade 1")]
    [InlineData(12, "grade 12")]
    public void Is_named_by_its_grade(int grade, string name) => Assert.Equal(name, new Level(grade).Name);

    // Common practice, no source.
    [Theory]
    [InlineData(0, 6)]
    [InlineData(6, 12)]
    public void Is_usually_worked_at_six_years_above_its_grade(int grade, int age) => Assert.Equal(age, new Level(grade).UsualAge);

    [Theory]
    [InlineData(-1)]
    [InlineData(13)]
    public void Lies_between_kindergarten_and_grade_12(int grade) =>
        Assert.Throws<ArgumentOutOfRangeException>(nameof(grade), () => new Level(grade));
}
