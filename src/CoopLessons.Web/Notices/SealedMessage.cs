using System.Buffers.Binary;
using System.Security.Cryptography;

namespace CoopLessons.Web.Notices;

/// <summary>A message that only the browser it is for can open: RFC 8291 over the content coding of RFC 8188, in one record.</summary>
public static class SealedMessage
{
    /// <summary>Octets of text that fit beside padding and tag (RFC 8291 § 4).</summary>
    public const int LongestText = RecordSize - TagBytes - 1;

    public const int KeyBytes = 65;
    private const int RecordSize = 4096;
    private const int TagBytes = 16;
    private const int SaltBytes = 16;
    private const byte LastRecord = 2;

    /// <param name="receiver">The browser's public key: an uncompressed point of P-256, 65 octets.</param>
    /// <param name="secret">The browser's authentication secret, 16 octets.</param>
    /// <exception cref="CryptographicException">The key is no point of the curve.</exception>
    public static byte[] Seal(ReadOnlySpan<byte> text, byte[] receiver, byte[] secret)
    {
        using var sender = ECDiffieHellman.Create(ECCurve.NamedCurves.nistP256);
        return Seal(text, receiver, secret, sender, RandomNumberGenerator.GetBytes(SaltBytes));
    }

    /// <summary>The same with a key pair and a salt of the caller's: each pair and each salt is used for one message.</summary>
    public static byte[] Seal(ReadOnlySpan<byte> text, byte[] receiver, byte[] secret, ECDiffieHellman sender, byte[] salt)
    {
        if (text.Length > LongestText)
            throw new ArgumentException($"A message has at most {LongestText} octets.", nameof(text));
        var own = Point(sender.ExportParameters(false).Q);
        using var other = ECDiffieHellman.Create(new ECParameters { Curve = ECCurve.NamedCurves.nistP256, Q = Point(receiver) });
        var shared = sender.DeriveRawSecretAgreement(other.PublicKey);
        var material = HKDF.DeriveKey(HashAlgorithmName.SHA256, shared, 32, secret, [.. "WebPush: info\0"u8, .. receiver, .. own]);
        var key = HKDF.DeriveKey(HashAlgorithmName.SHA256, material, 16, salt, [.. "Content-Encoding: aes128gcm\0"u8]);
        var nonce = HKDF.DeriveKey(HashAlgorithmName.SHA256, material, 12, salt, [.. "Content-Encoding: nonce\0"u8]);

        var header = SaltBytes + sizeof(uint) + 1 + own.Length;
        var message = new byte[header + text.Length + 1 + TagBytes];
        salt.CopyTo(message, 0);
        BinaryPrimitives.WriteUInt32BigEndian(message.AsSpan(SaltBytes), RecordSize);
        message[SaltBytes + sizeof(uint)] = (byte)own.Length;
        own.CopyTo(message, SaltBytes + sizeof(uint) + 1);
        using var aes = new AesGcm(key, TagBytes);
        aes.Encrypt(nonce, [.. text, LastRecord], message.AsSpan(header, text.Length + 1), message.AsSpan(header + text.Length + 1));
        return message;
    }

    /// <summary>Whether the octets are a point of the curve, as a browser's key is.</summary>
    public static bool IsKey(byte[] key)
    {
        if (key is not [4, ..] || key.Length != KeyBytes)
            return false;
        try
        {
            using var read = ECDiffieHellman.Create(new ECParameters { Curve = ECCurve.NamedCurves.nistP256, Q = Point(key) });
            return true;
        }
        catch (CryptographicException)
        {
            return false;
        }
    }

    internal static byte[] Point(ECPoint point) => [4, .. point.X!, .. point.Y!];

    private static ECPoint Point(byte[] key) => new() { X = key[1..33], Y = key[33..] };
}
