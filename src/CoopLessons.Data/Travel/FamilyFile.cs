using System.Reflection;
using System.Text;
using System.Text.Encodings.Web;
using System.Text.Json;

namespace CoopLessons.Data.Travel;

/// <summary>
/// A family's file: a ZIP of everything that is the family's own. <c>family.json</c> says what is in it, <c>data/TABLE.json</c>
/// holds the rows as <c>schema.json</c> describes them, <c>csv/TABLE.csv</c> the same for a spreadsheet, <c>files/HASH</c> what
/// the family brought, <c>papers/</c> reports for reading. The rows and the files are taken in elsewhere; the rest is for people.
/// </summary>
public static class FamilyFile
{
    public const string FormatName = "cooplessons-family";
    public const int CurrentVersion = 1;

    public const string Manifest = "family.json";
    public const string Readme = "README.txt";
    public const string Schema = "schema.json";

    /// <summary>Of a file that is brought by a form, in bytes: 2 GB. A host brings larger ones by command.</summary>
    public const long MostBytes = 2_000_000_000;

    /// <summary>Unpacked, all together.</summary>
    public const long MostUnpacked = 8_000_000_000;

    /// <summary>Unpacked, of the rows of one table or of what the file says of itself.</summary>
    public const long MostOfTable = 400_000_000;

    public const int MostEntries = 50_000;
    public const int MostRows = 2_000_000;

    /// <summary>How much larger than packed an entry above a megabyte may be; rows of a log stay far below.</summary>
    public const int MostRatio = 200;

    internal static readonly DateTimeOffset Still = new(2000, 1, 1, 0, 0, 0, TimeSpan.Zero);
    internal static readonly UTF8Encoding Utf8 = new(encoderShouldEmitUTF8Identifier: false);

    // The file is read by people, too, and never put into a page.
    internal static readonly JsonWriterOptions Written = new() { Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping };

    /// <summary>The version of this program.</summary>
    public static string Program => typeof(FamilyFile).Assembly.GetCustomAttribute<AssemblyInformationalVersionAttribute>()?.InformationalVersion.Split('+')[0] ?? "0";

    internal static string DataPath(string table) => $"data/{table}.json";

    internal static string CsvPath(string table) => $"csv/{table}.csv";

    internal static string FilePath(string hash) => $"files/{hash}";

    internal static bool IsHash(string text) => text.Length == 64 && text.All(char.IsAsciiHexDigitLower);
}

/// <summary>An entry of a family's file, as <c>family.json</c> lists it.</summary>
public sealed record TravelEntry(string Path, long Bytes, string Sha256);
