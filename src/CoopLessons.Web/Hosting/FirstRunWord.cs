using System.Security.Cryptography;
using System.Text;

namespace CoopLessons.Web.Hosting;

/// <summary>
/// A word made at each start. Somebody on another machine who opens the first-run page is asked for it, so that no
/// stranger claims a fresh server; it stands in the log that only the host can read.
/// </summary>
public sealed class FirstRunWord
{
    // No letters or digits that are easily mistaken for each other.
    private const string Signs = "abcdefghjkmnpqrstuvwxyz23456789";

    public string Word { get; } = RandomNumberGenerator.GetString(Signs, 12);

    public bool Is(string? said) => CryptographicOperations.FixedTimeEquals(
        Encoding.UTF8.GetBytes((said ?? "").Trim().ToLowerInvariant()), Encoding.UTF8.GetBytes(Word));
}
