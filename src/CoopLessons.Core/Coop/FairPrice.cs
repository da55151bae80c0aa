namespace CoopLessons.Core.Coop;

/// <summary>What a distance from a fair share costs.</summary>
public static class FairPrice
{
    /// <summary>
    /// The first <paramref name="step"/> of a distance counts once, the second twice, and so on: the sum over k from 0 of
    /// what the distance is above k steps.
    /// </summary>
    /// <param name="distance">Either way.</param>
    /// <param name="step">Above 0, in the unit of the distance.</param>
    public static long Of(long distance, long step)
    {
        var far = Math.Abs(distance);
        var steps = far / step;
        return checked((steps + 1) * far - step * (steps * (steps + 1) / 2));
    }
}
