using CoopLessons.Core.Prepare.Supplies;
using CoopLessons.Core.Units;
using CsCheck;

namespace CoopLessons.Core.Tests.Prepare.Supplies;

/// <summary>Supplies as activities ask for them, told and invented.</summary>
internal static class Kitchen
{
    public static readonly DateOnly Monday = new(2026, 3, 9);

    public static SupplyAsk Ask(string name, decimal quantity, string unit, Per per = Per.Family, int learners = 1, DateOnly? day = null, bool eaten = false, string activity = "Bake") =>
        new(Guid.Empty, activity, day ?? Monday, new Supply(name, quantity, unit, per), learners, eaten);

    public static IReadOnlyList<NeedLine> Join(params SupplyAsk[] asks) => Join(_ => GoodTerms.Usual, asks);

    public static IReadOnlyList<NeedLine> Join(Func<string, GoodTerms> terms, params SupplyAsk[] asks) =>
        NeedLines.Join(asks.Select(a => (GoodName.Key(a.Supply.Name), a)), terms);

    /// <summary>One of these.</summary>
    public static Gen<T> OneOf<T>(params T[] these) => Gen.Int[0, these.Length - 1].Select(i => these[i]);

    /// <summary>Quantities with at most three places, as they are written.</summary>
    public static readonly Gen<decimal> Quantities = Gen.Int[1, 2_000_000].Select(n => n / 1000m);

    public static readonly Gen<SupplyAsk> Asks = Gen.Select(
        OneOf("Flour", "Rye flour", "Sugar", "Moss", "Scissors"), Quantities, OneOf([.. Measures.All.Select(m => m.Word)]), Gen.Enum<Per>(), Gen.Int[0, 5], Gen.Int[0, 4],
        (name, quantity, unit, per, learners, day) => Ask(name, quantity, unit, per, learners, Monday.AddDays(day)));
}
