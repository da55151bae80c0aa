namespace CoopLessons.Core.Coop;

/// <summary>An adult has a role at a meeting.</summary>
public sealed record RotaTurn(DateOnly Meeting, Guid Role, Guid Adult);

/// <summary>What a rota is good for, in the order in which it counts: a later part never costs an earlier one anything.</summary>
public enum RotaPart { Filled, Turns, Roles, Wishes, Pace }

/// <summary>The price of a rota, part by part; lower is better, and the first part in which two differ decides.</summary>
/// <param name="Unfilled">Places that nobody has.</param>
/// <param name="Turns">
/// How far the families’ weighted turns, with past balances, are from their fair shares. The first turn’s worth of a
/// distance counts once, the second twice, and so on, so that four families a turn away are better than two by two turns.
/// Unit: a hundredth of a weighted turn, divided by the sum of all shares.
/// </param>
/// <param name="Roles">The same for each role by itself, in turns that all count one, without the past. Unit: a turn divided by the sum of all shares.</param>
/// <param name="Wishes">Weights of what is rather not, less those of what is liked: below 0 where more is met.</param>
/// <param name="Pace">
/// How far each family’s turns up to each meeting are from an even pace towards its own turns in the end, beyond one turn.
/// Unit: a turn divided by the number of meetings.
/// </param>
public sealed record RotaCost(int Unfilled, long Turns, long Roles, long Wishes, long Pace) : IComparable<RotaCost>
{
    public long this[RotaPart part] => part switch
    {
        RotaPart.Filled => Unfilled,
        RotaPart.Turns => Turns,
        RotaPart.Roles => Roles,
        RotaPart.Wishes => Wishes,
        _ => Pace,
    };

    public int CompareTo(RotaCost? other) => other is null ? 1
        : (Unfilled, Turns, Roles, Wishes, Pace).CompareTo((other.Unfilled, other.Turns, other.Roles, other.Wishes, other.Pace));

    public static bool operator <(RotaCost left, RotaCost right) => left.CompareTo(right) < 0;
    public static bool operator >(RotaCost left, RotaCost right) => left.CompareTo(right) > 0;
    public static bool operator <=(RotaCost left, RotaCost right) => left.CompareTo(right) <= 0;
    public static bool operator >=(RotaCost left, RotaCost right) => left.CompareTo(right) >= 0;
}

/// <summary>Why an adult has a turn; the first that holds.</summary>
public enum TurnReasonKind
{
    /// <summary>Nobody else who is there may have it.</summary>
    OnlyOne,

    /// <summary>It was liked.</summary>
    Liked,

    /// <summary>Of the families with somebody for it, none was further below its share by then.</summary>
    FurthestBelow,

    /// <summary>Of the families with somebody for it, none had had this role less often by then.</summary>
    RoleLeastOften,

    /// <summary>None of these: so the turns come out as even in the end as they do.</summary>
    EvenInTheEnd,
}

/// <summary>The figures behind a reason.</summary>
/// <param name="Candidates">Adults who were there and may have it, this one among them.</param>
/// <param name="WeightedBefore">Weighted turns of the family at earlier meetings of the term.</param>
/// <param name="RoleBefore">Its turns in this role at earlier meetings.</param>
/// <param name="InTheEnd">Its weighted turns of the whole term.</param>
public sealed record TurnReason(TurnReasonKind Kind, int Candidates, int WeightedBefore, int RoleBefore, int InTheEnd);

/// <summary>A turn and why.</summary>
public sealed record RotaAssignment(RotaTurn Turn, TurnReason Reason);

/// <summary>What a family did, open to all.</summary>
/// <param name="Turns">How many.</param>
/// <param name="Weighted">Their weights together.</param>
/// <param name="ByRole">How many of each role, in the order of the problem’s roles.</param>
/// <param name="FairHundredths">Its share of all places of the term and of all past balances, in hundredths of a weighted turn; the shares add up exactly.</param>
/// <param name="DistanceHundredths">Above its share, or, below 0, under it, with the past: the past balance of the next term.</param>
public sealed record RotaBalance(Guid Family, int Turns, int Weighted, IReadOnlyList<int> ByRole, int FairHundredths, int DistanceHundredths);

/// <summary>Turns for a term.</summary>
/// <param name="Assignments">By meeting, then in the order of roles and adults.</param>
/// <param name="Gaps">Places that nobody has, and why.</param>
/// <param name="Balances">In the order of the families.</param>
/// <param name="Proven">The parts that are proven least, from the first on; each of them under all before it.</param>
/// <param name="CutShort">The safety net of wall time stopped the work: the same input may give another rota.</param>
public sealed record Rota(
    IReadOnlyList<RotaAssignment> Assignments, IReadOnlyList<RotaGap> Gaps, IReadOnlyList<RotaBalance> Balances, RotaCost Cost, IReadOnlyList<RotaPart> Proven, bool CutShort)
{
    public IReadOnlyList<RotaTurn> Turns => [.. Assignments.Select(a => a.Turn)];

    /// <summary>Whether no rota is better under the stated rules and wishes.</summary>
    public bool IsBest => Proven.Count == Enum.GetValues<RotaPart>().Length;
}
