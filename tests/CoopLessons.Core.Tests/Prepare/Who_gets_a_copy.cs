using CoopLessons.Core.Prepare.Printing;

namespace CoopLessons.Core.Tests.Prepare;

public class Who_gets_a_copy
{
    private static readonly IReadOnlyList<(PacketLearner Learner, int Age)> Taking =
        [(new(new Guid(1, 0, 0, new byte[8]), "Heron"), 12), (new(new Guid(2, 0, 0, new byte[8]), "Linnet"), 9), (new(new Guid(3, 0, 0, new byte[8]), "Wren"), 6)];

    [Fact]
    public void Is_everybody_who_takes_part_unless_it_is_said_otherwise() =>
        Assert.Equal(["Heron", "Linnet", "Wren"], PrintChoice.Usual.CopiesFor(Taking).Select(c => c.Name));

    [Fact]
    public void Is_who_works_at_the_ages_both_included() =>
        Assert.Equal(["Linnet", "Wren"], (PrintChoice.Usual with { FromAge = 6, ToAge = 9 }).CopiesFor(Taking).Select(c => c.Name));

    [Fact]
    public void Is_nobody_by_name_where_names_are_not_wished_for()
    {
        var copies = (PrintChoice.Usual with { Names = false }).CopiesFor(Taking);
        Assert.All(copies, c => Assert.Null(c.Name));
        Assert.Equal(Taking.Select(t => (Guid?)t.Learner.Id), copies.Select(c => c.LearnerId));
    }

    [Fact]
    public void Is_the_family_once_or_a_number_of_times()
    {
        Assert.Equal([PacketCopy.Nobodys], (PrintChoice.Usual with { Copies = CopyRule.OneForFamily }).CopiesFor(Taking));
        Assert.Equal(5, (PrintChoice.Usual with { Copies = CopyRule.Number, Number = 5 }).CopiesFor(Taking).Count);
    }

    [Fact]
    public void Is_nobody_where_it_is_meant_for_some_and_none_of_them_takes_part()
    {
        Assert.Empty((PrintChoice.Usual with { FromAge = 13 }).CopiesFor(Taking));
        Assert.Empty((PrintChoice.Usual with { FromAge = 13, Copies = CopyRule.OneForFamily }).CopiesFor(Taking));
        Assert.Empty((PrintChoice.Usual with { Copies = CopyRule.Number, Number = 2 }).CopiesFor([]));
    }
}
