using CoopLessons.Core.Coop;
using CoopLessons.Core.Schedule;
using static CoopLessons.Core.Tests.Coop.A_fair_rota;
using static CoopLessons.Core.Tests.Coop.Millrace;

namespace CoopLessons.Core.Tests.Coop;

/// <summary>Somebody falls ill in the middle of a term. Our own examples, worked by hand.</summary>
public class A_rota_that_heals
{
    private static readonly DateOnly[] Days = Thursdays(12);

    private static HealedRota Healed(RotaProblem now, IReadOnlyList<RotaTurn> was, DateOnly from)
    {
        var healed = RotaHealing.Heal(now, was, from, Effort.Longer);
        Assert.Empty(RotaCheck.Faults(now with { Meetings = [.. now.Meetings.Where(m => m >= from)] }, [.. healed.Rota.Turns.Where(t => t.Meeting >= from)]));
        Assert.Equal(was.Where(t => t.Meeting < from).ToHashSet(), healed.Rota.Turns.Where(t => t.Meeting < from).ToHashSet());
        return healed;
    }

    [Fact]
    public void Changes_two_turns_when_two_adults_are_ill_at_once()
    {
        var term = Term(12, Roles());
        var was = RotaPlanning.Solve(term, Effort.Longer).Turns;
        var ill = was.Where(t => t.Meeting == Days[5] && (t.Role == Id("Teaching") || t.Role == Id("Minding"))).ToList();
        var healed = Healed(term with { Absences = [.. ill.Select(t => new RotaAbsence(t.Adult, Days[5]))] }, was, Days[5]);
        Assert.Equal((2, 2, true, true), (healed.Changes.Count, healed.Least, healed.IsLeast, healed.IsWhole));
        Assert.All(healed.Changes, c => Assert.Equal((Days[5], ChangeReasonKind.Away), (c.Meeting, c.Why)));
        Assert.Equal(ill.Select(t => t.Adult).Order(), healed.Changes.Select(c => c.Out!.Value).Order());
        Assert.Equal(was.Where(t => !ill.Contains(t)), healed.Rota.Turns.Where(t => was.Contains(t)));
        Assert.All(healed.Rota.Balances, b => Assert.InRange(b.Turns, 11, 13));
    }

    private static readonly RotaProblem Four = Term(3, [Roles()[0] with { Only = [Id("Iris"), Id("Rue")] }, Roles()[2]], [("Iris", "Alder"), ("Rue", "Birch"), ("Linden", "Cedar"), ("Hazel", "Dogwood")]);

    private static readonly RotaTurn[] Was =
        [new(Days[0], Id("Teaching"), Id("Iris")), new(Days[0], Id("Minding"), Id("Linden")), new(Days[1], Id("Teaching"), Id("Iris")), new(Days[1], Id("Minding"), Id("Rue")), new(Days[2], Id("Teaching"), Id("Rue")), new(Days[2], Id("Minding"), Id("Hazel"))];

    [Fact]
    public void Moves_the_only_other_one_and_fills_the_place_behind()
    {
        // Rue alone may teach in the place of Iris, and leaves the small ones; of those left Hazel had done nothing by then.
        var now = Four with { Absences = [new RotaAbsence(Id("Iris"), Days[1])] };
        var healed = Healed(now, Was, Days[1]);
        Assert.Equal(2, healed.Least);
        Assert.Equal(
            ["Thursday 14 January, “Teaching”: Rue for Iris, who is away; nobody else who is there may have it.",
             "Thursday 14 January, “Minding”: Hazel for Rue, who is needed for another role; of the 3 who could, none is of a family that had done less of its share than Dogwood."],
            healed.Changes.Select(c => CoopWords.Change(now, c)));
        Assert.True(healed.IsWhole && healed.IsLeast);
    }

    [Fact]
    public void Leaves_alone_what_is_over_also_where_somebody_was_away()
    {
        var healed = Healed(Four with { Absences = [new RotaAbsence(Id("Iris"), Days[0])] }, Was, Days[1]);
        Assert.Empty(healed.Changes);
        Assert.Equal(Was.ToHashSet(), healed.Rota.Turns.ToHashSet());
    }

    [Fact]
    public void Cannot_heal_where_all_who_may_are_away_and_says_what_would_help()
    {
        var now = Four with { Absences = [new RotaAbsence(Id("Iris"), Days[1]), new RotaAbsence(Id("Rue"), Days[1])] };
        var healed = Healed(now, Was, Days[1]);
        Assert.False(healed.IsWhole);
        var gap = Assert.Single(healed.Rota.Gaps);
        Assert.Equal((GapRule.AllAway, "On Thursday 14 January everybody who may have “Teaching” is away: Iris and Rue."), (gap.Rule, gap.Sentence));
        Assert.Equal(["One more adult of another family would fill every place.", "If Iris came after all, that would fill every place.", "If Rue came after all, that would fill every place.",
            "If everybody might have “Teaching”, that would fill every place."], gap.Helps.Select(h => h.Sentence));
        // The empty place and the one who minds in the place of Rue.
        Assert.Equal((2, 2), (healed.Changes.Count, healed.Least));
    }

    [Fact]
    public void Shuts_a_room_that_is_left_to_one_household()
    {
        var term = Term(2, [Roles()[0], Roles()[3]], [("Iris", "Alder"), ("Basil", "Alder"), ("Rue", "Birch")]) with { Rooms = [new RotaRoom(Id("barn"), "the barn", [Id("Teaching"), Id("Helping")])] };
        var was = RotaPlanning.Solve(term, Effort.Usual).Turns;
        Assert.Equal(4, was.Count);
        var healed = Healed(term with { Absences = [new RotaAbsence(Id("Rue"), Days[1])] }, was, Days[1]);
        Assert.Equal([GapRule.Unrelated, GapRule.Unrelated], healed.Rota.Gaps.Select(g => g.Rule));
        Assert.Equal("The barn stays shut on Thursday 14 January: two unrelated adults are needed, and of those who may be in it only Iris and Basil are there.", healed.Rota.Gaps[0].Sentence);
        Assert.Equal(["One more adult of another family would fill every place.", "If Rue came after all, that would fill every place."], healed.Rota.Gaps[0].Helps.Select(h => h.Sentence));
    }

    [Fact]
    public void Says_that_a_smaller_class_would_do()
    {
        var term = Term(1, [Roles()[0], Roles()[3] with { Places = 2 }], [("Iris", "Alder"), ("Rue", "Birch")]) with { Rooms = [new RotaRoom(Id("barn"), "the barn", [Id("Teaching"), Id("Helping")]) { LeastAdults = 3 }] };
        var gap = RotaPlanning.Solve(term, Effort.Usual).Gaps[0];
        Assert.Equal(GapRule.TooFew, gap.Rule);
        Assert.Equal(["One more adult of another family would fill every place.", "A class in the barn small enough for two adults would leave one place empty."], gap.Helps.Select(h => h.Sentence));
    }

    [Fact]
    public void Loses_a_meeting_and_needs_no_change()
    {
        var (now, was) = RotaHealing.WithoutMeeting(Four, Was, Days[1]);
        var healed = Healed(now, was, Days[1]);
        Assert.Empty(healed.Changes);
        Assert.Equal(4, healed.Rota.Turns.Count);
    }

    [Fact]
    public void Moves_a_meeting_and_changes_only_who_is_away_on_the_other_day()
    {
        var friday = Days[2].AddDays(1);
        var (now, was) = RotaHealing.WithoutMeeting(Four, Was, Days[1], friday);
        var healed = Healed(now with { Absences = [new RotaAbsence(Id("Rue"), friday)] }, was, Days[1]);
        var change = Assert.Single(healed.Changes);
        Assert.Equal((friday, Id("Minding"), Id("Rue")), (change.Meeting, change.Role, change.Out!.Value));
        Assert.Contains(new RotaTurn(friday, Id("Teaching"), Id("Iris")), healed.Rota.Turns);
    }

    [Fact]
    public void Is_refused_in_words()
    {
        Assert.StartsWith("On Friday 1 January there is no meeting.", Assert.Throws<ArgumentException>(() => RotaHealing.WithoutMeeting(Four, Was, new DateOnly(2027, 1, 1))).Message, StringComparison.Ordinal);
        Assert.StartsWith("On Thursday 7 January there is a meeting already.", Assert.Throws<ArgumentException>(() => RotaHealing.WithoutMeeting(Four, Was, Days[1], Days[0])).Message, StringComparison.Ordinal);
        Assert.StartsWith("A turn that is over names", Assert.Throws<ArgumentException>(() => RotaHealing.Heal(Four, [new RotaTurn(Days[0], Id("Teaching"), Id("Clover"))], Days[1], Effort.Usual)).Message, StringComparison.Ordinal);
    }
}
