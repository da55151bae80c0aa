using System.Text.Json;
using System.Text.Json.Serialization;

namespace CoopLessons.Core.Units;

/// <summary>A unit as it travels: the shape that <c>unit-bundle.schema.json</c> describes, version 1.</summary>
public sealed record UnitBundle(
    string Format,
    int Version,
    string Title,
    string Summary,
    int Weeks,
    IReadOnlyList<BundleSubject> Subjects,
    IReadOnlyList<BundleActivity> Activities)
{
    public const string FormatName = "cooplessons-unit";
    public const int CurrentVersion = 1;

    /// <summary>How bundles are read and written: camel case, words for enumerations, empty members left out.</summary>
    public static JsonSerializerOptions Json { get; } = new(JsonSerializerDefaults.Web)
    {
        Converters = { new JsonStringEnumConverter(JsonNamingPolicy.CamelCase, allowIntegerValues: false) },
        DefaultIgnoreCondition = JsonIgnoreCondition.WhenWritingNull,
        WriteIndented = true,
    };
}

public sealed record BundleSubject(string Code, string Name);

public sealed record BundleWeight(string Code, int Weight);

public sealed record BundleActivity(
    string Code,
    int Week,
    int Order,
    string Title,
    ActivityKind Kind,
    string Does,
    IReadOnlyList<BundleWeight> Subjects,
    int HandsOnMinutes,
    int WaitingMinutes,
    AdultNeed AdultNeed,
    string? WaitingFor = null,
    IReadOnlyList<string>? Touches = null,
    IReadOnlyList<LevelVariant>? Variants = null,
    IReadOnlyList<Supply>? Supplies = null,
    IReadOnlyList<Printable>? Printables = null,
    IReadOnlyList<Book>? Books = null,
    IReadOnlyList<Hazard>? Hazards = null,
    IReadOnlyList<Ingredient>? Ingredients = null,
    IReadOnlyList<string>? After = null,
    IReadOnlyList<AheadStart>? Ahead = null);

/// <summary>A rule that a bundle breaks, and where: a JSON Pointer (RFC 6901) and a sentence.</summary>
public sealed record BundleFault(string Path, string Rule);

/// <summary>The rules that the schema's language cannot say.</summary>
public static class BundleRules
{
    /// <summary>Every fault, empty for a bundle that can be taken in. The bundle has already passed the schema.</summary>
    public static IReadOnlyList<BundleFault> Faults(UnitBundle bundle)
    {
        var faults = new List<BundleFault>();
        var codes = new HashSet<string>(StringComparer.Ordinal);
        for (var i = 0; i < bundle.Subjects.Count; i++)
        {
            if (!codes.Add(bundle.Subjects[i].Code))
                faults.Add(new BundleFault($"/subjects/{i}/code", $"The subject “{bundle.Subjects[i].Code}” stands twice."));
        }

        var activities = new HashSet<string>(StringComparer.Ordinal);
        for (var i = 0; i < bundle.Activities.Count; i++)
        {
            if (!activities.Add(bundle.Activities[i].Code))
                faults.Add(new BundleFault($"/activities/{i}/code", $"The activity “{bundle.Activities[i].Code}” stands twice."));
            faults.AddRange(Faults(bundle.Activities[i], $"/activities/{i}", bundle.Weeks, codes));
        }

        faults.AddRange(Orders(bundle.Activities, activities));
        return faults;
    }

    private static IEnumerable<BundleFault> Orders(IReadOnlyList<BundleActivity> all, HashSet<string> known)
    {
        var circles = ComesAfter.Circles(all.Select(a => (a.Code, a.After ?? [])));
        for (var i = 0; i < all.Count; i++)
        {
            for (var j = 0; j < (all[i].After?.Count ?? 0); j++)
            {
                if (!known.Contains(all[i].After![j]))
                    yield return new BundleFault($"/activities/{i}/after/{j}", $"The unit has no activity “{all[i].After![j]}”.");
            }

            if (circles.Contains(all[i].Code))
                yield return new BundleFault($"/activities/{i}/after", $"“{all[i].Code}” would come after itself.");
        }
    }

    private static IEnumerable<BundleFault> Faults(BundleActivity activity, string path, int weeks, HashSet<string> subjects)
    {
        if (activity.Week > weeks)
            yield return new BundleFault($"{path}/week", $"Week {activity.Week} is after the unit's last week, {weeks}.");
        if (activity.WaitingMinutes > 0 && string.IsNullOrWhiteSpace(activity.WaitingFor))
            yield return new BundleFault($"{path}/waitingFor", "A waiting time says what is waited for.");

        var met = new HashSet<string>(StringComparer.Ordinal);
        for (var i = 0; i < activity.Subjects.Count; i++)
        {
            if (!subjects.Contains(activity.Subjects[i].Code))
                yield return new BundleFault($"{path}/subjects/{i}/code", $"The unit has no subject “{activity.Subjects[i].Code}”.");
            if (!met.Add(activity.Subjects[i].Code))
                yield return new BundleFault($"{path}/subjects/{i}/code", $"The subject “{activity.Subjects[i].Code}” stands twice.");
        }

        for (var i = 0; i < (activity.Touches?.Count ?? 0); i++)
        {
            if (!subjects.Contains(activity.Touches![i]))
                yield return new BundleFault($"{path}/touches/{i}", $"The unit has no subject “{activity.Touches[i]}”.");
            if (!met.Add(activity.Touches[i]))
                yield return new BundleFault($"{path}/touches/{i}", $"The subject “{activity.Touches[i]}” stands twice.");
        }

        var begun = new HashSet<string>(StringComparer.OrdinalIgnoreCase);
        for (var i = 0; i < (activity.Ahead?.Count ?? 0); i++)
        {
            if (!begun.Add(activity.Ahead![i].What))
                yield return new BundleFault($"{path}/ahead/{i}/what", $"“{activity.Ahead[i].What}” is begun twice.");
        }

        for (var i = 0; i < (activity.Variants?.Count ?? 0); i++)
        {
            if (activity.Variants![i].FromAge > activity.Variants[i].ToAge)
                yield return new BundleFault($"{path}/variants/{i}/toAge", "The ages of a variant run from the younger to the older.");
        }
    }
}
