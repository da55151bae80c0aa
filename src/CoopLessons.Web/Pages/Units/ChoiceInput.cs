using System.Globalization;
using CoopLessons.Core.Prepare.Printing;
using Microsoft.AspNetCore.Mvc.ModelBinding;

namespace CoopLessons.Web.Pages.Units;

/// <summary>One way in which a file is printed, as a form tells it.</summary>
public sealed class ChoiceInput
{
    public string? Pages { get; set; }
    public int? FromAge { get; set; }
    public int? ToAge { get; set; }
    public CopyRule Copies { get; set; }
    public int? Number { get; set; }
    public bool Colour { get; set; }
    public bool Two { get; set; }
    public bool Names { get; set; }

    /// <summary>Drop this way.</summary>
    public bool Drop { get; set; }

    /// <summary>A row that was offered for another way; left as it was, it is none.</summary>
    public bool Offered { get; set; }

    public static ChoiceInput Of(PrintChoice choice) => new()
    {
        Pages = choice.Pages,
        FromAge = choice.FromAge,
        ToAge = choice.ToAge,
        Copies = choice.Copies,
        Number = choice.Copies == CopyRule.Number ? choice.Number : null,
        Colour = choice.Colour,
        Two = choice.Up == 2,
        Names = choice.Names,
    };

    /// <summary>The choices that are meant, or null with the faults beside their fields.</summary>
    /// <param name="pageCount">Of the file.</param>
    public static IReadOnlyList<PrintChoice>? Read(IReadOnlyList<ChoiceInput> rows, int pageCount, ModelStateDictionary state)
    {
        var choices = new List<PrintChoice>();
        for (var i = 0; i < rows.Count; i++)
        {
            var row = rows[i];
            if (row.Drop || (row.Offered && string.IsNullOrWhiteSpace(row.Pages) && row.FromAge is null && row.ToAge is null))
            {
                foreach (var key in state.Keys.Where(k => k.StartsWith(Field(i, ""), StringComparison.Ordinal)).ToList())
                    state.Remove(key);
                continue;
            }

            choices.Add(row.Read(i, pageCount, state));
        }

        if (choices.Count == 0 && state.IsValid)
            state.AddModelError("", "At least one way of printing stays. To print nothing of it, remove the file.");
        return state.IsValid ? choices : null;
    }

    public static string Field(int row, string name) => string.Create(CultureInfo.InvariantCulture, $"Choices[{row}].{name}");

    private PrintChoice Read(int row, int pageCount, ModelStateDictionary state)
    {
        if (!PageRanges.TryRead(Pages, out var ranges, out var fault) || !ranges.TryIn(pageCount, out _, out fault))
            state.AddModelError(Field(row, nameof(Pages)), fault);
        if (FromAge is < 0 or > PrintChoice.OldestAge)
            state.AddModelError(Field(row, nameof(FromAge)), $"Ages run from 0 to {PrintChoice.OldestAge}.");
        if (ToAge is < 0 or > PrintChoice.OldestAge)
            state.AddModelError(Field(row, nameof(ToAge)), $"Ages run from 0 to {PrintChoice.OldestAge}.");
        else if (ToAge < FromAge)
            state.AddModelError(Field(row, nameof(ToAge)), "The ages run from the younger to the older.");
        if (Copies == CopyRule.Number && Number is not (>= 1 and <= PrintChoice.MostCopies))
            state.AddModelError(Field(row, nameof(Number)), $"Give a number of copies from 1 to {PrintChoice.MostCopies}.");
        return new PrintChoice(ranges.ToString(), FromAge, ToAge, Copies, Copies == CopyRule.Number ? Number ?? 1 : 1, Colour, Two ? 2 : 1, Names);
    }
}
