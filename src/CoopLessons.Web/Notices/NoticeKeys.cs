using System.Buffers.Text;
using System.Security.Cryptography;
using System.Text.Json;
using CoopLessons.Data.Databases;
using CoopLessons.Web.Hosting;
using Microsoft.AspNetCore.DataProtection;

namespace CoopLessons.Web.Notices;

/// <summary>
/// The key pair by which push services know this server (RFC 8292). Made when it is first asked for, and kept sealed
/// among the data folder's keys; a browser that took notices under another pair has to ask anew.
/// </summary>
public sealed class NoticeKeys(DataFolder folder, IDataProtectionProvider protection, ServerSettings settings, TimeProvider clock) : IDisposable
{
    /// <summary>RFC 8292 § 2 allows a day.</summary>
    private static readonly TimeSpan Life = TimeSpan.FromHours(12);

    private readonly IDataProtector _seal = protection.CreateProtector("CoopLessons.NoticeKeys");
    private readonly Lock _turn = new();
    private ECDsa? _pair;

    /// <summary>The public key, as a browser asks for it: an uncompressed point in base64url.</summary>
    public string Public
    {
        get
        {
            lock (_turn)
                return Base64Url.EncodeToString(SealedMessage.Point(Pair().ExportParameters(false).Q));
        }
    }

    /// <summary>What the Authorization header says to the push service of an endpoint.</summary>
    public string AuthorizationFor(Uri endpoint)
    {
        var claims = new Dictionary<string, object>
        {
            ["aud"] = endpoint.GetLeftPart(UriPartial.Authority),
            ["exp"] = (clock.GetUtcNow() + Life).ToUnixTimeSeconds(),
        };
        if (settings.PublicIsHttps)
            claims["sub"] = settings.PublicUrl!;
        var signed = $"{Part(new Dictionary<string, object> { ["typ"] = "JWT", ["alg"] = "ES256" })}.{Part(claims)}";
        lock (_turn)
        {
            var signature = Pair().SignData(System.Text.Encoding.ASCII.GetBytes(signed), HashAlgorithmName.SHA256);
            return $"vapid t={signed}.{Base64Url.EncodeToString(signature)}, k={Public}";
        }
    }

    public void Dispose() => _pair?.Dispose();

    private static string Part(Dictionary<string, object> members) => Base64Url.EncodeToString(JsonSerializer.SerializeToUtf8Bytes(members));

    private ECDsa Pair() => _pair ??= Read() ?? Make();

    private string KeyFile => Path.Combine(folder.Keys, "notices.sealed");

    // Sealed with keys that are gone, it is as good as lost.
    private ECDsa? Read()
    {
        if (!File.Exists(KeyFile))
            return null;
        try
        {
            var pair = ECDsa.Create();
            pair.ImportPkcs8PrivateKey(_seal.Unprotect(File.ReadAllBytes(KeyFile)), out _);
            return pair;
        }
        catch (CryptographicException)
        {
            return null;
        }
    }

    private ECDsa Make()
    {
        var pair = ECDsa.Create(ECCurve.NamedCurves.nistP256);
        Directory.CreateDirectory(folder.Keys);
        // Whole or not at all.
        var beside = KeyFile + ".new";
        File.WriteAllBytes(beside, _seal.Protect(pair.ExportPkcs8PrivateKey()));
        File.Move(beside, KeyFile, overwrite: true);
        return pair;
    }
}
