using System.Globalization;

namespace CoopLessons.Core.Hours;

/// <summary>A length of time in whole minutes, zero or more. The only unit in which hours are added.</summary>
public readonly record struct Minutes : IComparable<Minutes>
{
    /// <exception cref="ArgumentOutOfRangeException">Below zero.</exception>
    public Minutes(int value)
    {
        ArgumentOutOfRangeException.ThrowIfNegative(value);
        Value = value;
    }

    /// <summary>Whole minutes, zero or more.</summary>
    public int Value { get; }

    public static Minutes Zero => default;

    /// <summary>Hours and minutes as <c>h:mm</c>, hours not limited to a day: 605 gives <c>10:05</c>.</summary>
    public string Clock => string.Create(CultureInfo.InvariantCulture, $"{Value / 60}:{Value % 60:00}");

    /// <summary>
    /// Hours to two decimals, half away from zero, made once from the total: 605 gives 10.08.
    /// Never add these; add minutes and convert the sum.
    /// </summary>
    public decimal DecimalHours => Math.Round(Value / 60m, 2, MidpointRounding.AwayFromZero);

    public static Minutes operator +(Minutes a, Minutes b) => new(a.Value + b.Value);
    public static bool operator <(Minutes a, Minutes b) => a.Value < b.Value;
    public static bool operator >(Minutes a, Minutes b) => a.Value > b.Value;
    public static bool operator <=(Minutes a, Minutes b) => a.Value <= b.Value;
    public static bool operator >=(Minutes a, Minutes b) => a.Value >= b.Value;

    public static Minutes Add(Minutes left, Minutes right) => left + right;

    public int CompareTo(Minutes other) => Value.CompareTo(other.Value);

    public override string ToString() => Clock;
}

/// <summary>Sums of minutes, made before any rounding.</summary>
public static class MinutesSums
{
    /// <exception cref="OverflowException">The sum leaves the range of a 32-bit integer.</exception>
    public static Minutes Sum(this IEnumerable<Minutes> all) => new(all.Sum(m => m.Value));
}
