using CoopLessons.Core.Units;

namespace CoopLessons.Web.Pages.Units;

/// <summary>The usual cautions in words. None of them ever says that something is safe.</summary>
public static class CautionWords
{
    public const string Judgement = "These cautions do not replace your own judgement, labels, or medical and local safety advice.";

    /// <summary><c>wheat for Wren; somebody beside for blades for Linnet, who is 10, and Wren, who is 7</c>.</summary>
    public static string Brief(IEnumerable<Caution> cautions) => string.Join("; ", cautions.GroupBy(c => c switch
    {
        AllergenMet a => $"{UnitWords.Joined(a.Met.Select(UnitWords.Of))} for",
        SmallPartsMet s => $"{UnitWords.Of(s.Kind)} for",
        YoungerThanWritten y => $"written for {y.YoungestAge} and older, and",
        NearerAdult n => $"{UnitWords.Of(n.Usual)} for {UnitWords.Of(n.Kind)} for",
        WithinReach w => $"{UnitWords.Joined(w.Kinds.Select(UnitWords.Of))} out of reach for",
        _ => throw new ArgumentOutOfRangeException(nameof(cautions)),
    }).Select(g => g.First() is YoungerThanWritten
        ? $"{g.Key} {UnitWords.Joined(g.Select(c => $"{c.Learner.Name} is {c.Learner.Age}"))}"
        : $"{g.Key} {Named(g.Select(c => c.Learner), withAge: g.First() is not AllergenMet)}"));

    /// <summary>What meets whom, and what is usually done about it; children for whom the same holds are named together.</summary>
    public static IReadOnlyList<string> Told(IEnumerable<Caution> cautions)
    {
        var all = cautions.ToList();
        return
        [
            .. all.Where(c => c is not NearerAdult).Select(Full),
            .. all.OfType<NearerAdult>().GroupBy(n => (n.Kind, n.Usual)).Select(g => Nearer(g.Key.Kind, g.Key.Usual, Named(g.Select(n => n.Learner), withAge: true))),
        ];
    }

    /// <summary>What meets whom, and what is usually done about it.</summary>
    public static string Full(Caution caution) => caution switch
    {
        AllergenMet a => $"{a.Ingredient} holds {UnitWords.Joined(a.Met.Select(UnitWords.Of))}, and {a.Learner.Name} is allergic to {(a.Met.Count == 1 ? "it" : "them")}. "
            + $"Leave it out or use something else, read every label for traces, keep hands, boards and crumbs apart, and follow what {a.Learner.Name}’s doctor told you.",
        SmallPartsMet s => $"There are {(s.Kind == HazardKind.SmallParts ? "small parts" : $"{UnitWords.Of(s.Kind)}, small enough to swallow,")} in this, and {s.Learner.Name} is {s.Learner.Age}. "
            + $"Small parts can choke a child under {Cautions.SmallPartsAge} (16 CFR Part 1501). Keep them away from {s.Learner.Name}, count them before and after, and clear up before the little ones come near.",
        YoungerThanWritten y => $"This is written for {y.YoungestAge} and older, and {y.Learner.Name} is {y.Learner.Age}. Decide whether {y.Learner.Name} joins in, and stay within reach.",
        NearerAdult n => Nearer(n.Kind, n.Usual, Named([n.Learner], withAge: true)),
        WithinReach w => $"{w.Learner.Name} is {w.Learner.Age} and takes no part. This involves {UnitWords.Joined(w.Kinds.Select(UnitWords.Of))}: keep it out of {w.Learner.Name}’s reach, "
            + "do it while somebody else has the little ones, or during a nap.",
        _ => throw new ArgumentOutOfRangeException(nameof(caution)),
    };

    private static string Nearer(HazardKind kind, AdultNeed usual, string whom) =>
        $"This involves {UnitWords.Of(kind)}, and is written for {(usual == AdultNeed.Beside ? "a child alone" : "less of an adult than is usual")}. "
        + $"For {whom}, {UnitWords.Of(usual)} is usual (common practice). You know your children: decide who stays near.";

    private static string Named(IEnumerable<CautionedLearner> learners, bool withAge)
    {
        var all = learners.DistinctBy(l => l.Id).Select(l => withAge ? $"{l.Name}, who is {l.Age}" : l.Name).ToList();
        return withAge && all.Count > 1 ? $"{string.Join(", ", all[..^1])}, and {all[^1]}" : UnitWords.Joined(all);
    }
}
