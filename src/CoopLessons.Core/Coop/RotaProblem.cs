namespace CoopLessons.Core.Coop;

/// <summary>A role that turns: teaching, hosting, minding the small.</summary>
/// <param name="Name">As it stands in a list: “Teaching”.</param>
/// <param name="Weight">What one turn counts, 1 to 20; the co-op chooses the scale.</param>
/// <param name="Places">How many have it at each meeting, 0 and more.</param>
public sealed record RotaRole(Guid Id, string Name, int Weight, int Places)
{
    /// <summary>The adults who may have it; null where all may.</summary>
    public IReadOnlyCollection<Guid>? Only { get; init; }
}

/// <summary>A family of the co-op.</summary>
public sealed record RotaFamily(Guid Id, string Name)
{
    /// <summary>How large its fair share is beside the others’, 1 to 100.</summary>
    public int Share { get; init; } = 1;

    /// <summary>What it did above (or, below 0, under) its fair share before, in hundredths of a weighted turn.</summary>
    public int PastHundredths { get; init; }
}

/// <summary>An adult who takes turns. One who left stays in the list, and is away from then on.</summary>
public sealed record RotaAdult(Guid Id, string Name, Guid Family)
{
    /// <summary>The same for those who are a couple or live together, also over two families.</summary>
    public Guid? Household { get; init; }
}

/// <summary>An adult is not at a meeting.</summary>
public sealed record RotaAbsence(Guid Adult, DateOnly Meeting);

/// <summary>What an adult likes or would rather not.</summary>
/// <param name="Weight">Above 0 for what is liked, below 0 for what is rather not; -100 to 100, not 0.</param>
/// <param name="Role">Null for any.</param>
/// <param name="Meeting">Null for each.</param>
public sealed record RotaWish(Guid Adult, int Weight, Guid? Role = null, DateOnly? Meeting = null);

/// <summary>A room in which roles are done, at each meeting. It opens with enough adults, or stays shut and its places empty.</summary>
/// <param name="Name">As it stands after “in”: “the barn”.</param>
/// <param name="Roles">Each role is done in one room at most.</param>
public sealed record RotaRoom(Guid Id, string Name, IReadOnlyList<Guid> Roles)
{
    /// <summary>Adults of different households, 0 and more; see <see cref="CoverRules.LeastUnrelated"/>.</summary>
    public int LeastUnrelated { get; init; } = 2;

    /// <summary>Adults in all, 0 and more, as <see cref="Cover.AdultsNeeded"/> gives them for the children of the room.</summary>
    public int LeastAdults { get; init; }
}

/// <summary>The turns of a term: at each meeting each role has its places, and an adult has one role at a meeting.</summary>
/// <param name="Meetings">Ascending, each once.</param>
public sealed record RotaProblem(
    IReadOnlyList<DateOnly> Meetings, IReadOnlyList<RotaRole> Roles, IReadOnlyList<RotaFamily> Families, IReadOnlyList<RotaAdult> Adults)
{
    public IReadOnlyList<RotaAbsence> Absences { get; init; } = [];
    public IReadOnlyList<RotaWish> Wishes { get; init; } = [];
    public IReadOnlyList<RotaRoom> Rooms { get; init; } = [];
}
