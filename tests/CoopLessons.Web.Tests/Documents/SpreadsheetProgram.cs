using System.Globalization;
using System.IO.Compression;
using System.Text;
using System.Xml.Linq;
using CsvHelper;
using CsvHelper.Configuration;
using Xunit;

namespace CoopLessons.Web.Tests.Documents;

/// <summary>
/// LibreOffice Calc without a screen (reference program: LibreOffice 7.4 as Debian 12 ships it). It opens a file, works
/// every formula out anew and writes what its cells show.
/// </summary>
internal static class SpreadsheetProgram
{
    private static readonly XNamespace Cells = "http://schemas.openxmlformats.org/spreadsheetml/2006/main";

    // Fields of the filter, from LibreOffice's help page "Filter Options for CSV": comma, double quote, UTF-8, from line 1,
    // standard columns, English (USA), quote only where needed, recognise numbers. Ninth for export: cells as shown.
    // Twelfth for export: every sheet. Thirteenth for import: work formulas out.
    private const string Import = "CSV:44,34,76,1,,1033,false,true,false,false,false,0,true";
    private const string Export = "csv:Text - txt - csv (StarCalc):44,34,76,1,,1033,false,true,true,false,false,-1";

    // LibreOffice normally trusts the sums that a workbook carries; 0 makes it work them out on loading.
    private const string AlwaysRecalculate = """
        <?xml version="1.0" encoding="UTF-8"?>
        <oor:items xmlns:oor="http://openoffice.org/2001/registry">
          <item oor:path="/org.openoffice.Office.Calc/Formula/Load"><prop oor:name="OOXMLRecalcMode" oor:op="fuse"><value>0</value></prop></item>
        </oor:items>
        """;

    public static string[] Names { get; } = ["soffice", "libreoffice"];

    /// <returns>The rows of each sheet, by the sheet's name; a file of separated values has one sheet named after the file.</returns>
    public static async Task<IReadOnlyDictionary<string, IReadOnlyList<string[]>>> Open(string fileName, byte[] file)
    {
        using var bench = new Workbench();
        var source = bench.Put(fileName, file);
        var user = Path.Combine(bench.Folder("profile"), "user");
        Directory.CreateDirectory(user);
        await File.WriteAllTextAsync(Path.Combine(user, "registrymodifications.xcu"), AlwaysRecalculate);
        var shown = bench.Folder("shown");
        List<string> arguments = [$"-env:UserInstallation={new Uri(Path.GetDirectoryName(user)!).AbsoluteUri}", "--headless", "--norestore"];
        if (fileName.EndsWith(".csv", StringComparison.Ordinal))
            arguments.Add("--infilter=" + Import);
        arguments.AddRange(["--convert-to", Export, "--outdir", shown, source]);
        var (code, output, errors) = await ReferenceProgram.Named(Names).Run([.. arguments]);
        Assert.True(code == 0, output + errors);

        var stem = Path.GetFileNameWithoutExtension(fileName);
        return Directory.GetFiles(shown).ToDictionary(
            path => Path.GetFileNameWithoutExtension(path).Replace(stem + "-", "", StringComparison.Ordinal), path => Rows(File.ReadAllBytes(path)), StringComparer.Ordinal);
    }

    /// <summary>Rows of comma-separated values, read by CsvHelper.</summary>
    public static IReadOnlyList<string[]> Rows(byte[] file)
    {
        using var text = new StreamReader(new MemoryStream(file), Encoding.UTF8, detectEncodingFromByteOrderMarks: true);
        using var csv = new CsvParser(text, new CsvConfiguration(CultureInfo.InvariantCulture) { HasHeaderRecord = false, BadDataFound = bad => Assert.Fail(bad.RawRecord) });
        var rows = new List<string[]>();
        while (csv.Read())
            rows.Add(csv.Record!);
        return rows;
    }

    /// <summary>The workbook without what it carries as its formulas' results, so that nothing but its own arithmetic can show them.</summary>
    public static byte[] WithoutResults(byte[] workbook)
    {
        using var bytes = new MemoryStream();
        bytes.Write(workbook);
        using (var zip = new ZipArchive(bytes, ZipArchiveMode.Update, leaveOpen: true))
        {
            foreach (var name in zip.Entries.Select(e => e.FullName).Where(n => n.StartsWith("xl/worksheets/sheet", StringComparison.Ordinal)).ToList())
            {
                XDocument sheet;
                using (var old = zip.GetEntry(name)!.Open())
                    sheet = XDocument.Load(old);
                zip.GetEntry(name)!.Delete();
                sheet.Descendants(Cells + "c").Where(c => c.Element(Cells + "f") is not null).Elements(Cells + "v").Remove();
                using var part = new StreamWriter(zip.CreateEntry(name).Open(), new UTF8Encoding(false));
                part.Write(sheet.ToString(SaveOptions.DisableFormatting));
            }
        }

        return bytes.ToArray();
    }
}
