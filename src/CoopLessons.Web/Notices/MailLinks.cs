using System.Buffers.Binary;
using System.Buffers.Text;
using System.Security.Cryptography;
using System.Text;
using CoopLessons.Web.Hosting;
using Microsoft.AspNetCore.DataProtection;

namespace CoopLessons.Web.Notices;

/// <summary>
/// The links in a mail that act without a sign-in: to prove an address, and to end mail. What they mean is sealed in them
/// with the data folder's keys, so that nothing of them is kept.
/// </summary>
public sealed class MailLinks(IDataProtectionProvider protection, ServerSettings settings)
{
    /// <summary>How long a link proves an address.</summary>
    public static readonly TimeSpan ProofLife = TimeSpan.FromDays(7);

    private const int LongestToken = 600;
    private const int IdBytes = 16;

    private readonly IDataProtector _proof = protection.CreateProtector("CoopLessons.MailProof");
    private readonly IDataProtector _end = protection.CreateProtector("CoopLessons.MailEnd");

    /// <summary>A path of this server as it stands in a mail.</summary>
    public string To(string path) => settings.PublicUrl!.TrimEnd('/') + path;

    public string Proof(Guid personId, string address, DateTime now)
    {
        var told = new byte[IdBytes + sizeof(long) + SHA256.HashSizeInBytes];
        personId.TryWriteBytes(told);
        BinaryPrimitives.WriteInt64BigEndian(told.AsSpan(IdBytes), (now + ProofLife).Ticks);
        Of(address).CopyTo(told, IdBytes + sizeof(long));
        return To($"/mail/yes/{Base64Url.EncodeToString(_proof.Protect(told))}");
    }

    public string End(Guid personId) => To($"/mail/end/{Base64Url.EncodeToString(_end.Protect(personId.ToByteArray()))}");

    /// <returns>Whose address, and its hash (<see cref="Of"/>); null for a link that is none, or whose days are over.</returns>
    public (Guid PersonId, byte[] Address)? ReadProof(string token, DateTime now) =>
        Read(_proof, token) is { Length: IdBytes + sizeof(long) + SHA256.HashSizeInBytes } told && now.Ticks < BinaryPrimitives.ReadInt64BigEndian(told.AsSpan(IdBytes))
            ? (new Guid(told.AsSpan(0, IdBytes)), told[(IdBytes + sizeof(long))..])
            : null;

    public Guid? ReadEnd(string token) => Read(_end, token) is { Length: IdBytes } told ? new Guid(told) : null;

    public static byte[] Of(string address) => SHA256.HashData(Encoding.UTF8.GetBytes(address.ToUpperInvariant()));

    private static byte[]? Read(IDataProtector seal, string token)
    {
        if (token.Length > LongestToken || !Base64Url.IsValid(token))
            return null;
        try
        {
            return seal.Unprotect(Base64Url.DecodeFromChars(token));
        }
        catch (CryptographicException)
        {
            return null;
        }
    }
}
