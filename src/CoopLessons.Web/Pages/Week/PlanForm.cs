using System.ComponentModel.DataAnnotations;
using CoopLessons.Web.Pages.Today;
using Microsoft.AspNetCore.Mvc.ModelBinding;

namespace CoopLessons.Web.Pages.Week;

/// <summary>A day and, if it matters, a time.</summary>
public class PlanForm
{
    public static readonly DateOnly Earliest = new(2000, 1, 1);

    [Required(ErrorMessage = "Choose a day.")]
    public DateOnly? Date { get; set; }

    public TimeOnly? Start { get; set; }

    /// <summary>Set by hand: a layout leaves it where it is.</summary>
    public bool Pinned { get; set; }

    public int? StartsAt => Start is { } start ? DayWords.OfDay(start) : null;

    /// <summary>The date; null, with a message beside the field, where it is missing or out of bounds.</summary>
    public DateOnly? Read(ModelStateDictionary state)
    {
        if (Date < Earliest || Date > DayWords.Latest)
            state.AddModelError($"Input.{nameof(Date)}", "Choose a day between 2000 and 2200.");
        return state.IsValid ? Date : null;
    }
}
