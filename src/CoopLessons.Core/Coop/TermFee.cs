namespace CoopLessons.Core.Coop;

/// <summary>What a family pays for a term.</summary>
/// <param name="FamilyCents">For the family, whatever its size; 0 and more.</param>
/// <param name="LearnerCents">For each learner; 0 and more.</param>
/// <param name="MostCents">No family pays more than this; null sets no limit.</param>
public sealed record TermFee(int FamilyCents, int LearnerCents, int? MostCents = null)
{
    /// <summary>In cents. A family without learners pays the family's part.</summary>
    /// <exception cref="ArgumentException">A negative figure.</exception>
    public int For(int learners)
    {
        if (learners < 0 || FamilyCents < 0 || LearnerCents < 0 || MostCents < 0)
            throw new ArgumentException("Fees and learners are 0 or more.", nameof(learners));
        var due = checked(FamilyCents + learners * LearnerCents);
        return MostCents is { } most ? Math.Min(due, most) : due;
    }
}

/// <summary>
/// The one rule by which a co-op gives a term's fee back, the same for all: the whole before a date; from that date on the
/// part of the meetings that are still to come after the day on which the family says so, rounded down to the cent.
/// </summary>
/// <param name="WholeBefore">Exclusive: on this date itself the part counts.</param>
/// <param name="Meetings">All of the term, each once, in any order. A meeting on the day itself is no longer to come.</param>
public sealed record RefundRule(DateOnly WholeBefore, IReadOnlyList<DateOnly> Meetings)
{
    /// <param name="paidCents">What the family paid, 0 and more.</param>
    /// <param name="saidOn">The day on which it said that it leaves.</param>
    /// <exception cref="ArgumentException">A negative figure, no meeting, or one twice.</exception>
    public Refund Of(int paidCents, DateOnly saidOn)
    {
        if (paidCents < 0)
            throw new ArgumentException("What was paid is 0 or more.", nameof(paidCents));
        if (Meetings.Count == 0 || Meetings.Distinct().Count() < Meetings.Count)
            throw new ArgumentException("A term has meetings, each of them once.", nameof(paidCents));
        var left = Meetings.Count(m => m > saidOn);
        var whole = saidOn < WholeBefore;
        var cents = whole ? paidCents : (int)((long)paidCents * left / Meetings.Count);
        return new Refund(cents, paidCents, whole, left, Meetings.Count);
    }
}

/// <summary>What a family gets back, and by which part of the rule.</summary>
/// <param name="Whole">Said in time for the whole.</param>
/// <param name="Left">Meetings still to come.</param>
/// <param name="All">Meetings of the term.</param>
public sealed record Refund(int Cents, int PaidCents, bool Whole, int Left, int All)
{
    public string Sentence => CoopWords.Refund(this);
}
