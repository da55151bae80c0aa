using CoopLessons.Core.Requirements;

namespace CoopLessons.Web.Pages.Families.Law;

/// <summary>What a pathway leaves to the family.</summary>
public static class SpanChoices
{
    /// <summary>Figures that bind nobody and may be taken as goals; of an alternative as a whole, not once more its parts.</summary>
    public static IEnumerable<Requirement> Goals(Pathway pathway) => pathway.Requirements.SelectMany(Goals);

    /// <summary>Figures without a number, which is set locally.</summary>
    public static IEnumerable<Requirement> Local(Pathway pathway) =>
        pathway.AllRequirements.Where(r => r is DaysRequirement { Days: null } or HoursRequirement { Hours: null });

    private static IEnumerable<Requirement> Goals(Requirement asked) => asked.Binds ? asked.Parts.SelectMany(Goals) : [asked];
}
