using CoopLessons.Documents.Pdf;
using CoopLessons.Documents.Placing;
using PdfSharp.Pdf;
using PdfSharp.Pdf.IO;

namespace CoopLessons.Documents.Uploads;

/// <summary>Opens a PDF and puts each of its pages into a packet that nobody sees.</summary>
internal static class PdfLook
{
    public static FileVerdict Of(Stream file, Stream kept, CancellationToken ct)
    {
        FileVerdict? verdict = null;
        RoomyThread.Run(() => verdict = Look(file, kept, ct));
        return verdict!;
    }

    private static FileVerdict Look(Stream file, Stream kept, CancellationToken ct)
    {
        try
        {
            var bytes = new byte[file.Length];
            file.ReadExactly(bytes);
            if (!PdfOutline.IsBearable(bytes))
                return new FileVerdict(FileFault.Broken, PageKind.Pdf, 0);
            if (PdfOutline.IsLocked(bytes))
                return new FileVerdict(FileFault.Locked, PageKind.Pdf, 0);
            using var memory = new MemoryStream(bytes, writable: false);
            var source = PdfReader.Open(memory, PdfDocumentOpenMode.Import);
            if (source.PageCount == 0)
                return new FileVerdict(FileFault.NoPages, PageKind.Pdf, 0);
            if (source.PageCount > PrintableFile.MostPages)
                return new FileVerdict(FileFault.TooManyPages, PageKind.Pdf, source.PageCount);
            var count = source.PageCount;
            using (var trial = new PdfDocument())
            using (var pages = new PagesOfPdf(trial, source, new CarriedStreams(Stream.Null)))
            {
                for (var page = 1; page <= count; page++)
                {
                    ct.ThrowIfCancellationRequested();
                    pages.Take(page);
                }
            }

            kept.Write(bytes);
            return new FileVerdict(null, PageKind.Pdf, count);
        }
        // A broken file breaks its reader in every way there is; all of them mean the same to whoever brought it.
        catch (Exception fault) when (fault is not (OperationCanceledException or OutOfMemoryException))
        {
            var locked = fault is PdfReaderException && fault.Message.Contains("password", StringComparison.OrdinalIgnoreCase);
            return new FileVerdict(locked ? FileFault.Locked : FileFault.Broken, PageKind.Pdf, 0);
        }
    }
}
