using System.Globalization;
using CoopLessons.Core.Hours;

namespace CoopLessons.Core.Credits;

/// <summary>Credits as whole hundredths, zero or more. The only unit in which credits are added.</summary>
public readonly record struct CreditCount : IComparable<CreditCount>
{
    /// <summary>
    /// Minutes of study that make one credit: 120 hours, the Carnegie unit. Source: Ohio Rev. Code § 3313.603(A)(1) as
    /// enacted by Sub. S.B. 55 of the 122nd General Assembly ("a minimum of one hundred twenty hours of course
    /// instruction"); the same figure in data element 1141 of ASC X12, code G.
    /// </summary>
    public static readonly Minutes CarnegieUnit = new(120 * 60);

    /// <summary>College credits, in hundredths, that make one credit. Common practice, no source: a family may set another figure.</summary>
    public const int UsualCollegeCredits = 300;

    /// <summary>The most that one course may bear.</summary>
    public const int Most = 1000;

    /// <exception cref="ArgumentOutOfRangeException">Below zero.</exception>
    public CreditCount(int hundredths)
    {
        ArgumentOutOfRangeException.ThrowIfNegative(hundredths);
        Hundredths = hundredths;
    }

    public int Hundredths { get; }

    public static CreditCount Zero => default;

    /// <summary>With two decimals: 75 gives <c>0.75</c>.</summary>
    public string Text => string.Create(CultureInfo.InvariantCulture, $"{Hundredths / 100}.{Hundredths % 100:00}");

    /// <summary>Credits for minutes of study. A hundredth that is not full does not count, so that nothing is claimed that was not studied.</summary>
    /// <param name="perCredit">Minutes that make one credit, at least 1.</param>
    /// <exception cref="ArgumentOutOfRangeException">No minutes for a credit.</exception>
    public static CreditCount ByHours(Minutes studied, Minutes perCredit)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(perCredit.Value, 1, nameof(perCredit));
        return new CreditCount((int)(studied.Value * 100L / perCredit.Value));
    }

    /// <summary>Credits for college credits, both in hundredths; a hundredth that is not full does not count.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Below zero, or no college credits for a credit.</exception>
    public static CreditCount ByCollege(int college, int perCredit)
    {
        ArgumentOutOfRangeException.ThrowIfNegative(college);
        ArgumentOutOfRangeException.ThrowIfLessThan(perCredit, 1);
        return new CreditCount((int)(college * 100L / perCredit));
    }

    /// <summary>Reads what a parent types: digits with at most two after a point or a comma, such as <c>1</c>, <c>.5</c>, <c>0,25</c>.</summary>
    public static bool TryRead(string text, out CreditCount count)
    {
        count = default;
        var typed = text.Trim().Replace(',', '.');
        if (typed is "" or "." || !decimal.TryParse(typed, NumberStyles.AllowDecimalPoint, CultureInfo.InvariantCulture, out var number) || number > 1_000_000 || number * 100 % 1 != 0)
            return false;
        count = new CreditCount((int)(number * 100));
        return true;
    }

    public static CreditCount operator +(CreditCount a, CreditCount b) => new(a.Hundredths + b.Hundredths);
    public static bool operator <(CreditCount a, CreditCount b) => a.Hundredths < b.Hundredths;
    public static bool operator >(CreditCount a, CreditCount b) => a.Hundredths > b.Hundredths;
    public static bool operator <=(CreditCount a, CreditCount b) => a.Hundredths <= b.Hundredths;
    public static bool operator >=(CreditCount a, CreditCount b) => a.Hundredths >= b.Hundredths;

    public static CreditCount Add(CreditCount left, CreditCount right) => left + right;

    public int CompareTo(CreditCount other) => Hundredths.CompareTo(other.Hundredths);

    public override string ToString() => Text;
}

public static class CreditSums
{
    public static CreditCount Sum(this IEnumerable<CreditCount> all) => new(all.Sum(c => c.Hundredths));
}
