using CoopLessons.Documents;
using CoopLessons.Documents.Reports;

namespace CoopLessons.Web.Tests.Documents;

public sealed class Letters_that_paper_can_show
{
    [Theory]
    [InlineData("Zoë Łukasz Žofie Ñandú Þórunn Ġorġ")]
    [InlineData("Nguyễn Ngọc Ánh, Đặng Hữu Phước")]
    [InlineData("Quỳnh Như ế ệ ả ư ỡ ẹ")]
    [InlineData("Αηδόνι Σπίνος Ὀρφέας ΐ ΰ")]
    [InlineData("Щегол Ґанна Ќирил Ђорђе Ёлка Їжак")]
    public void Are_latin_vietnamese_greek_and_cyrillic(string name)
    {
        Assert.True(PaperLetters.CanPrint(name));
        Assert.Equal(name, PaperLetters.OnPaper(name));
        var report = SampleReports.Year();
        var rows = PaperReader.Rows(HoursPdf.Write(report with { Heading = report.Heading with { Learner = name } }));
        Assert.Contains(rows, row => string.Join(' ', row).StartsWith($"Learner {name}", StringComparison.Ordinal));
    }

    [Theory]
    [InlineData("דרור הכהן", "[in Hebrew letters]")]
    [InlineData("Wren עפרוני", "Wren [in Hebrew letters]")]
    [InlineData("سُنونو", "[in Arabic letters]")]
    [InlineData("चिड़िया", "[in Devanagari letters]")]
    [InlineData("燕子", "[in Chinese letters]")]
    [InlineData("つばめ", "[in Japanese letters]")]
    [InlineData("제비", "[in Korean letters]")]
    [InlineData("Heron 🐦🐦", "Heron [sign]")]
    [InlineData("Heron (燕)", "Heron ([in Chinese letters])")]
    public void Are_no_others_and_these_are_named_instead(string name, string onPaper)
    {
        Assert.False(PaperLetters.CanPrint(name));
        Assert.Equal(onPaper, PaperLetters.OnPaper(name));
    }

    [Fact]
    public void Need_no_marks_without_a_shape() => Assert.True(PaperLetters.CanPrint("Li\u00ADnnet\u200D \uFE0F"));
}
