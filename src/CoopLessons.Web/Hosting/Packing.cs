using System.IO.Compression;
using Microsoft.AspNetCore.ResponseCompression;

namespace CoopLessons.Web.Hosting;

public static class Packing
{
    /// <summary>
    /// Answers are packed, since a phone's signal is weak. Under TLS as well: a secret can be guessed from the length of a
    /// packed page only where somebody else can put text beside it and have it asked for again and again with the reader's
    /// cookies, which are sent to no form or picture of another site; and the forms' tokens differ in each answer.
    /// </summary>
    public static void AddPacking(this IServiceCollection services)
    {
        services.AddResponseCompression(o =>
        {
            o.EnableForHttps = true;
            o.MimeTypes = [.. ResponseCompressionDefaults.MimeTypes, "image/svg+xml", "application/manifest+json"];
        });
        services.Configure<BrotliCompressionProviderOptions>(o => o.Level = CompressionLevel.Fastest);
        services.Configure<GzipCompressionProviderOptions>(o => o.Level = CompressionLevel.Fastest);
    }
}
