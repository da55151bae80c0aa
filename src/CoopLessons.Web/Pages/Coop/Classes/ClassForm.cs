using System.ComponentModel.DataAnnotations;
using CoopLessons.Core.Coop;
using CoopLessons.Core.Families;
using CoopLessons.Core.Units;
using CoopLessons.Data.Coops.Days;
using CoopLessons.Web.Pages.Account;
using Microsoft.AspNetCore.Mvc.ModelBinding;

namespace CoopLessons.Web.Pages.Coops;

/// <summary>What somebody fills in for a class.</summary>
public sealed class ClassForm
{
    public const string Teaches = "teaches";
    public const string Helps = "helps";
    private const int MostRows = 20;
    private const int LongestLine = 200;

    public Guid NewId { get; set; }
    public int Version { get; set; }

    [Required(ErrorMessage = "Give the class a title.")]
    [StringLength(CoopClass.LongestTitle, ErrorMessage = "A title has at most {1} signs.")]
    [Visible]
    public string? Title { get; set; }

    [StringLength(CoopClass.LongestDoes, ErrorMessage = "At most {1} signs here.")]
    public string? Does { get; set; }

    [Required(ErrorMessage = "Choose a period.")]
    public Guid? PeriodId { get; set; }

    [Required(ErrorMessage = "Choose a room.")]
    public Guid? RoomId { get; set; }

    [Required(ErrorMessage = "Give an age in whole years, from 0 to 18.")]
    [Range(0, 18, ErrorMessage = "Give an age in whole years, from 0 to 18.")]
    public int? FromAge { get; set; }

    [Required(ErrorMessage = "Give an age in whole years, from 0 to 18.")]
    [Range(0, 18, ErrorMessage = "Give an age in whole years, from 0 to 18.")]
    public int? ToAge { get; set; }

    [Required(ErrorMessage = "Say for how many children, from 1 to 200.")]
    [Range(1, 200, ErrorMessage = "Say for how many children, from 1 to 200.")]
    public int? Size { get; set; }

    [Required(ErrorMessage = "Choose the first day.")]
    public DateOnly? First { get; set; }

    [Required(ErrorMessage = "Choose the last day.")]
    public DateOnly? Last { get; set; }

    public bool OffSite { get; set; }
    public List<AdultRow> Adults { get; set; } = [];
    public List<UseRow> Uses { get; set; } = [];
    public string? Subjects { get; set; }
    public string? Perishables { get; set; }
    public List<HomeRow> Home { get; set; } = [];

    /// <summary>Saved although the room may not open as it stands.</summary>
    public bool NotYetCovered { get; set; }

    public static ClassForm Of(CoopClass known) => new()
    {
        Version = known.Version,
        Title = known.Title,
        Does = known.Does,
        PeriodId = known.PeriodId,
        RoomId = known.RoomId,
        FromAge = known.FromAge,
        ToAge = known.ToAge,
        Size = known.Size,
        First = known.First,
        Last = known.Last,
        OffSite = known.OffSite,
        Adults = [.. known.Details.Teachers.Select(t => new AdultRow { Id = t, Part = Teaches }), .. known.Details.Helpers.Select(h => new AdultRow { Id = h, Part = Helps })],
        Uses = [.. known.Details.Uses.Select(u => new UseRow { Name = u.Ingredient.Name, Allergens = [.. u.Ingredient.Allergens], Swap = u.Swap?.Name, SwapAllergens = [.. u.Swap?.Allergens ?? []] })],
        Subjects = string.Join("\n", known.Details.Subjects),
        Perishables = string.Join("\n", known.Details.Perishables),
        Home = [.. known.Details.HomeVersions.Select(h => new HomeRow { FromAge = h.FromAge, ToAge = h.ToAge, Does = h.Does })],
    };

    /// <summary>One row for each adult who is there, and empty rows to write more.</summary>
    public void Spread(Timetable table)
    {
        var parts = Adults.DistinctBy(a => a.Id).ToDictionary(a => a.Id, a => a.Part);
        Adults =
        [
            .. table.Adults.Values.Where(a => !a.Gone || parts.ContainsKey(a.Id)).OrderBy(a => table.Families[a.FamilyId].Name, StringComparer.OrdinalIgnoreCase).ThenBy(a => a.Name, StringComparer.OrdinalIgnoreCase)
                .Select(a => new AdultRow { Id = a.Id, Part = parts.GetValueOrDefault(a.Id) }),
        ];
        for (var i = Uses.Count(u => !u.IsEmpty); Uses.Count < Math.Min(MostRows, i + 2);)
            Uses.Add(new());
        for (var i = Home.Count(h => !h.IsEmpty); Home.Count < Math.Min(MostRows, i + 2);)
            Home.Add(new());
    }

    /// <summary>Null where something is missing or wrong, with a message beside its field.</summary>
    public (ClassFacts Facts, ClassDetails Details)? Read(ModelStateDictionary state, Timetable table)
    {
        void Fault(string field, string sentence) => state.AddModelError($"Input.{field}", sentence);
        if (PeriodId is { } period && table.Periods.All(p => p.Id != period))
            Fault(nameof(PeriodId), "Choose a period.");
        if (RoomId is { } room && table.Rooms.All(r => r.Id != room))
            Fault(nameof(RoomId), "Choose a room.");
        if (FromAge > ToAge)
            Fault(nameof(ToAge), "The oldest is no younger than the youngest.");
        if (First > Last)
            Fault(nameof(Last), "The last day is no earlier than the first.");
        else if (First is { Year: < 2000 or > 2200 } || Last is { Year: < 2000 or > 2200 })
            Fault(nameof(First), "Choose days of this century.");
        if (Size is { } size && RoomId is { } at && table.Rooms.FirstOrDefault(r => r.Id == at) is { Holds: { } holds } small && size > holds)
            Fault(nameof(Size), $"{char.ToUpperInvariant(small.Name[0])}{small.Name[1..]} holds {holds}.");
        var uses = ReadUses(Fault);
        var homes = ReadHomes(Fault);
        var (subjects, perishables) = (Lines(Subjects, nameof(Subjects), Fault), Lines(Perishables, nameof(Perishables), Fault));
        if (!state.IsValid)
            return null;
        var known = Adults.Where(a => table.Adults.ContainsKey(a.Id)).DistinctBy(a => a.Id).ToList();
        return (new ClassFacts(Title!.Trim(), Does?.Trim() ?? "", PeriodId!.Value, RoomId!.Value, FromAge!.Value, ToAge!.Value, Size!.Value, First!.Value, Last!.Value, OffSite),
            new ClassDetails([.. known.Where(a => a.Part == Teaches).Select(a => a.Id)], [.. known.Where(a => a.Part == Helps).Select(a => a.Id)], uses, subjects, homes, perishables));
    }

    private List<RoomIngredient> ReadUses(Action<string, string> fault)
    {
        var uses = new List<RoomIngredient>();
        for (var i = 0; i < Uses.Count && i < MostRows; i++)
        {
            var (row, name, swap) = (Uses[i], Uses[i].Name?.Trim() ?? "", Uses[i].Swap?.Trim() ?? "");
            if (row.IsEmpty)
                continue;
            if (name.Length == 0)
                fault($"Uses[{i}].Name", "Say what it is.");
            else if (name.Length > LongestLine || swap.Length > LongestLine)
                fault($"Uses[{i}].Name", $"At most {LongestLine} signs here.");
            else if (swap.Length == 0 && row.SwapAllergens.Count > 0)
                fault($"Uses[{i}].Swap", "Say what would be used instead.");
            else
                uses.Add(new(new Ingredient(name, Ordered(row.Allergens)), swap.Length > 0 ? new Ingredient(swap, Ordered(row.SwapAllergens)) : null));
        }

        return uses;
    }

    private List<HomeVersion> ReadHomes(Action<string, string> fault)
    {
        var homes = new List<HomeVersion>();
        for (var i = 0; i < Home.Count && i < MostRows; i++)
        {
            var row = Home[i];
            if (row.IsEmpty)
                continue;
            if (row.FromAge is not (>= 0 and <= 18) || row.ToAge is not (>= 0 and <= 18) || row.FromAge > row.ToAge)
                fault($"Home[{i}].FromAge", "Give both ages, the younger first.");
            else if (row.Does?.Trim() is not { Length: > 0 and <= CoopClass.LongestDoes } does)
                fault($"Home[{i}].Does", "Say what is done at home.");
            else
                homes.Add(new(row.FromAge.Value, row.ToAge.Value, does));
        }

        return homes;
    }

    private static List<string> Lines(string? text, string field, Action<string, string> fault)
    {
        var lines = (text ?? "").Split('\n', StringSplitOptions.TrimEntries | StringSplitOptions.RemoveEmptyEntries).Distinct(StringComparer.OrdinalIgnoreCase).ToList();
        if (lines.Count > MostRows || lines.Any(l => l.Length > LongestLine))
            fault(field, $"At most {MostRows} lines of {LongestLine} signs.");
        return lines;
    }

    private static List<Allergen> Ordered(List<Allergen> allergens) => [.. allergens.Where(Enum.IsDefined).Distinct().Order()];

    public sealed class AdultRow
    {
        public Guid Id { get; set; }
        public string? Part { get; set; }
    }

    public sealed class UseRow
    {
        public string? Name { get; set; }
        public List<Allergen> Allergens { get; set; } = [];
        public string? Swap { get; set; }
        public List<Allergen> SwapAllergens { get; set; } = [];

        public bool IsEmpty => string.IsNullOrWhiteSpace(Name) && string.IsNullOrWhiteSpace(Swap) && Allergens.Count + SwapAllergens.Count == 0;
    }

    public sealed class HomeRow
    {
        public int? FromAge { get; set; }
        public int? ToAge { get; set; }
        public string? Does { get; set; }

        public bool IsEmpty => FromAge is null && ToAge is null && string.IsNullOrWhiteSpace(Does);
    }
}
