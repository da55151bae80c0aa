using CoopLessons.Core.Units;

namespace CoopLessons.Web.Pages.Units;

/// <summary>The usual cautions in words. None of them ever says that something is safe.</summary>
public static class CautionWords
{
    public const string Judgement = "These cautions do not replace your own judgement, labels, or medical and local safety advice.";

    /// <summary><c>wheat for Wren; small parts for Pip, who is 2</c>.</summary>
    public static string Brief(IEnumerable<Caution> cautions) => string.Join("; ", cautions.Select(c => c switch
    {
        AllergenMet a => (What: UnitWords.Joined(a.Met.Select(UnitWords.Of)), Who: $"for {a.Learner.Name}"),
        SmallPartsMet s => (What: UnitWords.Of(s.Kind), Who: $"for {s.Learner.Name}, who is {s.Learner.Age}"),
        YoungerThanWritten y => (What: $"written for {y.YoungestAge} and older", Who: $"{y.Learner.Name} is {y.Learner.Age}"),
        NearerAdult n => (What: $"{UnitWords.Of(n.Usual)} for {UnitWords.Of(n.Kind)}", Who: $"for {n.Learner.Name}, who is {n.Learner.Age}"),
        WithinReach w => (What: $"{UnitWords.Joined(w.Kinds.Select(UnitWords.Of))} out of reach", Who: $"for {w.Learner.Name}, who is {w.Learner.Age}"),
        _ => throw new ArgumentOutOfRangeException(nameof(cautions)),
    }).Distinct().Select(x => x.Who.StartsWith("for ", StringComparison.Ordinal) ? $"{x.What} {x.Who}" : $"{x.What}, and {x.Who}"));

    /// <summary>What meets whom, and what is usually done about it.</summary>
    public static string Full(Caution caution) => caution switch
    {
        AllergenMet a => $"{a.Ingredient} holds {UnitWords.Joined(a.Met.Select(UnitWords.Of))}, and {a.Learner.Name} is allergic to {(a.Met.Count == 1 ? "it" : "them")}. "
            + $"Leave it out or use something else, read every label for traces, keep hands, boards and crumbs apart, and follow what {a.Learner.Name}’s doctor told you.",
        SmallPartsMet s => $"There are {(s.Kind == HazardKind.SmallParts ? "small parts" : $"{UnitWords.Of(s.Kind)}, small enough to swallow,")} in this, and {s.Learner.Name} is {s.Learner.Age}. "
            + $"Small parts can choke a child under {Cautions.SmallPartsAge} (16 CFR Part 1501). Keep them away from {s.Learner.Name}, count them before and after, and clear up before the little ones come near.",
        YoungerThanWritten y => $"This is written for {y.YoungestAge} and older, and {y.Learner.Name} is {y.Learner.Age}. Decide whether {y.Learner.Name} joins in, and stay within reach.",
        NearerAdult n => $"This involves {UnitWords.Of(n.Kind)}, and is written for {(n.Usual == AdultNeed.Beside ? "a child alone" : "less of an adult than is usual")}. "
            + $"For {n.Learner.Name}, who is {n.Learner.Age}, {UnitWords.Of(n.Usual)} is usual (common practice). You know your child: decide who stays near.",
        WithinReach w => $"{w.Learner.Name} is {w.Learner.Age} and takes no part. This involves {UnitWords.Joined(w.Kinds.Select(UnitWords.Of))}: keep it out of {w.Learner.Name}’s reach, "
            + "do it while somebody else has the little ones, or during a nap.",
        _ => throw new ArgumentOutOfRangeException(nameof(caution)),
    };
}
