using System.Text.Json.Serialization;
using CoopLessons.Core.Hours;

namespace CoopLessons.Core.Requirements;

/// <summary>A figure that a pathway asks for or offers as a goal.</summary>
[JsonPolymorphic(TypeDiscriminatorPropertyName = "kind")]
[JsonDerivedType(typeof(DaysRequirement), "days")]
[JsonDerivedType(typeof(HoursRequirement), "hours")]
[JsonDerivedType(typeof(AverageRequirement), "average")]
[JsonDerivedType(typeof(MonthsRequirement), "months")]
[JsonDerivedType(typeof(TermsRequirement), "terms")]
[JsonDerivedType(typeof(AnyOf), "any-of")]
[JsonDerivedType(typeof(AllOf), "all-of")]
[JsonDerivedType(typeof(JudgedRequirement), "judge")]
public abstract record Requirement
{
    /// <summary>Unique within the pathway.</summary>
    public required string Id { get; init; }

    /// <summary>What is measured, in a few words.</summary>
    public required string Name { get; init; }
    public required FigureStatus Status { get; init; }
    public required Source Source { get; init; }

    /// <summary>Null for all grades.</summary>
    public Grades? Grades { get; init; }
    public int? FromAge { get; init; }

    /// <summary>It ends with the day before this birthday.</summary>
    public int? UnderAge { get; init; }

    /// <summary>A condition that the log cannot show: offered, never assumed.</summary>
    public string? When { get; init; }
    public string? Note { get; init; }

    [JsonIgnore]
    public virtual IReadOnlyList<Requirement> Parts => [];

    [JsonIgnore]
    public IEnumerable<Requirement> WithParts => Parts.SelectMany(p => p.WithParts).Prepend(this);

    /// <summary>Whether it is a requirement without anybody's choosing it.</summary>
    [JsonIgnore]
    public bool Binds => Status == FigureStatus.Required && When is null;
}

/// <summary>Over what the figure is asked.</summary>
public enum Per
{
    Year,
    Quarter,
    Half,
}

/// <summary>School days.</summary>
public sealed record DaysRequirement : Requirement
{
    /// <summary>At least so many; null where it is set locally and the family enters it.</summary>
    public int? Days { get; init; }

    /// <summary>Minutes that a day must reach to count; reaching them exactly counts. Null for the family's own minimum day.</summary>
    public int? MinutesADay { get; init; }
    public Per Per { get; init; }
}

/// <summary>Hours of instruction.</summary>
public sealed record HoursRequirement : Requirement
{
    /// <summary>At least so many, in quarter hours; null where it is set locally and the family enters it.</summary>
    public decimal? Hours { get; init; }

    /// <summary>Ids of the pathway's subjects whose hours count, as one pool; null for all.</summary>
    public IReadOnlyList<string>? Subjects { get; init; }

    /// <summary>Where the hours must be taught; null for anywhere.</summary>
    public Place? Place { get; init; }
    public Per Per { get; init; }
}

/// <summary>A daily average over a number of days: met when the minutes of the year reach the product.</summary>
public sealed record AverageRequirement : Requirement
{
    public required int MinutesADay { get; init; }
    public required int OverDays { get; init; }
}

/// <summary>Calendar months in which there was instruction.</summary>
public sealed record MonthsRequirement : Requirement
{
    public required int Months { get; init; }
}

/// <summary>The hours of each term, which a periodic report states.</summary>
public sealed record TermsRequirement : Requirement
{
    public required int Terms { get; init; }

    /// <summary>The share of a year's hours that is held against them, a guide; null for none.</summary>
    public decimal? Hours { get; init; }
}

/// <summary>One of several is enough.</summary>
public sealed record AnyOf : Requirement
{
    public required IReadOnlyList<Requirement> Of { get; init; }

    [JsonIgnore]
    public override IReadOnlyList<Requirement> Parts => Of;
}

/// <summary>All of several, where an alternative has several parts.</summary>
public sealed record AllOf : Requirement
{
    public required IReadOnlyList<Requirement> Of { get; init; }

    [JsonIgnore]
    public override IReadOnlyList<Requirement> Parts => Of;
}

/// <summary>Something that no log can decide: the text says what, and the family judges.</summary>
public sealed record JudgedRequirement : Requirement
{
    public required string Text { get; init; }
}
