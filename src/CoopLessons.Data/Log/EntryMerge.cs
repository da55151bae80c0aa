using CoopLessons.Core.Hours;

namespace CoopLessons.Data.Log;

/// <summary>
/// Two writings of one entry that began from the same text, put together field by field: what only one of both changed
/// comes from that one, what both changed alike is as both say. Children's minutes are fields by themselves; subjects are
/// one field, since shares mean something only together.
/// </summary>
/// <param name="Merged">What holds where nothing collides; elsewhere what was there first holds.</param>
/// <param name="Collides">Whether both changed a field, each otherwise.</param>
public sealed record EntryMerge(EntryFacts Merged, bool Collides)
{
    /// <param name="from">What both began from.</param>
    /// <param name="first">What is written already.</param>
    /// <param name="second">What came later.</param>
    public static EntryMerge Of(EntryFacts from, EntryFacts first, EntryFacts second)
    {
        var collides = false;
        var times = first.Times.Concat(second.Times).Concat(from.Times).Select(t => t.LearnerId).Distinct()
            .Select(id => (Learner: id, Minutes: Field(MinutesOf(from, id), MinutesOf(first, id), MinutesOf(second, id))))
            .Where(t => t.Minutes is not null).Select(t => new LearnerTime(t.Learner, new Minutes(t.Minutes!.Value))).ToList();
        var counts = Field(Counts.Of(from), Counts.Of(first), Counts.Of(second));
        var merged = new EntryFacts(
            Field(from.Date, first.Date, second.Date), Field(from.StartsAt, first.StartsAt, second.StartsAt), Field(from.What, first.What, second.What),
            Field(from.Place, first.Place, second.Place), Field(from.Note, first.Note, second.Note), times, counts.Facts.Split, counts.Facts.Touches);
        // Each took the other's last child out: nobody would be left.
        return times.Count == 0 ? new EntryMerge(first, true) : new EntryMerge(merged, collides);

        T Field<T>(T old, T one, T other)
        {
            var same = EqualityComparer<T>.Default;
            if (same.Equals(one, other) || same.Equals(old, other))
                return one;
            if (!same.Equals(old, one))
                collides = true;
            return same.Equals(old, one) ? other : one;
        }
    }

    private static int? MinutesOf(EntryFacts facts, Guid learner) => facts.Times.FirstOrDefault(t => t.LearnerId == learner)?.Minutes.Value;

    /// <summary>Subjects' shares and touches; the same however they were ordered.</summary>
    private sealed record Counts(EntryFacts Facts)
    {
        public static Counts Of(EntryFacts facts) => new(facts);

        public bool Equals(Counts? other) => other is not null
            && Facts.Split.ToHashSet().SetEquals(other.Facts.Split) && Facts.Touches.ToHashSet().SetEquals(other.Facts.Touches);

        public override int GetHashCode() => Facts.Split.Count * 31 + Facts.Touches.Count;
    }
}
