using System.Globalization;
using CoopLessons.Core.Prepare.Books;
using CoopLessons.Core.Units;
using CoopLessons.Data.Units;
using Microsoft.AspNetCore.Mvc.ModelBinding;

namespace CoopLessons.Web.Pages.Units;

/// <summary>Turns what was typed into an activity, with a message beside each field that does not do.</summary>
public sealed class ActivityReading(ActivityInput input, ModelStateDictionary faults)
{
    private const decimal MostOfASupply = 100_000;
    private const int MostSubjects = 8;

    /// <summary>The lists as they are kept, blank rows left out. Only to be used when no fault was found.</summary>
    public ActivityDetails Details() => new(
        Subjects(),
        Rows("Variants", input.Variants, 6, Variant),
        Rows("Supplies", input.Supplies, 40, Supply),
        Rows("Printables", input.Printables, 10, Printable),
        Rows("Books", input.Books, 10, Book),
        Rows("Hazards", input.Hazards, 10, Hazard),
        Rows("Ingredients", input.Ingredients, 40, Ingredient))
    {
        After = [.. input.After.Distinct(StringComparer.Ordinal)],
        Ahead = Rows("Ahead", input.Ahead, 8, Ahead),
    };

    /// <summary>The plain members.</summary>
    /// <param name="weeks">The unit's.</param>
    /// <param name="last">Order of the last place in the activity's week.</param>
    public ActivityFacts Facts(int weeks, Func<int, int> last)
    {
        if (input.Week is < 1 || input.Week > weeks)
            Fault("Week", $"The unit has {UnitWords.Count(weeks, "week", "weeks")}.");
        if (input.WaitingMinutes > 0 && input.WaitingFor is null)
            Fault("WaitingFor", "Say what happens meanwhile, such as “the dough rises”.");
        var waiting = input.WaitingMinutes ?? 0;
        var week = input.Week ?? 1;
        return new ActivityFacts(
            week, input.Order ?? last(week), input.Title ?? "", input.Kind ?? default, input.Does ?? "", input.AdultNeed ?? default,
            input.HandsOnMinutes ?? 1, waiting, input.WaitingFor ?? "");
    }

    private List<ActivitySubject> Subjects()
    {
        var weighted = input.Subjects.Where(s => s.Weight > 0).Select(s => new ActivitySubject(s.SubjectId, s.Weight!.Value)).ToList();
        var touched = input.Subjects.Where(s => s is { Touched: true, Weight: null or 0 }).Select(s => new ActivitySubject(s.SubjectId, 0)).ToList();
        if (weighted.Count == 0)
            Fault("Subjects", "Give at least one subject a weight of 1 or more: it says what the time counts for.");
        if (weighted.Count > MostSubjects || touched.Count > MostSubjects)
            Fault("Subjects", $"At most {MostSubjects} subjects have a weight, and at most {MostSubjects} more are touched.");
        return [.. weighted, .. touched];
    }

    private List<TKept> Rows<TRow, TKept>(string list, List<TRow> rows, int most, Func<TRow, string, TKept> keep)
        where TRow : IActivityRow
    {
        var kept = new List<TKept>();
        for (var i = 0; i < rows.Count; i++)
        {
            if (!rows[i].IsBlank)
                kept.Add(keep(rows[i], $"{list}[{i}]"));
        }

        if (kept.Count > most)
            Fault(list, $"At most {most} can be written here.");
        return kept;
    }

    private LevelVariant Variant(ActivityInput.VariantRow row, string at)
    {
        Need(row.FromAge, $"{at}.FromAge", "Say from which age.");
        Need(row.ToAge, $"{at}.ToAge", "Say up to which age.");
        Need(row.Does, $"{at}.Does", "Say what these ages do.");
        if (row.FromAge > row.ToAge)
            Fault($"{at}.ToAge", "The ages run from the younger to the older.");
        return new LevelVariant(row.FromAge ?? 1, row.ToAge ?? 18, row.Does ?? "");
    }

    private Supply Supply(ActivityInput.SupplyRow row, string at)
    {
        Need(row.Name, $"{at}.Name", "Say what it is.");
        Need(row.Quantity, $"{at}.Quantity", "Say how much.");
        var isNumber = decimal.TryParse(row.Quantity, NumberStyles.AllowDecimalPoint, CultureInfo.InvariantCulture, out var quantity);
        if (row.Quantity is not null && (!isNumber || quantity <= 0 || quantity > MostOfASupply))
            Fault($"{at}.Quantity", "Write a number above 0 and up to 100,000, without a comma, such as 2 or 0.5.");
        if (row.Unit is null || !UnitWords.Measures.Contains(row.Unit))
            Fault($"{at}.Unit", "Choose a measure.");
        Need(row.Per, $"{at}.Per", "Say for whom.");
        return new Supply(row.Name ?? "", quantity, row.Unit ?? "", row.Per ?? default, row.Note);
    }

    private Printable Printable(ActivityInput.PrintableRow row, string at)
    {
        Need(row.Title, $"{at}.Title", "Say what is printed.");
        Need(row.Pages, $"{at}.Pages", "Say how many pages.");
        return new Printable(row.Title ?? "", row.Pages ?? 1, row.Note);
    }

    private Book Book(ActivityInput.BookRow row, string at)
    {
        Need(row.Title, $"{at}.Title", "Give the book's title.");
        Need(row.Use, $"{at}.Use", "Say how the book is used.");
        Isbn? isbn = null;
        if (row.Isbn is not null && !Isbn.TryRead(row.Isbn, out isbn, out var fault))
            Fault($"{at}.Isbn", fault);
        return new Book(row.Title ?? "", row.Use ?? default, row.Author, isbn?.Digits, row.Note);
    }

    private Hazard Hazard(ActivityInput.HazardRow row, string at)
    {
        Need(row.Kind, $"{at}.Kind", "Say what can hurt somebody.");
        Need(row.Caution, $"{at}.Caution", "Write the usual caution beside it.");
        return new Hazard(row.Kind ?? default, row.Caution ?? "");
    }

    private Ingredient Ingredient(ActivityInput.IngredientRow row, string at)
    {
        Need(row.Name, $"{at}.Name", "Say what it is.");
        return new Ingredient(row.Name ?? "", [.. row.Allergens.Distinct().Order()]);
    }

    private AheadStart Ahead(ActivityInput.AheadRow row, string at)
    {
        Need(row.What, $"{at}.What", "Say what is begun.");
        Need(row.Kind, $"{at}.Kind", "Say what sort of thing it is.");
        Need(row.TakesDays, $"{at}.TakesDays", "Say how many days it takes.");
        if (row.What is not null && input.Ahead.TakeWhile(r => r != row).Any(r => string.Equals(r.What, row.What, StringComparison.OrdinalIgnoreCase)))
            Fault($"{at}.What", "This stands above already. Give one of them another name.");
        return new AheadStart(row.What ?? "", row.Kind ?? default, row.TakesDays ?? 1, row.KeepsDays, row.TendEveryDays ?? 0, row.Note);
    }

    private void Need(object? value, string at, string message)
    {
        // What was typed but not understood has its message already.
        if (value is null && faults[$"Input.{at}"]?.Errors.Count is null or 0)
            Fault(at, message);
    }

    private void Fault(string at, string message) => faults.AddModelError($"Input.{at}", message);
}
