using System.ComponentModel.DataAnnotations;
using CoopLessons.Core.Families;
using CoopLessons.Core.Units;
using CoopLessons.Data.Units;

namespace CoopLessons.Web.Pages.Units;

/// <summary>A line of a list that is typed in; one left blank counts for nothing.</summary>
public interface IActivityRow
{
    bool IsBlank { get; }
}

/// <summary>An activity as it is typed in. The bounds are those of the bundle's schema, so that what is written can travel.</summary>
public sealed class ActivityInput
{
    public const int LongestLine = 120;
    public const int LongestNote = 500;
    public const int LongestVariant = 1000;
    public const int MostAfter = 8;
    private const string LineTooLong = "At most {1} characters.";

    /// <summary>Minted on the page for a new activity.</summary>
    public Guid Id { get; set; }

    public int Version { get; set; }

    [Required(ErrorMessage = "Give the activity a title.")]
    [StringLength(Activity.LongestTitle, ErrorMessage = "A title has at most {1} characters.")]
    public string Title { get; set; } = "";

    [Required(ErrorMessage = "Say in which week it is done.")]
    public int? Week { get; set; }

    [Range(1, 999, ErrorMessage = "The order within the week is a number from {1} to {2}; leave it empty for the last place.")]
    public int? Order { get; set; }

    [Required(ErrorMessage = "Say what sort of work it is.")]
    public ActivityKind? Kind { get; set; }

    [Required(ErrorMessage = "Say what everybody does.")]
    [StringLength(Activity.LongestDoes, ErrorMessage = "This has at most {1} characters. Put the rest into the versions below, or into a second activity.")]
    [DataType(DataType.MultilineText)]
    public string Does { get; set; } = "";

    [Required(ErrorMessage = "Say how much of an adult it takes.")]
    public AdultNeed? AdultNeed { get; set; }

    [Required(ErrorMessage = "Say how many minutes it takes, about.")]
    [Range(1, Activity.MostHandsOn, ErrorMessage = "Hands-on time is {1} to {2} minutes.")]
    public int? HandsOnMinutes { get; set; }

    [Range(0, Activity.MostWaiting, ErrorMessage = "Waiting time is at most 43,200 minutes, which is thirty days.")]
    public int? WaitingMinutes { get; set; }

    [StringLength(LongestLine, ErrorMessage = LineTooLong)]
    public string? WaitingFor { get; set; }

    /// <summary>Codes of the unit's activities that are done first.</summary>
    public List<string> After { get; set; } = [];

    public List<SubjectRow> Subjects { get; set; } = [];
    public List<VariantRow> Variants { get; set; } = [];
    public List<SupplyRow> Supplies { get; set; } = [];
    public List<PrintableRow> Printables { get; set; } = [];
    public List<BookRow> Books { get; set; } = [];
    public List<HazardRow> Hazards { get; set; } = [];
    public List<IngredientRow> Ingredients { get; set; } = [];
    public List<AheadRow> Ahead { get; set; } = [];

    public sealed class SubjectRow
    {
        public Guid SubjectId { get; set; }

        [Range(0, UnitTravel.MostWeight, ErrorMessage = "A weight is a whole number from {1} to {2}.")]
        public int? Weight { get; set; }

        public bool Touched { get; set; }
    }

    public sealed class VariantRow : IActivityRow
    {
        [Range(1, 18, ErrorMessage = "Ages run from {1} to {2}.")]
        public int? FromAge { get; set; }

        [Range(1, 18, ErrorMessage = "Ages run from {1} to {2}.")]
        public int? ToAge { get; set; }

        [StringLength(LongestVariant, ErrorMessage = LineTooLong)]
        [DataType(DataType.MultilineText)]
        public string? Does { get; set; }

        public bool IsBlank => FromAge is null && ToAge is null && Does is null;
    }

    public sealed class SupplyRow : IActivityRow
    {
        [StringLength(LongestLine, ErrorMessage = LineTooLong)]
        public string? Name { get; set; }

        /// <summary>As typed: a comma would otherwise be read as parting thousands.</summary>
        [StringLength(32, ErrorMessage = "Write a number, such as 2 or 0.5.")]
        public string? Quantity { get; set; }

        [StringLength(10)]
        public string? Unit { get; set; }

        public Per? Per { get; set; }

        [StringLength(LongestNote, ErrorMessage = LineTooLong)]
        public string? Note { get; set; }

        /// <summary>The two choices always hold something and do not count.</summary>
        public bool IsBlank => Name is null && Quantity is null && Note is null;
    }

    public sealed class PrintableRow : IActivityRow
    {
        [StringLength(LongestLine, ErrorMessage = LineTooLong)]
        public string? Title { get; set; }

        [Range(1, 200, ErrorMessage = "A printable has {1} to {2} pages.")]
        public int? Pages { get; set; }

        [StringLength(LongestNote, ErrorMessage = LineTooLong)]
        public string? Note { get; set; }

        public bool IsBlank => Title is null && Pages is null && Note is null;
    }

    public sealed class BookRow : IActivityRow
    {
        [StringLength(LongestLine, ErrorMessage = LineTooLong)]
        public string? Title { get; set; }

        [StringLength(LongestLine, ErrorMessage = LineTooLong)]
        public string? Author { get; set; }

        public BookUse? Use { get; set; }

        [StringLength(25, ErrorMessage = "An ISBN has 10 or 13 digits.")]
        public string? Isbn { get; set; }

        [StringLength(LongestNote, ErrorMessage = LineTooLong)]
        public string? Note { get; set; }

        public bool IsBlank => Title is null && Author is null && Isbn is null && Note is null;
    }

    public sealed class HazardRow : IActivityRow
    {
        public HazardKind? Kind { get; set; }

        [StringLength(LongestNote, ErrorMessage = LineTooLong)]
        public string? Caution { get; set; }

        public bool IsBlank => Kind is null && Caution is null;
    }

    public sealed class IngredientRow : IActivityRow
    {
        [StringLength(LongestLine, ErrorMessage = LineTooLong)]
        public string? Name { get; set; }

        public List<Allergen> Allergens { get; set; } = [];

        public bool IsBlank => Name is null && Allergens.Count == 0;
    }

    public sealed class AheadRow : IActivityRow
    {
        private const string Days = "A number of days from {1} to {2}.";

        [StringLength(LongestLine, ErrorMessage = LineTooLong)]
        public string? What { get; set; }

        public AheadKind? Kind { get; set; }

        [Range(1, AheadStart.MostDays, ErrorMessage = Days)]
        public int? TakesDays { get; set; }

        [Range(0, AheadStart.MostDays, ErrorMessage = Days)]
        public int? KeepsDays { get; set; }

        [Range(0, AheadStart.MostDays, ErrorMessage = Days)]
        public int? TendEveryDays { get; set; }

        [StringLength(LongestNote, ErrorMessage = LineTooLong)]
        public string? Note { get; set; }

        public bool IsBlank => What is null && Kind is null && TakesDays is null && KeepsDays is null && TendEveryDays is null && Note is null;
    }
}
