using System.Globalization;
using CoopLessons.Core.Hours;

namespace CoopLessons.Core.Requirements.Standing;

public enum Measure
{
    /// <summary>Whole minutes, shown as hours.</summary>
    Minutes,
    Days,
    Months,
}

/// <summary>A whole number of minutes, days or months.</summary>
public readonly record struct Quantity(int Value, Measure Measure)
{
    /// <summary>Hours as <c>1,040</c> or <c>27:30</c>, others as a whole number.</summary>
    public string Figure => Measure != Measure.Minutes || Value % 60 == 0
        ? (Measure == Measure.Minutes ? Value / 60 : Value).ToString("N0", CultureInfo.InvariantCulture)
        : string.Create(CultureInfo.InvariantCulture, $"{Value / 60:N0}:{Value % 60:00}");

    public string Unit => Measure switch
    {
        Measure.Minutes => Value == 60 ? "hour" : "hours",
        Measure.Days => Value == 1 ? "day" : "days",
        _ => Value == 1 ? "month" : "months",
    };

    public override string ToString() => $"{Figure} {Unit}";

    public static Quantity OfHours(decimal hours) => new(decimal.ToInt32(decimal.Round(hours * 60, MidpointRounding.AwayFromZero)), Measure.Minutes);

    public static Quantity Of(Minutes minutes) => new(minutes.Value, Measure.Minutes);

    /// <summary>What is still missing to a target of the same measure; zero where it is reached.</summary>
    public Quantity MissingTo(Quantity target) => this with { Value = Math.Max(0, target.Value - Value) };
}
