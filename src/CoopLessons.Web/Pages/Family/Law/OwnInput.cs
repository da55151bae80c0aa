using System.ComponentModel.DataAnnotations;
using CoopLessons.Core.Calendar;
using CoopLessons.Core.Requirements;
using CoopLessons.Data.Requirements;
using CoopLessons.Web.Pages.Account;

namespace CoopLessons.Web.Pages.Families.Law;

/// <summary>What a parent writes about a pathway of the family's own.</summary>
public sealed class OwnInput : IValidatableObject
{
    public const int MostPapers = 12;
    public const int MostRecords = 6;
    private const int Spare = 2;

    [Required(ErrorMessage = "Give the pathway a name.")]
    [StringLength(OwnPathway.LongestName, ErrorMessage = "A pathway’s name has at most {1} signs.")]
    [Visible]
    public string Name { get; set; } = "";

    [DateOfEveryYear]
    [StringLength(5, ErrorMessage = "Write the month and the day with a hyphen between, such as 08-15.")]
    public string? YearBegins { get; set; }

    [Range(1, 366, ErrorMessage = "Give between {1} and {2} days, or nothing.")]
    public int? Days { get; set; }

    [Range(1, 1440, ErrorMessage = "Give between {1} and {2} minutes, or nothing.")]
    public int? MinutesADay { get; set; }

    [QuarterHours]
    public decimal? Hours { get; set; }

    /// <summary>Days or hours: either is enough.</summary>
    public bool EitherIsEnough { get; set; }

    [QuarterHours]
    public decimal? CoreHours { get; set; }

    [MaxLength(200)]
    public List<Guid> CoreSubjects { get; set; } = [];

    [QuarterHours]
    public decimal? CoreHoursAtHome { get; set; }

    [MaxLength(200)]
    public List<Guid> RequiredSubjects { get; set; } = [];

    [MaxLength(MostPapers, ErrorMessage = "At most {1} papers.")]
    public List<PaperInput> Papers { get; set; } = [];

    [MaxLength(MostRecords, ErrorMessage = "At most {1} records.")]
    public List<RecordInput> Records { get; set; } = [];

    /// <summary>Empty rows to write in, up to the most.</summary>
    public void Spread()
    {
        Papers.AddRange(Enumerable.Range(0, Math.Clamp(MostPapers - Papers.Count, 0, Spare)).Select(_ => new PaperInput()));
        Records.AddRange(Enumerable.Range(0, Math.Clamp(MostRecords - Records.Count, 0, Spare)).Select(_ => new RecordInput()));
    }

    public IEnumerable<ValidationResult> Validate(ValidationContext validationContext)
    {
        if (MinutesADay is not null && Days is null)
            yield return new ValidationResult("These minutes belong to a number of days: give that, too.", [nameof(Days)]);
        if (EitherIsEnough && (Days is null || Hours is null))
            yield return new ValidationResult("For a choice between the two, give a number of days and a number of hours.", [nameof(EitherIsEnough)]);
        if ((CoreHours ?? CoreHoursAtHome) is not null && CoreSubjects.Count == 0)
            yield return new ValidationResult("Choose which of your subjects are the core.", [nameof(CoreSubjects)]);
        if (CoreSubjects.Count > 0 && CoreHours is null && CoreHoursAtHome is null)
            yield return new ValidationResult("Give the hours that these subjects are to reach, or choose none.", [nameof(CoreHours)]);
    }

    public sealed class PaperInput : IValidatableObject
    {
        /// <summary>The id by which what is written about the paper finds it again; empty for a new one.</summary>
        [StringLength(LearnerPathway.LongestPathwayId, ErrorMessage = "This paper is not known.")]
        public string? Id { get; set; }

        [StringLength(200, ErrorMessage = "At most {1} signs.")]
        [Visible]
        public string? What { get; set; }

        [StringLength(200, ErrorMessage = "At most {1} signs.")]
        public string? To { get; set; }

        [DateOfEveryYear]
        [StringLength(5, ErrorMessage = "Write the month and the day with a hyphen between, such as 08-15.")]
        public string? By { get; set; }

        public IEnumerable<ValidationResult> Validate(ValidationContext validationContext)
        {
            if (What is null && (To ?? By) is not null)
                yield return new ValidationResult("Say which paper it is.", [nameof(What)]);
        }
    }

    public sealed class RecordInput : IValidatableObject
    {
        [StringLength(LearnerPathway.LongestPathwayId, ErrorMessage = "This record is not known.")]
        public string? Id { get; set; }

        [StringLength(200, ErrorMessage = "At most {1} signs.")]
        [Visible]
        public string? What { get; set; }

        [Range(0, 30, ErrorMessage = "Give between {1} and {2} years, or nothing.")]
        public int? Years { get; set; }

        public IEnumerable<ValidationResult> Validate(ValidationContext validationContext)
        {
            if (What is null && Years is not null)
                yield return new ValidationResult("Say what is kept.", [nameof(What)]);
        }
    }

    [AttributeUsage(AttributeTargets.Property)]
    private sealed class DateOfEveryYearAttribute() : ValidationAttribute("Write the month and the day with a hyphen between, such as 08-15.")
    {
        public override bool IsValid(object? value) => value is not string { Length: > 0 } text || MonthDay.TryParse(text, out _);
    }

    [AttributeUsage(AttributeTargets.Property)]
    private sealed class QuarterHoursAttribute() : ValidationAttribute("Give hours by quarters, up to 9,000: 600, or 12.25.")
    {
        public override bool IsValid(object? value) => value is not decimal hours || (hours is > 0 and <= 9000 && hours % 0.25m == 0);
    }
}
