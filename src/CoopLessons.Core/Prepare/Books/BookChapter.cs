using System.Globalization;

namespace CoopLessons.Core.Prepare.Books;

/// <summary>In what a book's length is told.</summary>
public enum BookMeasure { Pages, Minutes }

/// <summary>A chapter of a book, in the order in which it is read.</summary>
/// <param name="Name">As the parent writes it; empty where it has none.</param>
/// <param name="Tenths">Tenths of a page, or of a minute in a recorded book; 1 or more.</param>
public sealed record BookChapter(string Name, int Tenths);

/// <summary>A chapter with its place in the book, from 1.</summary>
public sealed record NumberedChapter(int Number, string Name, int Tenths);

/// <summary>Lengths as people read them.</summary>
public static class LengthWords
{
    /// <summary>Tenths as a number: <c>12</c>, <c>12.5</c>.</summary>
    public static string Number(int tenths) => (tenths / 10m).ToString("0.#", CultureInfo.InvariantCulture);

    /// <summary><c>12 pages</c>, <c>1 page</c>, <c>12.5 min</c>.</summary>
    public static string Of(int tenths, BookMeasure measure) => measure == BookMeasure.Minutes ? $"{Number(tenths)} min"
        : tenths == 10 ? "1 page" : $"{Number(tenths)} pages";

    /// <summary><c>chapter 7</c>, <c>chapters 7–9</c>, <c>chapters 1–3, 7</c>; empty without any.</summary>
    /// <param name="numbers">In any order.</param>
    public static string Chapters(IEnumerable<int> numbers)
    {
        var runs = new List<(int From, int To)>();
        foreach (var number in numbers.Distinct().Order())
        {
            if (runs.Count > 0 && runs[^1].To == number - 1)
                runs[^1] = (runs[^1].From, number);
            else
                runs.Add((number, number));
        }

        if (runs.Count == 0)
            return "";
        var told = string.Join(", ", runs.Select(r => r.From == r.To ? $"{r.From}" : $"{r.From}–{r.To}"));
        return runs is [var one] && one.From == one.To ? $"chapter {told}" : $"chapters {told}";
    }
}
