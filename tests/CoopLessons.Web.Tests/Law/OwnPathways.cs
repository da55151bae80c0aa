using CoopLessons.Core.Requirements;

namespace CoopLessons.Web.Tests.Law;

/// <summary>Pathways of a family's own, small enough to read at a glance.</summary>
internal static class OwnPathways
{
    private static readonly Source Ours = new("our own", Basis.Family, new DateOnly(2026, 3, 1));

    /// <summary>170 days, and 600 hours of reading and mathematics.</summary>
    public static Pathway Small(string name) => new(
        "", name, "A year as we want it.", Ours, new DutyAges(Ours),
        [new("reading", "Reading", true, ["reading"], Ours), new("mathematics", "Mathematics", true, ["mathematics"], Ours)],
        [
            new DaysRequirement { Id = "days", Name = "school days", Status = FigureStatus.Required, Source = Ours, Days = 170, MinutesADay = 180 },
            new HoursRequirement { Id = "core-hours", Name = "hours in core subjects", Status = FigureStatus.Required, Source = Ours, Hours = 600, Subjects = ["reading", "mathematics"] },
        ],
        [], [], []);
}
