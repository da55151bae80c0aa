using CoopLessons.Core.Hours;
using CoopLessons.Core.Requirements;
using CoopLessons.Web.Pages.Law;

namespace CoopLessons.Web.Tests.Law;

public sealed class The_words_for_what_the_law_asks
{
    private static readonly Source Ours = new("our own", Basis.Family, new DateOnly(2026, 3, 1));

    [Fact]
    public void Name_the_amount_its_unit_and_over_what()
    {
        Assert.Equal("at least 180 school days of at least 4 h 30 a year", LawWords.Figure(Days(180, 270)));
        Assert.Equal("a number of school days a year that is set where you live", LawWords.Figure(Days(null, null)));
        Assert.Equal("at least 1,000 hours a year", LawWords.Figure(Hours(1000)));
        Assert.Equal("at least 247.5 hours in each quarter, taught at home", LawWords.Figure(Hours(247.5m) with { Per = Per.Quarter, Place = Place.Home }));
        Assert.Equal(
            "4 h a day on average over 180 days, 720 hours in all",
            LawWords.Figure(new AverageRequirement { Id = "a", Name = "a", Status = FigureStatus.Required, Source = Ours, MinutesADay = 240, OverDays = 180 }));
    }

    [Fact]
    public void Join_alternatives_and_say_for_whom_each_is() => Assert.Equal(
        "days or hours: one of these is enough: at least 180 school days a year; or at least 900 hours a year (grades K–6); or at least 990 hours a year (grades 7–12)",
        LawWords.NameAndFigure(new AnyOf
        {
            Id = "x",
            Name = "days or hours",
            Status = FigureStatus.Required,
            Source = Ours,
            Of = [Days(180, null), Hours(900) with { Grades = Grades.Parse("K-6") }, Hours(990) with { Grades = Grades.Parse("7-12") }],
        }));

    [Theory]
    [InlineData("K", "kindergarten")]
    [InlineData("12", "grade 12")]
    [InlineData("K-6", "grades K–6")]
    [InlineData("3,5,8", "grades 3, 5, 8")]
    public void Name_grades(string grades, string words) => Assert.Equal(words, LawWords.Of(Grades.Parse(grades)));

    [Fact]
    public void Differ_for_every_status_reason_event_and_kind()
    {
        Assert.Equal(Enum.GetValues<FigureStatus>().Length, Enum.GetValues<FigureStatus>().Select(LawWords.Of).Distinct().Count());
        Assert.Equal(Enum.GetValues<FigureStatus>().Length, Enum.GetValues<FigureStatus>().Select(LawWords.Meaning).Distinct().Count());
        Assert.Equal(Enum.GetValues<SpanReason>().Length, Enum.GetValues<SpanReason>().Select(LawWords.Of).Distinct().Count());
        Assert.Equal(Enum.GetValues<LegalEvent>().Length, Enum.GetValues<LegalEvent>().Select(LawWords.Of).Distinct().Count());
        Assert.Equal(Enum.GetValues<DutyKind>().Length, Enum.GetValues<DutyKind>().Select(LawWords.Of).Distinct().Count());
    }

    [Theory]
    [InlineData(7, 16, "from the 7th birthday, until the 16th birthday")]
    [InlineData(null, 21, "until the 21st birthday")]
    [InlineData(12, null, "from the 12th birthday")]
    [InlineData(null, null, "")]
    public void Name_ages(int? from, int? under, string words) => Assert.Equal(words, LawWords.Whom(null, from, under));

    private static DaysRequirement Days(int? days, int? minutes) =>
        new() { Id = "d", Name = "school days", Status = FigureStatus.Required, Source = Ours, Days = days, MinutesADay = minutes };

    private static HoursRequirement Hours(decimal? hours) =>
        new() { Id = "h", Name = "hours", Status = FigureStatus.Required, Source = Ours, Hours = hours };
}
