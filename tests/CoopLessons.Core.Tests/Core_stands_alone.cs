using System.Reflection;
using System.Reflection.Metadata;
using System.Reflection.PortableExecutable;
using CoopLessons.Core.Hours;

namespace CoopLessons.Core.Tests;

/// <summary>The arithmetic knows no database, no web and no files: what it needs of the platform is listed here by name.</summary>
public class Core_stands_alone
{
    private static readonly string[] Needed =
    [
        // The constraint solver, by which a week is laid out.
        "Google.OrTools",
        "System.Collections",
        "System.Linq",
        "System.Memory",
        "System.Runtime",
        // Named by the compiler where one list is spread into another.
        "System.Runtime.InteropServices",
        "System.Security.Cryptography",
        "System.Text.Json",
        // Tables of the letters of older spreadsheets (Windows-1252).
        "System.Text.Encoding.CodePages",
        // Patterns in what somebody typed: the numbers of books and their chapters.
        "System.Text.RegularExpressions",
    ];

    private static readonly Assembly Core = typeof(HoursLedger).Assembly;

    private static IEnumerable<string> Strangers(Assembly assembly) =>
        assembly.GetReferencedAssemblies().Select(a => a.Name!).Except(Needed, StringComparer.Ordinal);

    /// <summary>Types of files, network, data and processes that the assembly names; a plain stream of bytes is none.</summary>
    private static List<string> Outside(Assembly assembly)
    {
        using var file = new PEReader(File.OpenRead(assembly.Location));
        var reader = file.GetMetadataReader();
        return [.. reader.TypeReferences.Select(reader.GetTypeReference)
            .Select(t => $"{reader.GetString(t.Namespace)}.{reader.GetString(t.Name)}")
            .Where(name => name != "System.IO.Stream")
            .Where(name => new[] { "System.IO.", "System.Net.", "System.Data.", "System.Diagnostics.Process", "Microsoft.EntityFrameworkCore.", "Microsoft.AspNetCore." }
                .Any(outside => name.StartsWith(outside, StringComparison.Ordinal)))];
    }

    [Fact]
    public void It_references_nothing_beyond_what_it_needs_of_the_platform() => Assert.Empty(Strangers(Core));

    [Fact]
    public void It_names_no_type_of_files_network_or_data() => Assert.Empty(Outside(Core));

    [Fact]
    public void A_reference_to_anything_else_would_be_found() => Assert.Contains("CsCheck", Strangers(typeof(Core_stands_alone).Assembly));

    [Fact]
    public void A_type_of_files_would_be_found() => Assert.Contains("System.IO.File", Outside(typeof(Core_stands_alone).Assembly));
}
