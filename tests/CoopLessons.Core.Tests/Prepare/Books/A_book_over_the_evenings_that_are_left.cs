using CoopLessons.Core.Prepare.Books;
using CsCheck;

namespace CoopLessons.Core.Tests.Prepare.Books;

public class A_book_over_the_evenings_that_are_left
{
    private static readonly DateOnly Monday = new(2026, 11, 30);
    private static readonly Gen<(int[] Chapters, int Evenings)> Small = Gen.Select(Gen.Int[1, 30].Array[1, 8], Gen.Int[1, 6]);

    private static IReadOnlyList<DateOnly> Days(int from, int count) => [.. Enumerable.Range(from, count).Select(Monday.AddDays)];

    private static ReadingOutlook Of(IReadOnlyList<int> chapters, int evenings, int gone = 0, int read = 0) => ReadingOutlook.Of(
        [.. chapters.Select((t, i) => new NumberedChapter(i + 1, "", t)).Skip(read)], Days(gone, evenings - gone), Days(evenings, 60));

    /// <summary>23 chapters of a book; no outside source, so the plan is held against every other way below.</summary>
    private static readonly int[] TwentyThree = [120, 140, 90, 110, 130, 80, 150, 100, 120, 110, 90, 140, 130, 70, 160, 110, 120, 100, 90, 130, 120, 140, 110];

    [Fact]
    public void Of_which_two_were_missed_asks_for_more_and_just_so_much_as_it_must()
    {
        var first = Of(TwentyThree, 11);
        var now = Of(TwentyThree, 11, gone: 2);
        Assert.Equal((11, 9), (first.Evenings.Count, now.Evenings.Count));
        Assert.Equal(Reference(TwentyThree, 11), first.Longest);
        Assert.Equal(Reference(TwentyThree, 9), now.Longest);
        Assert.True(now.Longest > first.Longest);
        Assert.Equal(Monday.AddDays(10), now.Ends);
        Assert.Equal(23, now.Evenings.Sum(e => e.Chapters.Count));
    }

    [Fact]
    public void Tells_what_becomes_of_it_with_less_tonight()
    {
        // Four alike over Monday and Tuesday: two each; with one tonight a third evening is needed.
        Assert.Equal("Read two chapters tonight, or the book ends on Wednesday instead of Tuesday.", ReadingWords.Of(Of([10, 10, 10, 10], 2), Monday));
        // Five over three evenings: 2, 2, 1. One tonight leaves four for two evenings of two.
        Assert.Equal("Read two chapters tonight, one at the least, or the book ends on Thursday instead of Wednesday.", ReadingWords.Of(Of([10, 10, 10, 10, 10], 3), Monday));
    }

    [Fact]
    public void Can_leave_an_evening_out_where_there_are_more_than_chapters() =>
        Assert.Equal("Read one chapter tonight; without it, the book can still end by Wednesday.", ReadingWords.Of(Of([10, 10], 3), Monday));

    [Fact]
    public void Names_the_next_evening_where_it_is_not_today() =>
        Assert.StartsWith("Read two chapters on Monday, or", ReadingWords.Of(Of([10, 10, 10, 10], 2), Monday.AddDays(-1)), StringComparison.Ordinal);

    [Fact]
    public void Says_when_no_evening_is_left_and_when_it_is_read()
    {
        Assert.StartsWith("Two chapters are left, and no evening up to the last day.", ReadingWords.Of(Of([10, 10, 10], 2, gone: 2, read: 1), Monday.AddDays(2)), StringComparison.Ordinal);
        Assert.Equal("It is read to the end.", ReadingWords.Of(Of([10], 1, read: 1), Monday));
        Assert.Null(Of([10], 1, read: 1).EndsWith(1));
    }

    [Fact]
    public void Ends_with_so_many_chapters_each_evening_when_they_are_counted_off() => Gen.Select(Small, Gen.Int[1, 4]).Sample((book, each) =>
    {
        var outlook = Of(book.Chapters, book.Evenings);
        var (left, evening) = (book.Chapters.Length, -1);
        for (; left > 0; left -= each)
            evening++;
        Assert.Equal(Monday.AddDays(evening), outlook.EndsWith(each));
    });

    [Fact]
    public void Keeps_every_chapter_once_and_in_order() => Small.Sample(book =>
    {
        var outlook = Of(book.Chapters, book.Evenings);
        Assert.Equal(Enumerable.Range(1, book.Chapters.Length), outlook.Evenings.SelectMany(e => e.Chapters).Select(c => c.Number));
        Assert.Equal(book.Evenings, outlook.Evenings.Count);
    });

    [Fact]
    public void Needs_tonight_just_what_no_other_way_can_do_without() => Small.Sample(book =>
    {
        var outlook = Of(book.Chapters, book.Evenings);
        var (next, limit) = (outlook.Next!, outlook.Longest);
        // Every way to lay what is left over the other evenings, tried one by one.
        bool Fits(int tonight, int evenings)
        {
            var rest = book.Chapters.Skip(tonight).ToList();
            return rest.Count == 0 || Enumerable.Range(1, Math.Max(0, evenings)).Any(d => Parts_over_days.AllWays(rest.Count, d).Any(w => Parts_over_days.Sums(rest, w).Max() <= limit));
        }

        Assert.True(Fits(next.Least, book.Evenings - 1));
        Assert.True(next.Least <= next.Planned.Chapters.Count);
        if (next.Least == 0)
        {
            Assert.Null(next.EndsLater);
            return;
        }

        Assert.False(Fits(next.Least - 1, book.Evenings - 1));
        var evenings = Enumerable.Range(book.Evenings, 20).First(e => Fits(next.Least - 1, e));
        Assert.Equal(Monday.AddDays(evenings), next.EndsLater);
    }, iter: 200);

    /// <summary>The shortest longest evening by a way of its own: the table over chapters and evenings.</summary>
    private static int Reference(int[] chapters, int evenings)
    {
        var before = chapters.Select((_, i) => chapters.Take(i + 1).Sum()).ToArray();
        for (var e = 2; e <= evenings; e++)
            before = [.. chapters.Select((_, i) => Enumerable.Range(0, i + 1).Min(cut => Math.Max(cut == 0 ? 0 : before[cut - 1], chapters.Skip(cut).Take(i - cut + 1).Sum())))];
        return before[^1];
    }
}
