using System.Buffers.Binary;

namespace CoopLessons.Data.Scenario;

/// <summary>Random choices that come out the same for the same seed.</summary>
internal sealed class Chance
{
    private readonly Random _random;

    /// <param name="parts">What the choices are for, such as the family's place and a day's number; each list begins a stream of its own.</param>
    public Chance(int seed, params ReadOnlySpan<int> parts)
    {
        var mixed = unchecked((uint)seed * 2654435761u);
        foreach (var part in parts)
            mixed = unchecked((mixed ^ (uint)part) * 16777619u + 2166136261u);
        mixed ^= mixed >> 15;
        _random = new Random((int)(mixed & int.MaxValue));
    }

    /// <summary>True in <paramref name="percent"/> of a hundred cases.</summary>
    public bool In(double percent) => _random.NextDouble() * 100 < percent;

    /// <summary>From the lower to the upper number, both included.</summary>
    public int Between(int from, int to) => _random.Next(from, to + 1);

    public T Of<T>(IReadOnlyList<T> all) => all[_random.Next(all.Count)];

    public List<T> Shuffled<T>(IEnumerable<T> all)
    {
        var list = all.ToArray();
        _random.Shuffle(list);
        return [.. list];
    }

    /// <summary>An id of the shape of RFC 9562's version 7: the instant in milliseconds, then random bits.</summary>
    public Guid Id(DateTime utc)
    {
        Span<byte> bytes = stackalloc byte[16];
        _random.NextBytes(bytes);
        Span<byte> time = stackalloc byte[8];
        BinaryPrimitives.WriteInt64BigEndian(time, new DateTimeOffset(utc).ToUnixTimeMilliseconds());
        time[2..].CopyTo(bytes);
        bytes[6] = (byte)(bytes[6] & 0x0F | 0x70);
        bytes[8] = (byte)(bytes[8] & 0x3F | 0x80);
        return new Guid(bytes, bigEndian: true);
    }
}
