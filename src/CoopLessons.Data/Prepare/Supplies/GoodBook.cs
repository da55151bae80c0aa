using CoopLessons.Core.Prepare.Supplies;
using CoopLessons.Core.Units;
using CoopLessons.Data.Units;
using Microsoft.EntityFrameworkCore;

namespace CoopLessons.Data.Prepare.Supplies;

/// <summary>The family's goods and swaps: what a supply of an activity means in this house.</summary>
public sealed class GoodBook
{
    private const int LongestChain = 8;
    private readonly Dictionary<string, Good> _byKey;
    private readonly Dictionary<Guid, Good> _byId;

    private GoodBook(Guid familyId, IReadOnlyList<Good> goods, IReadOnlyList<Swap> swaps)
    {
        (FamilyId, Goods, Swaps) = (familyId, goods, swaps);
        _byKey = goods.ToDictionary(g => g.Key, StringComparer.Ordinal);
        _byId = goods.ToDictionary(g => g.Id);
    }

    public Guid FamilyId { get; }

    /// <summary>Those of which something was written down, by name.</summary>
    public IReadOnlyList<Good> Goods { get; }
    public IReadOnlyList<Swap> Swaps { get; }

    /// <summary>Places in the shop that the family named, by name.</summary>
    public IReadOnlyList<string> Places => [.. Goods.Select(g => g.Place).Where(p => p.Length > 0).Distinct(StringComparer.OrdinalIgnoreCase).Order(StringComparer.OrdinalIgnoreCase)];

    public static async Task<GoodBook> LoadAsync(AppDb db, CancellationToken ct) => new(
        db.Current.FamilyId ?? Guid.Empty,
        await db.Goods.AsNoTracking().OrderBy(g => g.Name).ThenBy(g => g.Id).ToListAsync(ct),
        await db.Swaps.AsNoTracking().OrderBy(s => s.Id).ToListAsync(ct));

    public Good? Find(string key) => _byKey.GetValueOrDefault(key);

    public Good? Find(Guid id) => _byId.GetValueOrDefault(id);

    /// <summary>The id of the good of a key, written down or not.</summary>
    public Guid IdOf(string key) => Good.IdFor(FamilyId, key);

    /// <summary>The key of the good that a name means, after what the family says is the same. A ring of names ends at its start.</summary>
    public string KeyOf(string name)
    {
        var first = GoodName.Key(name);
        var key = first;
        for (var i = 0; i < LongestChain; i++)
        {
            if (Find(key)?.SameAsId is not { } next || Find(next) is not { } other)
                return key;
            if (other.Key == first)
                return first;
            key = other.Key;
        }

        return first;
    }

    public GoodTerms TermsOf(string key) => Find(key)?.Terms ?? GoodTerms.Usual;

    public bool IsAlwaysThere(string key) => Find(key)?.AlwaysThere ?? Good.IsTapWater(key);

    public bool IsUsedUp(string key, SupplyAsk ask) => TermsOf(key).UsedUp ?? ask.IsUsedUp;

    /// <summary>Grams in a cup of the good: the family's own, else the table's.</summary>
    public decimal? GramsPerCup(string key) => TermsOf(key).GramsPerCup ?? CupWeights.Of(key)?.Grams;

    /// <summary>The swap that holds for a good in an activity: its own before that of all.</summary>
    public Swap? SwapOf(string key, Guid activityId)
    {
        var id = IdOf(key);
        return Swaps.FirstOrDefault(s => s.GoodId == id && s.ActivityId == activityId) ?? Swaps.FirstOrDefault(s => s.GoodId == id && s.ActivityId is null);
    }

    /// <summary>What an activity asks for, each with the key of its good, after swaps.</summary>
    /// <param name="later">Others have done it already, and the learners are those still to come.</param>
    public IEnumerable<(string Key, SupplyAsk Ask)> AsksOf(Activity activity, DateOnly? day, int learners, bool later = false)
    {
        foreach (var supply in activity.Details.Supplies)
        {
            var key = KeyOf(supply.Name);
            var swap = SwapOf(key, activity.Id);
            if ((swap is null ? supply : swap.On(supply)) is not { } asked)
                continue;
            var eaten = activity.Details.Ingredients.Any(i => GoodName.Touches(supply.Name, i.Name));
            yield return (swap is null ? key : KeyOf(asked.Name), new SupplyAsk(activity.Id, activity.Title, day, asked, learners, eaten) { InsteadOf = swap is null ? null : supply.Name, IsLaterSitting = later });
        }
    }

    /// <summary>The ingredients that count for a supply; what was swapped out brings the one of its own name no longer, and any other still.</summary>
    public IReadOnlyList<Ingredient> IngredientsFor(SupplyAsk ask, IReadOnlyList<Ingredient> ingredients) =>
        ask.InsteadOf is { } old ? [.. ingredients.Where(i => KeyOf(i.Name) != KeyOf(old))] : ingredients;

    /// <summary>The ingredients of an activity without those of the very goods that are swapped out of it.</summary>
    public IReadOnlyList<Ingredient> IngredientsOf(Activity activity)
    {
        var gone = activity.Details.Supplies.Select(s => KeyOf(s.Name)).Where(k => SwapOf(k, activity.Id) is not null).ToHashSet(StringComparer.Ordinal);
        return [.. activity.Details.Ingredients.Where(i => !gone.Contains(KeyOf(i.Name)))];
    }

    /// <summary>The good of an id among names that are known, to be written down for the first time, with a capital where one has it; null for an id of none of them.</summary>
    public Good? FirstWritten(Guid id, IEnumerable<string> names) =>
        names.Select(GoodName.Proper).Where(n => IdOf(GoodName.Key(n)) == id).Order(StringComparer.Ordinal).Select(n => new Good(FamilyId, n)).FirstOrDefault();
}
