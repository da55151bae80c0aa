using CoopLessons.Documents.Pdf;
using PdfSharp.Pdf;

namespace CoopLessons.Documents.Placing;

/// <summary>A source's page inside the document that takes it.</summary>
/// <param name="Content">A form or an image, as an object of the document.</param>
/// <param name="Left">Of its box, in units of its own, as are the others.</param>
/// <param name="Turn">How far it is shown turned clockwise: 0, 90, 180 or 270.</param>
/// <param name="Largest">The largest scale at which it is drawn.</param>
internal sealed record TakenPage(PdfDictionary Content, double Left, double Bottom, double Width, double Height, int Turn, double Largest, bool IsImage = false);

/// <summary>One source, opened to take pages from it. Closing it lays its streams aside.</summary>
internal abstract class TakenPages : IDisposable
{
    /// <exception cref="InvalidDataException">The file cannot be read, or is not there.</exception>
    public static TakenPages From(PdfDocument document, PageSource source, CarriedStreams carried) => Read<TakenPages>(() => source.Kind == PageKind.Pdf
        ? new PagesOfPdf(document, source.Path, carried)
        : new PageOfImage(document, source, carried));

    /// <summary>Brings a page into the document, each page once.</summary>
    /// <param name="page">From 1.</param>
    /// <exception cref="InvalidDataException">The file cannot be read, or has no such page.</exception>
    public TakenPage Take(int page) => Read(() => TakeHere(page));

    protected abstract TakenPage TakeHere(int page);

    public void Dispose()
    {
        Dispose(disposing: true);
        GC.SuppressFinalize(this);
    }

    protected virtual void Dispose(bool disposing) { }

    /// <summary>A file that was damaged on disk breaks its reader in every way there is; all of them mean the same.</summary>
    private static T Read<T>(Func<T> read)
    {
        try
        {
            return read();
        }
        catch (Exception fault) when (fault is not (InvalidDataException or OperationCanceledException or OutOfMemoryException))
        {
            throw new InvalidDataException("A file of pages cannot be read.", fault);
        }
    }
}
