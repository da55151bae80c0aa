using System.Security.Cryptography;
using System.Text;
using Microsoft.Extensions.FileProviders;

namespace CoopLessons.Web.Phone;

/// <summary>The service worker and the manifest of the web app.</summary>
public sealed class PhoneWorker(IWebHostEnvironment host)
{
    /// <summary>Files of which every page is made.</summary>
    private static readonly string[] Files = ["/lib/site.css", "/lib/site.js", "/lib/atkinson-latin.woff2", "/favicon.svg", "/lib/worker.js"];

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

    /// <summary>The worker, which differs when any of the files does: the browser then takes the new one, and that one the new files.</summary>
    private static string Written(IFileProvider files)
    {
        var all = IncrementalHash.CreateHash(HashAlgorithmName.SHA256);
        foreach (var path in Files)
            all.AppendData(Bytes(files, path));
        var version = Convert.ToHexStringLower(all.GetHashAndReset())[..16];
        return $"const version = \"{version}\";\n{Encoding.UTF8.GetString(Bytes(files, "/lib/worker.js"))}";
    }

    private static byte[] Bytes(IFileProvider files, string path)
    {
        using var stream = files.GetFileInfo(path).CreateReadStream();
        using var all = new MemoryStream();
        stream.CopyTo(all);
        return all.ToArray();
    }
}
