namespace CoopLessons.Core.Schedule.Layout;

/// <summary>
/// A sequence of numbers that is the same everywhere: SplitMix64 (Steele, Lea and Flood, “Fast splittable pseudorandom
/// number generators”, 2014).
/// </summary>
internal struct SplitMix64(ulong seed)
{
    private ulong _state = seed;

    public ulong Next()
    {
        unchecked
        {
            var z = _state += 0x9E3779B97F4A7C15UL;
            z = (z ^ (z >> 30)) * 0xBF58476D1CE4E5B9UL;
            z = (z ^ (z >> 27)) * 0x94D049BB133111EBUL;
            return z ^ (z >> 31);
        }
    }

    /// <summary>0 to <paramref name="below"/> - 1.</summary>
    public int Below(int below) => (int)(Next() % (ulong)below);
}
