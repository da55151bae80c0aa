using CoopLessons.Core.Schedule;
using CoopLessons.Core.Units;
using CoopLessons.Data;
using CoopLessons.Data.Families;
using CoopLessons.Data.Planning;
using CoopLessons.Data.Units;

namespace CoopLessons.Web.Pages.Units;

/// <summary>What the log remembers of how long a kind of work takes a learner, where that is another length than the activity has.</summary>
/// <param name="Likely">Minutes to be taken instead.</param>
public sealed record MinutesOffer(string Learner, RealRatio Ratio, int Written, int Likely)
{
    /// <summary><c>Making takes Wren about 1.4 times as planned (5 times done): 35 min instead of 25.</c></summary>
    public string Words =>
        $"{Subject(Ratio.Kind)} takes {Learner} about {Ratio.Figure} times as planned ({Ratio.Times} times done): {UnitWords.Length(Likely)} instead of {(Written < 60 && Likely < 60 ? $"{Written}" : UnitWords.Length(Written))}.";

    private static string Subject(ActivityKind kind) => kind switch
    {
        ActivityKind.Experiment => "An experiment",
        ActivityKind.Outing => "An outing",
        ActivityKind.Game => "A game",
        _ => UnitWords.Of(kind) is var words ? char.ToUpperInvariant(words[0]) + words[1..] : "",
    };
}

/// <summary>The offers for one activity.</summary>
/// <param name="Taken">Whether the minutes that hold were taken from here; <see cref="Written"/> are those from before.</param>
/// <param name="Action">Where an offer is taken.</param>
public sealed record MinutesOffers(IReadOnlyList<MinutesOffer> Offers, bool Taken, int Written, int Now, int Version, string Action)
{
    public static async Task<MinutesOffers> LoadAsync(AppDb db, Activity activity, IReadOnlyList<Learner> learners, string action, CancellationToken ct)
    {
        var ratios = await db.RealRatiosAsync(activity.Kind, ct);
        var offers = learners.Where(l => !l.SetAside && ratios.ContainsKey(l.Id))
            .Select(l => new MinutesOffer(l.Name, ratios[l.Id], activity.WrittenMinutes, Math.Min(ratios[l.Id].Likely(activity.WrittenMinutes), Activity.MostHandsOn)));
        return new MinutesOffers(
            [.. offers.Where(o => o.Likely != activity.HandsOnMinutes)], activity.WrittenMinutes != activity.HandsOnMinutes,
            activity.WrittenMinutes, activity.HandsOnMinutes, activity.Version, action);
    }

    /// <summary>Whether these minutes are offered here, or are the ones from before.</summary>
    public bool Holds(int minutes) => Offers.Any(o => o.Likely == minutes) || Taken && minutes == Written;
}
