using System.Buffers.Text;
using System.Numerics;
using System.Security.Cryptography;
using System.Text;

namespace CoopLessons.Web.Tests.Notices;

/// <summary>
/// A browser's side of RFC 8291, written from the RFC's own formulas with nothing but a hash: extract and expand are spelt
/// out as HMACs (§ 3.4, and RFC 8188 § 2), so that it shares no step with what seals.
/// </summary>
internal sealed class OpenedMessage(ECDiffieHellman receiver, byte[] secret)
{
    public byte[] Key => [4, .. receiver.ExportParameters(false).Q.X!, .. receiver.ExportParameters(false).Q.Y!];
    public byte[] Secret => secret;

    public static OpenedMessage New() => new(ECDiffieHellman.Create(ECCurve.NamedCurves.nistP256), RandomNumberGenerator.GetBytes(16));

    public static OpenedMessage Of(string publicKey, string privateKey, string secret) => new(Pair(publicKey, privateKey), Base64Url.DecodeFromChars(secret));

    public static ECDiffieHellman Pair(string publicKey, string privateKey)
    {
        var point = Base64Url.DecodeFromChars(publicKey);
        return ECDiffieHellman.Create(new ECParameters
        {
            Curve = ECCurve.NamedCurves.nistP256,
            Q = new ECPoint { X = point[1..33], Y = point[33..] },
            D = Base64Url.DecodeFromChars(privateKey),
        });
    }

    public string Open(byte[] message)
    {
        var salt = message[..16];
        var size = new BigInteger(message.AsSpan(16, 4), isUnsigned: true, isBigEndian: true);
        var keyLength = message[20];
        var sender = message[21..(21 + keyLength)];
        var record = message[(21 + keyLength)..];
        Assert.Equal(65, keyLength);
        Assert.True(record.Length <= size, "More than one record");

        using var other = ECDiffieHellman.Create(new ECParameters { Curve = ECCurve.NamedCurves.nistP256, Q = new ECPoint { X = sender[1..33], Y = sender[33..] } });
        var shared = receiver.DeriveRawSecretAgreement(other.PublicKey);
        byte[] info = [.. Encoding.ASCII.GetBytes("WebPush: info"), 0, .. Key, .. sender];
        var material = Hmac(Hmac(secret, shared), [.. info, 1]);
        var pseudorandom = Hmac(salt, material);
        var key = Hmac(pseudorandom, [.. Encoding.ASCII.GetBytes("Content-Encoding: aes128gcm"), 0, 1])[..16];
        var nonce = Hmac(pseudorandom, [.. Encoding.ASCII.GetBytes("Content-Encoding: nonce"), 0, 1])[..12];
        var plain = new byte[record.Length - 16];
        using var aes = new AesGcm(key, 16);
        aes.Decrypt(nonce, record.AsSpan(0, plain.Length), record.AsSpan(plain.Length), plain);
        // The last octet that is not zero parts text from padding, and is 2 in the last record.
        var end = Array.FindLastIndex(plain, o => o != 0);
        Assert.Equal(2, plain[end]);
        return Encoding.UTF8.GetString(plain, 0, end);
    }

    private static byte[] Hmac(byte[] key, byte[] text) => HMACSHA256.HashData(key, text);
}
