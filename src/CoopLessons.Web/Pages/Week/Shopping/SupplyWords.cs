using System.Globalization;
using CoopLessons.Core.Families;
using CoopLessons.Core.Prepare.Supplies;
using CoopLessons.Core.Units;
using CoopLessons.Web.Pages.Today;
using CoopLessons.Web.Pages.Units;
using Microsoft.AspNetCore.Mvc.Rendering;

namespace CoopLessons.Web.Pages.Shopping;

/// <summary>Amounts, prices and warnings of supplies as the pages say them. Nothing here says that something is safe.</summary>
public static class SupplyWords
{
    private const decimal Thousand = 1000;

    /// <summary>The measures of a form, by the words of the bundle.</summary>
    public static IReadOnlyList<SelectListItem> Choices { get; } = [.. Measures.All.Select(m => new SelectListItem(m.Word, m.Word))];

    /// <summary>“550 g”, “1.25 kg”, “2.5 cups”, “3 sheets”; pieces need no word. Rounded up to what a kitchen reads.</summary>
    public static string Amount(decimal quantity, Measure measure) => measure.Word switch
    {
        "g" when quantity >= Thousand => $"{Number(quantity / Thousand, 2)} kg",
        "ml" when quantity >= Thousand => $"{Number(quantity / Thousand, 2)} l",
        "cm" when quantity >= 100 => $"{Number(quantity / 100, 2)} m",
        "g" or "ml" or "cm" => $"{Number(quantity, quantity < 10 ? 1 : 0)} {measure.Word}",
        "piece" => Number(quantity, 2),
        "cup" or "sheet" => $"{Number(quantity, 2)} {measure.Word}{(quantity == 1 ? "" : "s")}",
        _ => $"{Number(quantity, 2)} {measure.Word}",
    };

    public static string Amount(Amount amount) => Amount(amount.Quantity, amount.Measure);

    /// <summary>“2 packs of 500 g”; what is sold by the piece needs no pack.</summary>
    public static string Packs(int packs, Pack pack) =>
        pack is { Size: 1, Measure.IsWhole: true } ? packs == 1 ? "1 to buy" : $"{packs} to buy"
        : packs == 1 ? $"1 pack of {Amount(pack.Size, pack.Measure)}" : $"{packs} packs of {Amount(pack.Size, pack.Measure)}";

    /// <summary>A number for a field: every digit, and no idle zeros.</summary>
    public static string Field(decimal quantity) => Math.Round(quantity, 6).ToString("0.######", CultureInfo.InvariantCulture);

    /// <summary>“$4.19”.</summary>
    public static string Dollars(long cents) => (cents / 100m).ToString("$#,0.00", CultureInfo.InvariantCulture);

    /// <summary>A price for a field: “4.19”.</summary>
    public static string PriceField(long cents) => (cents / 100m).ToString("0.00", CultureInfo.InvariantCulture);

    /// <summary>“Wheat for Dove”, by child, each with its activities left to the lines that are opened.</summary>
    public static string Brief(IEnumerable<SupplyWarning> warnings)
    {
        var words = string.Join("; ", warnings.GroupBy(w => (w.Met.Learner.Id, w.Met.Learner.Name))
            .Select(g => $"{UnitWords.Joined(g.SelectMany(w => w.Met.Met).Distinct().Order().Select(UnitWords.Of))} for {g.Key.Name}"));
        return words.Length == 0 ? "" : char.ToUpperInvariant(words[0]) + words[1..];
    }

    /// <summary>“Flour holds wheat, and Dove is allergic to it: in “Bake”.”, with the word by which it was found.</summary>
    public static string Full(SupplyWarning warning)
    {
        var it = warning.Met.Met.Count == 1 ? "it" : "them";
        var found = warning.Because.Where(f => !string.Equals(f.Word, UnitWords.Of(f.Allergen), StringComparison.OrdinalIgnoreCase)).Select(f => $"“{f.Word}” is {UnitWords.Of(f.Allergen)}").ToList();
        return $"{warning.Met.Ingredient} holds {UnitWords.Joined(warning.Met.Met.Select(UnitWords.Of))}, and {warning.Met.Learner.Name} is allergic to {it}"
            + (warning.For.Length > 0 ? $": in “{warning.For}”" : "") + (found.Count > 0 ? $" ({string.Join(", ", found)})" : "") + ".";
    }

    /// <summary>“Rye flour: rye holds gluten, which by itself is none of the nine. Ask whoever treats Dove.”</summary>
    public static string Aside(SupplyAside aside) => $"{aside.Good}: {aside.Word.Words} {aside.Word.Why}. Ask whoever treats {aside.Learner.Name} about it.";

    /// <summary>Why two lines of one good stay apart.</summary>
    public static string Apart(NeedLine line) => line.JoinsByWeighing
        ? "It is needed by weight and by the cup: weigh a cup of it once to join the two lines."
        : $"It is needed in {DayWords.Names(line.Apart.Prepend(line.Measure.Dimension).Order().Select(Of))}, which nothing turns into each other.";

    /// <summary>“3 × 2, one for each learner”: how a part comes to its amount.</summary>
    public static string HowMuch(SupplyAsk ask) => ask.Times == 1
        ? Amount(ask.Amount) : $"{Amount(ask.Supply.Quantity, ask.Measure)} × {ask.Times}, {UnitWords.Of(ask.Supply.Per)}";

    private static string Of(Dimension dimension) => dimension switch
    {
        Dimension.Count => "pieces",
        Dimension.Sheets => "sheets",
        Dimension.Mass => "weight",
        Dimension.Volume => "volume",
        _ => "length",
    };

    private static string Number(decimal value, int places)
    {
        var step = places switch { 0 => 1m, 1 => 10m, _ => 100m };
        // The dust of divided decimals is no reason to ask for more.
        return (Math.Ceiling(Math.Round(value * step, 6)) / step).ToString("#,0.##", CultureInfo.InvariantCulture);
    }
}
