using System.Security.Cryptography;

namespace CoopLessons.Web.Security;

/// <summary>Passwords that the program makes: shown once, typed seldom.</summary>
public static class RandomPassword
{
    // No letters or digits that are easily mistaken for each other.
    private const string Signs = "abcdefghjkmnpqrstuvwxyz23456789";

    /// <summary>Four groups of five signs: 99 bits.</summary>
    public static string Make() => string.Join('-', Enumerable.Range(0, 4).Select(_ => RandomNumberGenerator.GetString(Signs, 5)));
}
