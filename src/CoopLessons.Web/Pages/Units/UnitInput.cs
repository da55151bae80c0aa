using System.ComponentModel.DataAnnotations;
using CoopLessons.Data.Units;

namespace CoopLessons.Web.Pages.Units;

/// <summary>What is written about a unit as a whole.</summary>
public sealed class UnitInput
{
    /// <summary>Minted on the page for a new unit.</summary>
    public Guid Id { get; set; }

    public int Version { get; set; }

    [Required(ErrorMessage = "Give the unit a title.")]
    [StringLength(Unit.LongestTitle, ErrorMessage = "A title has at most {1} characters.")]
    public string Title { get; set; } = "";

    [Required(ErrorMessage = "Say in a few words what the unit is about.")]
    [StringLength(Unit.LongestSummary, ErrorMessage = "A summary has at most {1} characters.")]
    [DataType(DataType.MultilineText)]
    public string Summary { get; set; } = "";

    [Required(ErrorMessage = "Say how many weeks the unit takes.")]
    [Range(1, Unit.MostWeeks, ErrorMessage = "A unit takes {1} to {2} weeks.")]
    public int? Weeks { get; set; } = 4;
}
