namespace CoopLessons.Core.Sealing;

/// <summary>A record as it is kept: its text beside the fingerprint that was given out for it.</summary>
/// <param name="Fingerprint">64 digits.</param>
public sealed record KeptRecord(string Text, string Fingerprint);

/// <summary>
/// The record of a sealing and those of its amendments. Each amendment's record names the fingerprint that stood before it,
/// so that none can be changed, taken out or put between without every later one saying so.
/// </summary>
public static class SealChain
{
    /// <param name="records">The sealing's own first, then the amendments' by number.</param>
    /// <returns>Sentences; empty where everything is as it was given out.</returns>
    public static IReadOnlyList<string> Faults(IReadOnlyList<KeptRecord> records)
    {
        var faults = new List<string>();
        var before = "";
        for (var i = 0; i < records.Count; i++)
        {
            var name = i == 0 ? "The sealed record" : $"The record of amendment {i}";
            var computed = Fingerprint.Of(records[i].Text).Hex;
            if (computed != records[i].Fingerprint)
                faults.Add($"{name} was changed after it was kept: its fingerprint is {Short(computed)} now, and {Short(records[i].Fingerprint)} was given out.");
            if (YearRecord.Read(records[i].Text) is not { } record)
                faults.Add($"{name} cannot be read.");
            else if ((record.Amendment?.Number ?? 0) != i)
                faults.Add($"{name} says that it is {(record.Amendment is { } other ? $"amendment {other.Number}" : "the sealing's own")}: one is missing or was put between.");
            else if (record.Amendment is { } amendment && amendment.Before != before)
                faults.Add($"{name} follows another fingerprint than the one before it.");
            before = records[i].Fingerprint;
        }

        return faults;
    }

    private static string Short(string hex) => hex.Length < Sealing.Fingerprint.ShortDigits ? hex : $"{hex[..4]}-{hex[4..8]}-{hex[8..12]}";
}
