using System.Security.Cryptography;
using System.Text;
using CoopLessons.Data;
using CoopLessons.Data.People;
using Microsoft.AspNetCore.DataProtection;
using Microsoft.AspNetCore.Identity;
using Microsoft.AspNetCore.Identity.EntityFrameworkCore;

namespace CoopLessons.Web.Security;

/// <summary>
/// People as they lie in the database: the key of an authenticator app sealed, recovery codes as slow hashes. Whoever
/// gets a copy of the database gets neither.
/// </summary>
public sealed class PeopleStore(AppDb db, IDataProtectionProvider protection, IdentityErrorDescriber describer) : UserOnlyStore<Person, AppDb, Guid>(db, describer)
{
    private const int HashBytes = 32;
    private const int HashSigns = 2 * HashBytes;

    private readonly IDataProtector _seal = protection.CreateProtector("CoopLessons.AuthenticatorKey");

    public override Task SetAuthenticatorKeyAsync(Person user, string key, CancellationToken cancellationToken) =>
        base.SetAuthenticatorKeyAsync(user, _seal.Protect(key), cancellationToken);

    /// <summary>Null also where the key was sealed with keys that are gone: the code is refused then, recovery codes open.</summary>
    public override async Task<string?> GetAuthenticatorKeyAsync(Person user, CancellationToken cancellationToken)
    {
        if (await base.GetAuthenticatorKeyAsync(user, cancellationToken) is not { Length: > 0 } kept)
            return null;
        try
        {
            return _seal.Unprotect(kept);
        }
        catch (CryptographicException)
        {
            return null;
        }
    }

    public override Task ReplaceCodesAsync(Person user, IEnumerable<string> recoveryCodes, CancellationToken cancellationToken) =>
        // When one is redeemed the others come back as they lie in the database.
        base.ReplaceCodesAsync(user, recoveryCodes.Select(c => c.Length == HashSigns ? c : Hash(user, c)), cancellationToken);

    public override Task<bool> RedeemCodeAsync(Person user, string code, CancellationToken cancellationToken) =>
        base.RedeemCodeAsync(user, Hash(user, code), cancellationToken);

    // Codes are shorter than a key, so they are hashed as slowly as passwords (ASVS 5.0, 6.5.2).
    private static string Hash(Person user, string code)
    {
        var signs = new string([.. code.Where(char.IsAsciiLetterOrDigit).Select(char.ToUpperInvariant)]);
        return Convert.ToHexStringLower(Rfc2898DeriveBytes.Pbkdf2(Encoding.ASCII.GetBytes(signs), user.Id.ToByteArray(), SignIns.HashRounds, HashAlgorithmName.SHA512, HashBytes));
    }
}
