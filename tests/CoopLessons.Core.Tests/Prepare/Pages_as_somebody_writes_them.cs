using CoopLessons.Core.Prepare.Printing;
using CsCheck;

namespace CoopLessons.Core.Tests.Prepare;

public class Pages_as_somebody_writes_them
{
    [Theory]
    [InlineData("", 3, new[] { 1, 2, 3 })]
    [InlineData("1-3, 5, 8-", 10, new[] { 1, 2, 3, 5, 8, 9, 10 })]
    [InlineData(" 2 ", 2, new[] { 2 })]
    [InlineData("4;1–2", 4, new[] { 4, 1, 2 })]
    [InlineData("3-", 3, new[] { 3 })]
    [InlineData("2-2", 9, new[] { 2 })]
    public void Are_those_pages_in_that_order(string text, int count, int[] pages)
    {
        Assert.True(PageRanges.TryRead(text, out var ranges, out var fault), fault);
        Assert.True(ranges.TryIn(count, out var read, out fault), fault);
        Assert.Equal(pages, read);
    }

    [Theory]
    [InlineData("0", "counted from 1")]
    [InlineData("0-2", "counted from 1")]
    [InlineData("3-1", "runs backwards")]
    [InlineData("1,,2", "stands nothing")]
    [InlineData("1,", "stands nothing")]
    [InlineData("all", "“all”")]
    [InlineData("-3", "“-3”")]
    [InlineData("1-2-3", "“1-2-3”")]
    [InlineData("1.5", "“1.5”")]
    [InlineData("999999999999", "“999999999999”")]
    [InlineData("²", "“²”")]
    public void Are_refused_with_a_sentence_where_they_cannot_be_read(string text, string words)
    {
        Assert.False(PageRanges.TryRead(text, out _, out var fault));
        Assert.Contains(words, fault, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("5", 4, "The file has 4 pages; there is no page 5.")]
    [InlineData("1-9", 4, "The file has 4 pages; there is no page 9.")]
    [InlineData("7-", 1, "The file has one page; there is no page 7.")]
    [InlineData("1-3, 2", 4, "Page 2 is named twice.")]
    public void Are_held_against_the_pages_that_there_are(string text, int count, string sentence)
    {
        Assert.True(PageRanges.TryRead(text, out var ranges, out _));
        Assert.False(ranges.TryIn(count, out _, out var fault));
        Assert.Equal(sentence, fault);
    }

    [Fact]
    public void Are_refused_where_they_are_too_long_to_be_meant() =>
        Assert.False(PageRanges.TryRead(string.Join(',', Enumerable.Range(1, 100)), out _, out _));

    [Fact]
    public void Read_the_same_when_they_are_written_back() =>
        Gen.Select(Gen.Int[1, 40], Gen.Int[-1, 5]).List[0, 8].Sample(spans =>
        {
            var text = string.Join(", ", spans.Select(s => s.Item2 < 0 ? $"{s.Item1}-" : s.Item2 == 0 ? $"{s.Item1}" : $"{s.Item1}-{s.Item1 + s.Item2}"));
            Assert.True(PageRanges.TryRead(text, out var ranges, out var fault), fault);
            Assert.Equal(text, ranges.ToString());
            Assert.True(PageRanges.TryRead(ranges.ToString(), out var again, out _));
            Assert.Equal(ranges, again);
        });

    [Fact]
    public void Give_each_page_once_and_none_that_the_file_lacks() =>
        Gen.Select(Gen.Select(Gen.Int[1, 12], Gen.Int[0, 4]).List[0, 5], Gen.Int[1, 12]).Sample((spans, count) =>
        {
            Assert.True(PageRanges.TryRead(string.Join(',', spans.Select(s => $"{s.Item1}-{s.Item1 + s.Item2}")), out var ranges, out _));
            var written = spans.SelectMany(s => Enumerable.Range(s.Item1, s.Item2 + 1)).ToList();
            var fits = written.TrueForAll(p => p <= count) && written.Distinct().Count() == written.Count;
            Assert.Equal(fits, ranges.TryIn(count, out var pages, out var fault));
            Assert.Equal(fits, fault.Length == 0);
            Assert.Equal(!fits ? [] : written.Count == 0 ? Enumerable.Range(1, count) : written, pages);
        });
}
