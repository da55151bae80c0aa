using System.CommandLine;
using CoopLessons.Core.Requirements;

namespace CoopLessons.Web.Commands;

/// <summary>
/// <c>check-catalog</c>: prints every figure of the law that the program holds with what it rests on, or, for whoever
/// changes the files, checks a folder of them. It needs no database.
/// </summary>
public static class CheckCatalogCommand
{
    private const string SchemaFile = "jurisdiction.schema.json";

    public static Command Create()
    {
        var from = new Option<string?>("--from") { Description = "Folder of catalog files to check in place of the program's own.", HelpName = "DIR" };
        var command = new Command("check-catalog", "Prints every figure of the law with its source, and checks the files it stands in.") { from };
        command.SetAction(parsed => Check(parsed.GetValue(from) is { } folder ? Files(folder) : [.. Catalog.Files()]));
        return command;
    }

    private static int Check(IReadOnlyList<(string Name, string Text)> files)
    {
        var checkedFiles = files.Select(f => CatalogFile.Check(f.Name, f.Text)).ToList();
        var faults = checkedFiles.SelectMany(f => f.Faults).ToList();
        foreach (var fault in faults)
            Console.Error.WriteLine(CommandTable.OneLine(fault));
        if (faults.Count > 0)
            return CommandTable.Failed;

        var figures = checkedFiles.SelectMany(f => CatalogFigure.Of(f.Jurisdiction!)).ToList();
        foreach (var figure in figures)
            Console.WriteLine(figure.Line);
        foreach (var basis in Enum.GetValues<Basis>())
            Count("basis", (CatalogFigure.Example(basis), figures.Count(f => f.Source.Basis == basis)));
        foreach (var status in Enum.GetValues<FigureStatus>())
            Count("status", (CatalogFigure.Words(status), figures.Count(f => f.Status == status)));
        Console.WriteLine($"{figures.Count} {(figures.Count == 1 ? "figure" : "figures")}, all with a citation");
        return CommandTable.Done;
    }

    private static void Count(string of, (string Words, int Figures) counted)
    {
        if (counted.Figures > 0)
            Console.WriteLine($"{of}: {counted.Words}: {counted.Figures}");
    }

    private static List<(string Name, string Text)> Files(string folder)
    {
        if (!Directory.Exists(folder))
            throw new WrongUseException($"There is no folder “{folder}”.");
        try
        {
            var files = Directory.EnumerateFiles(folder, "*.json").Where(f => Path.GetFileName(f) != SchemaFile).Order(StringComparer.Ordinal)
                .Select(f => (Path.GetFileName(f), File.ReadAllText(f))).ToList();
            return files.Count > 0 ? files : throw new WrongUseException($"There are no catalog files (*.json) in “{folder}”.");
        }
        catch (Exception fault) when (fault is IOException or UnauthorizedAccessException)
        {
            throw new WrongUseException($"“{folder}” cannot be read: {fault.Message}");
        }
    }
}
