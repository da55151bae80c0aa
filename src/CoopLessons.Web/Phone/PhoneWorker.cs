using System.Security.Cryptography;
using System.Text;
using System.Text.Json;
using Microsoft.Extensions.FileProviders;

namespace CoopLessons.Web.Phone;

/// <summary>The service worker and the manifest of the web app. The worker is told which files make up its shell.</summary>
public sealed class PhoneWorker(IWebHostEnvironment host)
{
    /// <summary>Files without which no page can be shown. None of them says anything of a family.</summary>
    private static readonly string[] Shell = ["/lib/site.css", "/lib/site.js", "/lib/atkinson-latin.woff2", "/favicon.svg"];

    private readonly Lazy<string> _script = new(() => Written(host.WebRootFileProvider));

    public IResult Script() => Results.Text(_script.Value, "text/javascript; charset=utf-8");

    public IResult Manifest() => Results.Json(
        new
        {
            name = "CoopLessons",
            short_name = "CoopLessons",
            id = "/today",
            start_url = "/today",
            scope = "/",
            display = "standalone",
            background_color = "#fcfdfe",
            theme_color = "#fcfdfe",
            icons = new object[]
            {
                new { src = "/favicon.svg", sizes = "any", type = "image/svg+xml", purpose = "any" },
                new { src = "/icon-192.png", sizes = "192x192", type = "image/png", purpose = "any" },
                new { src = "/icon-512.png", sizes = "512x512", type = "image/png", purpose = "any" },
                new { src = "/icon-round.png", sizes = "512x512", type = "image/png", purpose = "maskable" },
            },
            shortcuts = new object[]
            {
                new { name = "Today", url = "/today" },
                new { name = "Log something", url = "/log/new" },
                new { name = "Waiting on this phone", url = "/phone" },
            },
        },
        contentType: "application/manifest+json; charset=utf-8");

    /// <summary>The worker with the list of its files. It differs when any of them does, and the browser then takes the new one.</summary>
    private static string Written(IFileProvider files)
    {
        var all = IncrementalHash.CreateHash(HashAlgorithmName.SHA256);
        foreach (var path in Shell)
            all.AppendData(Bytes(files, path));
        var version = Convert.ToHexStringLower(all.GetHashAndReset())[..16];
        return $"const version = {JsonSerializer.Serialize(version)};\nconst files = {JsonSerializer.Serialize(Shell)};\n{Encoding.UTF8.GetString(Bytes(files, "/lib/worker.js"))}";
    }

    private static byte[] Bytes(IFileProvider files, string path)
    {
        using var stream = files.GetFileInfo(path).CreateReadStream();
        using var all = new MemoryStream();
        stream.CopyTo(all);
        return all.ToArray();
    }
}
