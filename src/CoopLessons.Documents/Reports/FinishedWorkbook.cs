using System.Globalization;
using System.IO.Compression;
using System.Xml.Linq;

namespace CoopLessons.Documents.Reports;

/// <summary>A workbook whose only day is that of its report: the writer stamps the moment of writing, which would make each copy another file.</summary>
internal static class FinishedWorkbook
{
    // The first day that the format can name (ZIP application note, 4.4.6; from memory).
    private static readonly DateTimeOffset NoTime = new(1980, 1, 1, 0, 0, 0, TimeSpan.Zero);
    private static readonly XNamespace Terms = "http://purl.org/dc/terms/";

    public static byte[] Of(Stream workbook, DateOnly madeOn)
    {
        using var bytes = new MemoryStream();
        using (var from = new ZipArchive(workbook, ZipArchiveMode.Read, leaveOpen: true))
        using (var to = new ZipArchive(bytes, ZipArchiveMode.Create, leaveOpen: true))
        {
            foreach (var part in from.Entries)
            {
                var copy = to.CreateEntry(part.FullName);
                copy.LastWriteTime = NoTime;
                using var source = part.Open();
                using var target = copy.Open();
                if (part.FullName == "docProps/core.xml")
                    Dated(XDocument.Load(source), madeOn).Save(target, SaveOptions.DisableFormatting);
                else
                    source.CopyTo(target);
            }
        }

        return bytes.ToArray();
    }

    private static XDocument Dated(XDocument properties, DateOnly madeOn)
    {
        foreach (var created in properties.Descendants(Terms + "created"))
            created.Value = madeOn.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture) + "T00:00:00Z";
        return properties;
    }
}
