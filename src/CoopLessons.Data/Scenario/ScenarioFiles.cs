using CoopLessons.Core.Units;
using CoopLessons.Data.Units;

namespace CoopLessons.Data.Scenario;

/// <summary>The files of the invented co-op that come with the program.</summary>
public static class ScenarioFiles
{
    /// <summary>The units that come with the program, by file name without ending.</summary>
    public static IReadOnlyDictionary<string, UnitBundle> Units { get; } = typeof(ScenarioFiles).Assembly.GetManifestResourceNames()
        .Where(n => n.StartsWith("scenario/units/", StringComparison.Ordinal)).Order(StringComparer.Ordinal)
        .ToDictionary(n => Path.GetFileNameWithoutExtension(n), n => BundleFile.Read(Bytes(n)).Bundle ?? throw new InvalidDataException($"{n} breaks the bundle's rules."));

    public static byte[] Bytes(string name)
    {
        using var stream = typeof(ScenarioFiles).Assembly.GetManifestResourceStream(name) ?? throw new FileNotFoundException(name);
        using var memory = new MemoryStream();
        stream.CopyTo(memory);
        return memory.ToArray();
    }
}
