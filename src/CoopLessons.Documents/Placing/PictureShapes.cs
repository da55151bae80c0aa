using SkiaSharp;

namespace CoopLessons.Documents.Placing;

/// <summary>How wide the pictures of some sources are for their height, read from their heads alone.</summary>
internal sealed class PictureShapes(IReadOnlyDictionary<string, PageSource> sources)
{
    private readonly Dictionary<string, double?> _known = new(StringComparer.Ordinal);

    /// <returns>Width over height; null for a PDF, and for a file that cannot be read, which is found out where it is placed.</returns>
    public double? Of(string hash)
    {
        if (!_known.TryGetValue(hash, out var shape))
            _known[hash] = shape = Read(sources.GetValueOrDefault(hash));
        return shape;
    }

    private static double? Read(PageSource? source)
    {
        if (source is null or { Kind: PageKind.Pdf })
            return null;
        using var codec = SKCodec.Create(source.Path);
        return codec is { Info: { Width: > 0, Height: > 0 } info } ? (double)info.Width / info.Height : null;
    }
}
