namespace CoopLessons.Core.Coop;

/// <summary>
/// What a co-op asks of the adults in a room and of the size of a class. The figures begin a co-op's thought and do not end
/// it: local rules, an insurer or the owner of a room may ask for more, and theirs come first.
/// </summary>
/// <remarks>
/// All of it is common practice. The ratios and two adults in each room stand in Oregon State University, Youth Program Best
/// Practices, https://blogs.oregonstate.edu/youthsafety/basics/best-practices/ (read); that a couple counts as one and that
/// guests do not count, in the adult supervision requirements of the Unitarian Universalist Association,
/// https://www.uua.org/youth/adults-ministry/safety-guidelines/adult-supervision-requirements/adult-youth-ratios (read).
/// Size and span of a class, and how mixed ages are added, are common practice, no source.
/// </remarks>
public sealed record CoverRules
{
    public static CoverRules Usual { get; } = new();

    /// <summary>Adults of different households in each room with children; 0 asks for none.</summary>
    public int LeastUnrelated { get; init; } = 2;

    /// <summary>Whether adults of one household or family count as one of <see cref="LeastUnrelated"/>.</summary>
    public bool HouseholdCountsAsOne { get; init; } = true;

    /// <summary>Whether guests count, for <see cref="LeastUnrelated"/> as for the ratios.</summary>
    public bool GuestsCount { get; init; }

    /// <summary>So many children to an adult where the co-op meets; 1 and more.</summary>
    public int ChildrenOnSite { get; init; } = 10;

    /// <summary>So many elsewhere; 1 and more.</summary>
    public int ChildrenOffSite { get; init; } = 8;

    /// <summary>So many young ones, wherever; 1 and more. Where the other figure is smaller, that one holds.</summary>
    public int YoungChildren { get; init; } = 5;

    /// <summary>Below this age, in completed years, a child is a young one.</summary>
    public int YoungBelow { get; init; } = 8;

    /// <summary>Children in a class, inclusive; null sets no limit.</summary>
    public int? MostChildren { get; init; } = 8;

    /// <summary>Years from the youngest to the oldest of a class, inclusive; null sets no limit.</summary>
    public int? MostYearsApart { get; init; } = 3;

    /// <summary>Whether what an activity holds is held against the allergies of those in the room.</summary>
    public bool HeedsAllergies { get; init; } = true;

    /// <summary>One sentence for each figure that cannot be; nothing where all is well.</summary>
    public IReadOnlyList<string> Faults()
    {
        var faults = new List<string>();
        if (LeastUnrelated < 0)
            faults.Add("The number of unrelated adults is to be 0 or more.");
        if (ChildrenOnSite < 1 || ChildrenOffSite < 1 || YoungChildren < 1)
            faults.Add("An adult minds at least one child.");
        if (YoungBelow < 0)
            faults.Add("The age below which children are young is to be 0 or more.");
        if (MostChildren < 1)
            faults.Add("A class has room for at least one child.");
        if (MostYearsApart < 0)
            faults.Add("The span of ages is to be 0 or more years.");
        return faults;
    }
}
