namespace CoopLessons.Core.Prepare.Supplies;

/// <summary>What a family says of a good.</summary>
/// <param name="GramsPerCup">Its own weight of a US cup; null where it weighed none.</param>
/// <param name="UsedUp">Whether it is gone afterwards; null where the usual holds.</param>
public sealed record GoodTerms(decimal? GramsPerCup, bool? UsedUp)
{
    public static GoodTerms Usual { get; } = new(null, null);
}

/// <summary>A part of a line: who asks, and how much that is in the line's measure.</summary>
public sealed record LinePart(SupplyAsk Ask, decimal Quantity);

/// <summary>One good, joined over everything that asks for it.</summary>
/// <param name="Key">As <see cref="GoodName.Key"/> makes it.</param>
/// <param name="Name">As it was written first, without its notes.</param>
/// <param name="Quantity">In the measure: the sum of the parts for what is used up, the most that one day needs for what is kept.</param>
/// <param name="UsedUp">Gone afterwards.</param>
/// <param name="GramsPerCup">By which weight and volume were joined, or could be; null where nobody knows it.</param>
/// <param name="Apart">The dimensions in which other lines of the same good stand, since nothing joins them; mostly empty.</param>
public sealed record NeedLine(
    string Key, string Name, Measure Measure, decimal Quantity, bool UsedUp, decimal? GramsPerCup, IReadOnlyList<LinePart> Parts, IReadOnlyList<Dimension> Apart)
{
    /// <summary>The first day on which it is needed; null where no part has a day.</summary>
    public DateOnly? FirstDay => Parts.Min(p => p.Ask.Day);

    /// <summary>A cup of it weighed once would join this line with another.</summary>
    public bool JoinsByWeighing =>
        GramsPerCup is null && (Measure.Dimension == Dimension.Mass && Apart.Contains(Dimension.Volume) || Measure.Dimension == Dimension.Volume && Apart.Contains(Dimension.Mass));
}

/// <summary>Joins what activities ask for into one line a good.</summary>
public static class NeedLines
{
    /// <summary>
    /// The lines, in the order in which their goods are first asked for; asks of which nobody takes anything are left out.
    /// The order of the asks changes neither amounts nor measures.
    /// </summary>
    /// <param name="asks">Each with the key of its good, after what the family says is the same.</param>
    /// <param name="terms">What the family says of a good, by key.</param>
    public static IReadOnlyList<NeedLine> Join(IEnumerable<(string Key, SupplyAsk Ask)> asks, Func<string, GoodTerms> terms) =>
        [.. asks.Where(a => a.Ask.Amount.Quantity > 0).GroupBy(a => a.Key, a => a.Ask, StringComparer.Ordinal).SelectMany(g => OfOne(g.Key, [.. g], terms(g.Key)))];

    private static IEnumerable<NeedLine> OfOne(string key, IReadOnlyList<SupplyAsk> asks, GoodTerms terms)
    {
        var gramsPerCup = terms.GramsPerCup ?? CupWeights.Of(key)?.Grams;
        var mixes = asks.Any(a => a.Measure.Dimension == Dimension.Mass) && gramsPerCup is not null;
        var groups = asks.GroupBy(a => mixes && a.Measure.Dimension == Dimension.Volume ? Dimension.Mass : a.Measure.Dimension).ToList();
        foreach (var group in groups)
        {
            var measure = MeasureOf([.. group], group.Key);
            var parts = group.Select(a => new LinePart(a, a.Amount.In(measure, gramsPerCup)!.Value)).ToList();
            var usedUp = terms.UsedUp ?? group.Any(a => a.IsUsedUp);
            yield return new NeedLine(
                key, GoodName.Proper(group.First().Supply.Name), measure, usedUp ? parts.Sum(p => p.Quantity) : MostOnADay(parts), usedUp, gramsPerCup, parts,
                [.. groups.Select(g => g.Key).Where(d => d != group.Key).Order()]);
        }
    }

    /// <summary>What is kept serves one day after the other. What has no day yet may be done on any, by itself.</summary>
    private static decimal MostOnADay(List<LinePart> parts) =>
        parts.Where(p => p.Ask.Day is not null).GroupBy(p => p.Ask.Day).Select(d => d.Sum(p => p.Quantity))
            .Concat(parts.Where(p => p.Ask.Day is null).GroupBy(p => (p.Ask.ActivityId, p.Ask.For)).Select(a => a.Sum(p => p.Quantity))).Max();

    /// <summary>The one measure that all use; the largest of the kitchen's or the shop's where all use those; else the plain one.</summary>
    private static Measure MeasureOf(IReadOnlyList<SupplyAsk> asks, Dimension dimension)
    {
        var used = asks.Select(a => a.Measure).Distinct().ToList();
        if (used.Any(m => m.Dimension != dimension))
            return Measures.Plain(dimension);
        return used.Count == 1 || used.All(IsCustomary) ? used.MaxBy(m => m.Size)! : Measures.Plain(dimension);
    }

    private static bool IsCustomary(Measure measure) =>
        measure == Measures.UsCup || measure == Measures.Tablespoon || measure == Measures.Teaspoon || measure == Measures.Ounce || measure == Measures.PoundAvoirdupois;
}
