using System.Globalization;
using System.Security.Cryptography;
using System.Text;

namespace CoopLessons.Core.Hours;

/// <summary>
/// A short mark of the log that a report came from: the same log gives the same mark, and a changed entry another.
/// It is the SHA-256 digest (FIPS 180-4) of one line an entry in UTF-8, sorted by date and id and each ended by a line
/// feed, of which the first twelve hexadecimal digits are printed in groups of four. A line holds, separated by a vertical
/// bar: id (lower case, 8-4-4-4-12), revision, date (<c>2026-11-03</c>), start (<c>09:00</c>, or nothing), place, the
/// learner's minutes, and the subjects by name in ordinal order (UTF-16), each as <c>name=weight</c>, parted by
/// commas (a touch has weight 0). In a name the signs <c>% , = |</c> are written as <c>%25 %2C %3D %7C</c>.
/// </summary>
public static class LogFingerprint
{
    public static string Of(HoursLedger ledger)
    {
        var names = ledger.Subjects.ToDictionary(s => s.Id, s => Escaped(s.Name));
        var text = new StringBuilder();
        foreach (var entry in ledger.Entries.OrderBy(e => e.Date).ThenBy(e => e.Id.ToString("D"), StringComparer.Ordinal))
            text.Append(Line(entry, ledger.LearnerId, names)).Append('\n');
        var hex = Convert.ToHexStringLower(SHA256.HashData(Encoding.UTF8.GetBytes(text.ToString())));
        return $"{hex[..4]}-{hex[4..8]}-{hex[8..12]}";
    }

    // A name that holds a divider would otherwise let two logs share a line.
    private static string Escaped(string name) => name
        .Replace("%", "%25", StringComparison.Ordinal).Replace(",", "%2C", StringComparison.Ordinal)
        .Replace("=", "%3D", StringComparison.Ordinal).Replace("|", "%7C", StringComparison.Ordinal);

    private static string Line(LoggedEntry entry, Guid learnerId, Dictionary<Guid, string> names)
    {
        var minutes = entry.Learners.First(l => l.LearnerId == learnerId).Minutes.Value;
        var subjects = entry.Split.Select(s => (Name: names[s.SubjectId], s.Weight))
            .Concat(entry.Touches.Select(t => (Name: names[t], Weight: 0)))
            .OrderBy(s => s.Name, StringComparer.Ordinal).ThenBy(s => s.Weight)
            .Select(s => string.Create(CultureInfo.InvariantCulture, $"{s.Name}={s.Weight}"));
        return string.Create(CultureInfo.InvariantCulture,
            $"{entry.Id:D}|{entry.Revision}|{entry.Date:yyyy-MM-dd}|{entry.Start:HH\\:mm}|{entry.Place}|{minutes}|{string.Join(",", subjects)}");
    }
}
