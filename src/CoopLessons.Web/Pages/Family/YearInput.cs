using System.ComponentModel.DataAnnotations;
using CoopLessons.Core.Calendar;
using CoopLessons.Data;
using CoopLessons.Data.Families;
using CoopLessons.Web.Pages.Account;
using Microsoft.AspNetCore.Mvc.ModelBinding;
using Microsoft.EntityFrameworkCore;

namespace CoopLessons.Web.Pages.Families;

/// <summary>What a parent writes about a school year.</summary>
public sealed class YearInput : IValidatableObject
{
    /// <summary>Longer than any school year, shorter than two.</summary>
    public const int LongestDays = 400;

    private static readonly DateOnly Earliest = new(1990, 1, 1);
    private static readonly DateOnly Latest = new(2199, 12, 31);

    [Required(ErrorMessage = "Give the year a name, such as 2026–27.")]
    [StringLength(SchoolYear.LongestName, ErrorMessage = "A year’s name has at most {1} signs.")]
    [Visible]
    public string Name { get; set; } = "";

    [Required(ErrorMessage = "Give the first day.")]
    public DateOnly? First { get; set; }

    [Required(ErrorMessage = "Give the last day.")]
    public DateOnly? Last { get; set; }

    [MaxLength(7)]
    public List<Weekdays> Days { get; set; } = [];

    // Methods, since every property is read while the form is checked, and these hold only afterwards.
    public DayRange Range() => new(First!.Value, Last!.Value);

    public Weekdays Weekdays() => Days.Aggregate(Core.Calendar.Weekdays.None, (all, day) => all | day);

    public static YearInput Of(SchoolYear year) => new() { Name = year.Name, First = year.First, Last = year.Last, Days = [.. Words.Days.Where(d => year.Weekdays.HasFlag(d))] };

    public IEnumerable<ValidationResult> Validate(ValidationContext validationContext)
    {
        if (Days.Count == 0 || !Days.All(Words.Days.Contains))
            yield return new ValidationResult("Choose at least one day of the week.", [nameof(Days)]);
        if (First < Earliest || First > Latest)
            yield return new ValidationResult("The first day is between 1990 and 2199.", [nameof(First)]);
        else if (Last < First)
            yield return new ValidationResult("The last day is on or after the first.", [nameof(Last)]);
        else if (Last > First?.AddDays(LongestDays - 1))
            yield return new ValidationResult($"A school year has at most {LongestDays} days.", [nameof(Last)]);
    }

    /// <summary>Years of a family do not overlap: each day belongs to one year's report.</summary>
    public async Task CheckOverlapAsync(AppDb db, Guid? except, ModelStateDictionary state, CancellationToken ct)
    {
        if (!state.IsValid)
            return;
        var other = await db.SchoolYears.AsNoTracking().Where(y => y.Id != except && y.First <= Last && y.Last >= First).OrderBy(y => y.First).FirstOrDefaultAsync(ct);
        if (other is not null)
            state.AddModelError("Input.First", $"These days overlap the year {other.Name}, {Words.Of(other.Days)}. Each day belongs to one school year.");
    }
}
