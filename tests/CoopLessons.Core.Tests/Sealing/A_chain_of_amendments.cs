using CoopLessons.Core.Hours;
using CoopLessons.Core.Sealing;
using static CoopLessons.Core.Tests.AlderLog;

namespace CoopLessons.Core.Tests.Sealing;

public class A_chain_of_amendments
{
    private static readonly YearRecord Sealed = AlderYear.Record();
    private static readonly YearRecord First = Lasting(41).Amending(Sealed, "The clock was wrong", "Iris", AlderYear.Written)!;
    private static readonly YearRecord Second = Lasting(45).Amending(First, "Once more", "Iris", AlderYear.Written.AddDays(1))!;

    private static YearRecord Lasting(int minutes) => AlderYear.Record(AlderYear.Bread with { Learners = [new LearnerTime(Wren, new Minutes(minutes))], Revision = minutes }, AlderYear.Reading);

    private static KeptRecord Kept(YearRecord record) => new(record.Text, record.Fingerprint.Hex);

    [Fact]
    public void Holds_as_it_was_made() => Assert.Empty(SealChain.Faults([Kept(Sealed), Kept(First), Kept(Second)]));

    [Fact]
    public void Each_names_the_fingerprint_before_it_and_tells_what_changed()
    {
        Assert.Equal((1, Sealed.Fingerprint.Hex, "The clock was wrong", "Iris", "2026-11-03T17:04:05Z"), (First.Amendment!.Number, First.Amendment.Before, First.Amendment.Why, First.Amendment.By, First.Amendment.At));
        Assert.Equal([new RecordChange("3 November 2026, Baked bread", "40 minutes", "41")], First.Amendment.Changes);
        Assert.Equal((2, First.Fingerprint.Hex), (Second.Amendment!.Number, Second.Amendment.Before));
    }

    [Fact]
    public void Nothing_that_changes_nothing_is_an_amendment() => Assert.Null(Lasting(41).Amending(First, "why", "Iris", AlderYear.Written));

    [Fact]
    public void A_minute_changed_in_a_kept_text_is_told_by_its_fingerprint()
    {
        var changed = Sealed.Text.Replace("\"minutes\":40", "\"minutes\":41", StringComparison.Ordinal);
        var fault = Assert.Single(SealChain.Faults([new KeptRecord(changed, Sealed.Fingerprint.Hex), Kept(First)]));
        Assert.Equal($"The sealed record was changed after it was kept: its fingerprint is {Fingerprint.Of(changed).ShortForm} now, and {Sealed.Fingerprint.ShortForm} was given out.", fault);
    }

    [Fact]
    public void A_text_changed_together_with_its_fingerprint_is_told_by_the_next()
    {
        var changed = Lasting(39);
        Assert.Equal(["The record of amendment 1 follows another fingerprint than the one before it."], SealChain.Faults([Kept(changed), Kept(First)]));
    }

    [Fact]
    public void One_taken_out_is_told() => Assert.Equal(
        ["The record of amendment 1 says that it is amendment 2: one is missing or was put between."], SealChain.Faults([Kept(Sealed), Kept(Second)]));

    [Fact]
    public void One_that_nobody_can_read_is_told() => Assert.Equal(["The sealed record cannot be read."], SealChain.Faults([new KeptRecord("{}", Fingerprint.Of("{}").Hex)]));
}
