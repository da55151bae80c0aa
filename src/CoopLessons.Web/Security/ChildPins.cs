using System.Security.Cryptography;
using CoopLessons.Data.People;
using Microsoft.AspNetCore.DataProtection;
using Microsoft.AspNetCore.Identity;
using Microsoft.Extensions.Options;

namespace CoopLessons.Web.Security;

/// <summary>
/// PINs of children, as they lie in the database: hashed as slowly as passwords, and sealed besides, since so few digits
/// are soon tried out by whoever has a copy of the database.
/// </summary>
public sealed class ChildPins(IDataProtectionProvider protection, IOptions<PasswordHasherOptions> hashing)
{
    private readonly IDataProtector _seal = protection.CreateProtector("CoopLessons.ChildPin");
    private readonly PasswordHasher<Person> _hasher = new(hashing);
    private readonly Person _nobody = new();

    public string Keep(string pin) => _seal.Protect(_hasher.HashPassword(_nobody, pin));

    /// <summary>False also where the PIN was sealed with keys that are gone: a guardian sets a new one.</summary>
    public bool Fits(string kept, string pin)
    {
        try
        {
            return kept.Length > 0 && _hasher.VerifyHashedPassword(_nobody, _seal.Unprotect(kept), pin) != PasswordVerificationResult.Failed;
        }
        catch (CryptographicException)
        {
            return false;
        }
    }
}
