namespace CoopLessons.Core.Prepare.Printing;

/// <summary>How many copies are made: one for each who takes part, one for the family, or a number.</summary>
public enum CopyRule { OneEach, OneForFamily, Number }

/// <summary>What of a file is printed, for whom and how.</summary>
/// <param name="Pages">As <see cref="PageRanges"/> reads them; empty for all.</param>
/// <param name="FromAge">Who takes part from this age on, in years of the work they do as versions by level count them; null for everybody.</param>
/// <param name="ToAge">This age included; null for everybody.</param>
/// <param name="Number">How many, where the rule is a number: 1 to <see cref="MostCopies"/>; else 1.</param>
/// <param name="Up">Pages on a side: 1 or 2.</param>
/// <param name="Names">A copy that is somebody's bears their name.</param>
public sealed record PrintChoice(
    string Pages, int? FromAge, int? ToAge, CopyRule Copies, int Number, bool Colour, int Up, bool Names)
{
    public const int MostCopies = 20;
    public const int OldestAge = 18;

    /// <summary>All pages, one each, grey, a page a side, with names.</summary>
    public static PrintChoice Usual { get; } = new("", null, null, CopyRule.OneEach, 1, Colour: false, Up: 1, Names: true);

    /// <summary>Whether it is meant for somebody whose work is of an age.</summary>
    public bool Suits(int age) => age >= (FromAge ?? 0) && age <= (ToAge ?? int.MaxValue);

    /// <summary>The copies for those who take part.</summary>
    /// <param name="learners">In the family's order, each with the age of their work.</param>
    /// <returns>None where it is meant for some and none of them takes part.</returns>
    public IReadOnlyList<PacketCopy> CopiesFor(IReadOnlyList<(PacketLearner Learner, int Age)> learners)
    {
        var suited = learners.Where(l => Suits(l.Age)).Select(l => l.Learner).ToList();
        return suited.Count == 0 ? [] : Copies switch
        {
            CopyRule.OneEach => [.. suited.Select(l => new PacketCopy(l.Id, Names ? l.Name : null))],
            CopyRule.OneForFamily => [PacketCopy.Nobodys],
            _ => [.. Enumerable.Repeat(PacketCopy.Nobodys, Number)],
        };
    }
}

/// <summary>A learner, as far as a packet needs to know them.</summary>
public sealed record PacketLearner(Guid Id, string Name);

/// <summary>One copy of a piece.</summary>
/// <param name="LearnerId">Whose it is; null for one that is the family's.</param>
/// <param name="Name">What is printed at its head; null for nothing.</param>
public sealed record PacketCopy(Guid? LearnerId, string? Name)
{
    public static PacketCopy Nobodys { get; } = new(null, null);
}
