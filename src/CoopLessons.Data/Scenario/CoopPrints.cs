using System.Text.Json;
using CoopLessons.Core.Prepare.Printing;

namespace CoopLessons.Data.Scenario;

/// <summary>From which files the families of the co-op print, as <c>seed-scenario/printables.json</c> tells it.</summary>
internal sealed record CoopPrints(IReadOnlyDictionary<string, IReadOnlyList<CoopPrint>> Families)
{
    public static CoopPrints Read() =>
        JsonSerializer.Deserialize<CoopPrints>(ScenarioFiles.Bytes("scenario/printables.json"), Coop.Json) ?? throw new InvalidDataException("printables.json holds nothing.");
}

/// <summary>A printable of an activity with its file in <c>seed-scenario/printables/</c>.</summary>
/// <param name="Unit">File of the unit without ending.</param>
/// <param name="Activity">Its code.</param>
/// <param name="Pages">Of the file.</param>
internal sealed record CoopPrint(string Unit, string Activity, string Printable, string File, int Pages, IReadOnlyList<CoopPrintChoice> Choices);

/// <summary>What is not said is as usual: all pages, for everybody, one each, grey, one page a side, with names.</summary>
internal sealed record CoopPrintChoice(
    string Pages = "", int? FromAge = null, int? ToAge = null, CopyRule Copies = CopyRule.OneEach, int Number = 1, bool Colour = false, int Up = 1, bool Names = true)
{
    public PrintChoice ToCore() => new(Pages, FromAge, ToAge, Copies, Number, Colour, Up, Names);
}
