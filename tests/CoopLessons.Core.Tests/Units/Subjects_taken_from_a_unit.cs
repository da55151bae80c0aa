using CoopLessons.Core.Units;
using CsCheck;
using static CoopLessons.Core.Tests.AlderLog;

namespace CoopLessons.Core.Tests.Units;

public class Subjects_taken_from_a_unit
{
    [Fact]
    public void All_of_them_leave_the_activity_as_it_is()
    {
        var taken = TakenSubjects.Of([2.Of(Science), 1.Of(Arithmetic)], [Art.Id], new HashSet<Guid>());

        Assert.Equal([2.Of(Science), 1.Of(Arithmetic)], taken!.Split);
        Assert.Equal([Art.Id], taken.Touches);
    }

    [Fact]
    public void Take_all_its_minutes_while_a_subject_left_out_becomes_a_touch()
    {
        var taken = TakenSubjects.Of([2.Of(Science), 1.Of(Arithmetic)], [Art.Id], new HashSet<Guid> { Science.Id });
        var ledger = WrensLedger(Entry(1, Tuesday, 45, split: taken!.Split, touches: taken.Touches));

        Assert.Equal(45, ledger.In(Arithmetic.Id).Value);
        Assert.Equal(0, ledger.In(Science.Id).Value);
        Assert.Equal([Science.Id, Art.Id], taken.Touches);
    }

    [Fact]
    public void None_of_them_leave_the_activity_out() =>
        Assert.Null(TakenSubjects.Of([2.Of(Science)], [Art.Id], new HashSet<Guid> { Science.Id }));

    [Fact]
    public void A_touch_of_a_subject_left_out_stays_a_touch() =>
        Assert.Equal([Art.Id], TakenSubjects.Of([2.Of(Science)], [Art.Id], new HashSet<Guid> { Art.Id })!.Touches);

    [Fact]
    public void A_subject_left_out_and_touched_is_touched_once() =>
        Assert.Equal([Art.Id], TakenSubjects.Of([2.Of(Science), 1.Of(Art)], [Art.Id], new HashSet<Guid> { Art.Id })!.Touches);

    [Fact]
    public void No_subject_of_the_activity_is_lost() =>
        Gen.Select(Gen.Int[1, 9].Array[5], Gen.Bool.Array[5]).Sample((weights, left) =>
        {
            var split = weights.Select((w, i) => w.Of(Subjects[i])).ToList();
            var leftOut = Subjects.Where((_, i) => left[i]).Select(s => s.Id).ToHashSet();
            var taken = TakenSubjects.Of(split, [], leftOut);
            return taken is null
                ? left.All(l => l)
                : taken.Split.SequenceEqual(split.Where(w => !leftOut.Contains(w.SubjectId))) && leftOut.SetEquals(taken.Touches);
        });
}
