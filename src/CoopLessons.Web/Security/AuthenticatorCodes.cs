using System.Buffers.Binary;
using System.Globalization;
using System.Security.Cryptography;
using CoopLessons.Data.People;
using Microsoft.AspNetCore.Identity;
using Microsoft.EntityFrameworkCore;

namespace CoopLessons.Web.Security;

/// <summary>
/// The six digits of an authenticator app: RFC 6238 with HMAC-SHA-1 and steps of 30 seconds, which is what apps compute.
/// A code opens once: the step of the last one is kept, and only later steps are taken.
/// </summary>
public sealed class AuthenticatorCodes(TimeProvider clock) : IUserTwoFactorTokenProvider<Person>
{
    public const int Digits = 6;
    public const int StepSeconds = 30;
    public const string Keeper = "CoopLessons";
    public const string LastStep = "AuthenticatorStep";

    public async Task<bool> CanGenerateTwoFactorTokenAsync(UserManager<Person> manager, Person user) =>
        !string.IsNullOrEmpty(await manager.GetAuthenticatorKeyAsync(user));

    /// <summary>The app makes the codes, never the server.</summary>
    public Task<string> GenerateAsync(string purpose, UserManager<Person> manager, Person user) => Task.FromResult("");

    public async Task<bool> ValidateAsync(string purpose, string token, UserManager<Person> manager, Person user)
    {
        if (await manager.GetAuthenticatorKeyAsync(user) is not { Length: > 0 } shared || !int.TryParse(token, NumberStyles.None, CultureInfo.InvariantCulture, out var said))
            return false;
        var key = Base32.Bytes(shared);
        var now = clock.GetUtcNow().ToUnixTimeSeconds() / StepSeconds;
        var last = long.TryParse(await manager.GetAuthenticationTokenAsync(user, Keeper, LastStep), CultureInfo.InvariantCulture, out var kept) ? kept : 0;
        // One step before and after, for clocks that disagree (RFC 6238 § 5.2 and § 6).
        for (var step = Math.Max(now - 1, last + 1); step <= now + 1; step++)
        {
            if (Code(key, step) == said)
                return await KeepAsync(manager, user, step);
        }

        return false;
    }

    /// <summary>The code of a time step, as a number of up to six digits.</summary>
    public static int Code(byte[] key, long step)
    {
        Span<byte> counter = stackalloc byte[8];
        BinaryPrimitives.WriteInt64BigEndian(counter, step);
#pragma warning disable CA5350 // The RFC's algorithm, and the only one that all apps compute; a keyed hash does not rest on collisions.
        var hash = HMACSHA1.HashData(key, counter);
#pragma warning restore CA5350
        var offset = hash[^1] & 0xF; // Dynamic truncation, RFC 4226 § 5.3.
        return (BinaryPrimitives.ReadInt32BigEndian(hash.AsSpan(offset, 4)) & int.MaxValue) % 1_000_000;
    }

    // Two requests with the same code: the person's row has a concurrency stamp, and the token's row a key; one wins.
    private static async Task<bool> KeepAsync(UserManager<Person> manager, Person user, long step)
    {
        try
        {
            return (await manager.SetAuthenticationTokenAsync(user, Keeper, LastStep, step.ToString(CultureInfo.InvariantCulture))).Succeeded;
        }
        catch (DbUpdateException)
        {
            return false;
        }
    }
}

/// <summary>The alphabet in which authenticator keys are written, RFC 4648 § 6, without padding.</summary>
public static class Base32
{
    private const string Signs = "ABCDEFGHIJKLMNOPQRSTUVWXYZ234567";

    /// <exception cref="FormatException">A sign outside the alphabet.</exception>
    public static byte[] Bytes(string text)
    {
        var bytes = new List<byte>(text.Length * 5 / 8);
        var (held, bits) = (0, 0);
        foreach (var sign in text)
        {
            var value = Signs.IndexOf(char.ToUpperInvariant(sign), StringComparison.Ordinal);
            if (value < 0)
                throw new FormatException("The key holds a sign that Base32 does not have.");
            held = ((held << 5) | value) & 0xFFF;
            bits += 5;
            if (bits < 8)
                continue;
            bits -= 8;
            bytes.Add((byte)((held >> bits) & 0xFF));
        }

        return [.. bytes];
    }
}
