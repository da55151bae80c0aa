using CoopLessons.Core.Schedule;

namespace CoopLessons.Core.Tests.Schedule;

public class Hours_of_a_day
{
    private static IReadOnlyList<Stretch> Read(string? text)
    {
        Assert.True(HoursText.TryRead(text, out var stretches, out var fault), fault);
        Assert.Equal("", fault);
        return stretches;
    }

    [Theory]
    [InlineData("8:30–12:00, 13:00–15:00")]
    [InlineData("8.30-12, 13-15")]
    [InlineData(" 13:00 to 15:00 ; 08:30 — 12:00 ")]
    [InlineData("8:30 To 12:00,,13:00–15:00,")]
    public void Are_read_however_they_are_written(string text)
    {
        Assert.Equal([new Stretch(510, 720), new Stretch(780, 900)], Read(text));
        Assert.Equal("8:30–12:00, 13:00–15:00", HoursText.Write(Read(text)));
    }

    [Theory]
    [InlineData(null)]
    [InlineData("")]
    [InlineData(" , ")]
    public void Are_none_where_nothing_is_written(string? text) => Assert.Empty(Read(text));

    [Fact]
    public void May_run_from_midnight_to_midnight_and_touch() =>
        Assert.Equal([new Stretch(0, 720), new Stretch(720, 1440)], Read("0:00–12:00, 12:00–24:00"));

    [Theory]
    [InlineData("mornings", "“mornings” is no stretch of time")]
    [InlineData("8:30", "no stretch of time")]
    [InlineData("8:30–12:00–13:00", "no stretch of time")]
    [InlineData("8:65–12:00", "“8:65” is no time of day")]
    [InlineData("25–26", "“25” is no time of day")]
    [InlineData("8:30–24:01", "“24:01” is no time of day")]
    [InlineData("8:3–9", "“8:3” is no time of day")]
    [InlineData("8:30:00–9", "“8:30:00” is no time of day")]
    [InlineData("٨–٩", "no time of day")]
    [InlineData("–12", "“” is no time of day")]
    [InlineData("13:00–9:00", "13:00–9:00 ends before it begins")]
    [InlineData("9–9", "9:00–9:00 ends before it begins")]
    [InlineData("13:00–15:00, 9:00–13:30", "9:00–13:30 and 13:00–15:00 overlap")]
    [InlineData("1-2,3-4,5-6,7-8,9-10,11-12,13-14", "at most 6 stretches")]
    public void Are_refused_with_a_sentence_that_says_what_to_write(string text, string sentence)
    {
        Assert.False(HoursText.TryRead(text, out var stretches, out var fault));
        Assert.Empty(stretches);
        Assert.Contains(sentence, fault, StringComparison.Ordinal);
    }
}
