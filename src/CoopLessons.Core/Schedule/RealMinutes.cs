using System.Globalization;
using CoopLessons.Core.Units;

namespace CoopLessons.Core.Schedule;

/// <summary>A session that was done: what was planned for it and what was logged for one learner.</summary>
/// <param name="Planned">Minutes, 1 or more.</param>
/// <param name="Logged">Minutes, 1 or more.</param>
public sealed record DoneSession(ActivityKind Kind, Guid LearnerId, int Planned, int Logged);

/// <summary>
/// How long a kind of work takes a learner beside what was planned for it: the median of logged over planned as an exact
/// fraction; of an even number, the mean of the two in the middle.
/// </summary>
/// <param name="Numerator">Over <paramref name="Denominator"/>, which is more than 0.</param>
/// <param name="Times">How many sessions it is made of, <see cref="RealMinutes.Fewest"/> or more.</param>
public sealed record RealRatio(ActivityKind Kind, Guid LearnerId, long Numerator, long Denominator, int Times)
{
    /// <summary>With one decimal, a half away from zero: <c>1.4</c>.</summary>
    public string Figure
    {
        get
        {
            var tenths = (20 * Numerator + Denominator) / (2 * Denominator);
            return string.Create(CultureInfo.InvariantCulture, $"{tenths / 10}.{tenths % 10}");
        }
    }

    /// <summary>What something planned so long is likely to take, to the nearest whole five minutes and at least five; a half goes up.</summary>
    /// <param name="planned">Minutes, 1 or more.</param>
    public int Likely(int planned) => Math.Max(5, (int)((2 * planned * Numerator + 5 * Denominator) / (10 * Denominator)) * 5);
}

/// <summary>What the log remembers of how long things take.</summary>
public static class RealMinutes
{
    /// <summary>Fewer sessions than this say nothing.</summary>
    public const int Fewest = 3;

    /// <summary>By kind and learner; those with too few sessions are left out. The order of the sessions does not matter.</summary>
    /// <exception cref="ArgumentException">Minutes are below 1 or above a day.</exception>
    public static IReadOnlyDictionary<(ActivityKind Kind, Guid LearnerId), RealRatio> Of(IEnumerable<DoneSession> sessions) => sessions
        .GroupBy(s => (s.Kind, s.LearnerId))
        .Where(g => g.Count() >= Fewest)
        .ToDictionary(g => g.Key, g => Median(g.Key.Kind, g.Key.LearnerId, [.. g]));

    private static RealRatio Median(ActivityKind kind, Guid learner, List<DoneSession> sessions)
    {
        // Beyond a day's minutes the products below could leave the range of a long.
        if (sessions.Any(s => s.Planned is < 1 or > 1440 || s.Logged is < 1 or > 1440))
            throw new ArgumentException("A session is planned and logged for 1 to 1,440 minutes.", nameof(sessions));
        sessions.Sort((a, b) => (a.Logged * b.Planned).CompareTo(b.Logged * a.Planned));
        var (low, high) = (sessions[(sessions.Count - 1) / 2], sessions[sessions.Count / 2]);
        // The mean of a/b and c/d is (ad + cb) / 2bd, which is a/b again where both are one.
        return new RealRatio(
            kind, learner,
            (long)low.Logged * high.Planned + (long)high.Logged * low.Planned,
            2L * low.Planned * high.Planned,
            sessions.Count);
    }
}
