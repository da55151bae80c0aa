namespace CoopLessons.Core.Prepare.Supplies;

/// <summary>How a good is sold.</summary>
/// <param name="Size">Above zero.</param>
/// <param name="Cents">Of one pack, whole cents; null where nobody wrote it down.</param>
public sealed record Pack(decimal Size, Measure Measure, int? Cents);

/// <summary>What is to be bought.</summary>
/// <param name="Missing">What is needed and not there, in the line's measure; whole pieces and sheets.</param>
/// <param name="Quantity">In the line's measure, rounded up to what is sold.</param>
/// <param name="Packs">Whole packs; null where nobody said how it is sold, or where a pack's measure does not turn into the line's.</param>
/// <param name="Cents">What the packs cost; null where that is not known.</param>
public sealed record ToBuy(decimal Missing, decimal Quantity, int? Packs, long? Cents)
{
    public static ToBuy Nothing { get; } = new(0, 0, null, null);
    public bool IsNothing => Quantity == 0;
}

public static class Buying
{
    /// <summary>How many places an amount has that somebody types.</summary>
    public const int Places = 6;

    private const decimal LastPlace = 0.000_001m;

    /// <summary>Up to this share of a measure nothing is missing: nobody can type less, and dividing decimals leaves it.</summary>
    private const decimal Dust = LastPlace;

    private const int MostPacks = 10_000;

    /// <summary>
    /// What is needed, less what is there, rounded up to whole packs; without a pack, to whole pieces and sheets.
    /// </summary>
    /// <param name="needed">In the measure; zero or more.</param>
    /// <param name="onShelf">In the same measure; zero or more.</param>
    /// <param name="gramsPerCup">For a pack that is sold by weight where volume is needed, or the other way round.</param>
    public static ToBuy Of(decimal needed, decimal onShelf, Measure measure, Pack? pack, decimal? gramsPerCup)
    {
        ArgumentOutOfRangeException.ThrowIfNegative(needed);
        ArgumentOutOfRangeException.ThrowIfNegative(onShelf);
        var missing = needed - onShelf;
        if (missing <= Dust)
            return ToBuy.Nothing;
        if (measure.IsWhole)
            missing = Math.Ceiling(missing - Dust);
        if (pack is not null && new Amount(pack.Size, pack.Measure).In(measure, gramsPerCup) is { } size and > 0 && missing / size <= MostPacks)
        {
            var packs = Math.Max(1, (int)Math.Ceiling((missing - Dust) / size));
            return new ToBuy(missing, packs * size, packs, pack.Cents is { } cents ? (long)packs * cents : null);
        }

        return new ToBuy(missing, missing, null, null);
    }

    /// <summary>
    /// The least amount with as many places as can be typed that is no less than this one, but for the dust of divided decimals.
    /// </summary>
    /// <param name="quantity">Zero or more.</param>
    public static decimal Typeable(decimal quantity) => Math.Ceiling(Math.Round(quantity / LastPlace, Places)) * LastPlace;
}
