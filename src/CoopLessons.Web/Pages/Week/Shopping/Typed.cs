using System.Globalization;
using CoopLessons.Core.Prepare.Supplies;
using CoopLessons.Data.Prepare.Supplies;
using Microsoft.AspNetCore.Mvc.ModelBinding;

namespace CoopLessons.Web.Pages.Shopping;

/// <summary>Amounts and prices as they are typed. A comma is refused: it would be read as parting thousands or as a point, and one of the two is wrong.</summary>
public static class Typed
{
    private const decimal Most = 100_000;

    /// <summary>A quantity above zero, or from zero where that makes sense; null with a message beside the field where it is none.</summary>
    public static decimal? Quantity(ModelStateDictionary faults, string field, string? text, bool zero = false)
    {
        if (text is null)
            return Fault(faults, field, "Say how much.");
        if (!decimal.TryParse(text, NumberStyles.AllowDecimalPoint, CultureInfo.InvariantCulture, out var quantity) || quantity < 0 || quantity == 0 && !zero || quantity > Most || quantity.Scale > 6)
            return Fault(faults, field, $"Write a number {(zero ? "from 0" : "above 0")} and up to 100,000, without a comma, such as 2 or 0.5.");
        return quantity;
    }

    /// <summary>A measure of the bundle; null with a message beside the field where it is none.</summary>
    public static Measure? Measure(ModelStateDictionary faults, string field, string? word)
    {
        if (Measures.Find(word) is { } measure)
            return measure;
        faults.AddModelError(field, "Choose a measure.");
        return null;
    }

    /// <summary>A price in whole cents; nothing typed is null without a message.</summary>
    public static int? Cents(ModelStateDictionary faults, string field, string? text)
    {
        if (text is null)
            return null;
        var plain = text.StartsWith('$') ? text[1..].Trim() : text;
        if (decimal.TryParse(plain, NumberStyles.AllowDecimalPoint, CultureInfo.InvariantCulture, out var dollars) && dollars.Scale <= 2 && dollars <= Purchase.MostCents / 100m)
            return (int)(dollars * 100);
        faults.AddModelError(field, "Write a price in dollars without a comma, such as 4.19, at most 100000.");
        return null;
    }

    private static decimal? Fault(ModelStateDictionary faults, string field, string message)
    {
        faults.AddModelError(field, message);
        return null;
    }
}
