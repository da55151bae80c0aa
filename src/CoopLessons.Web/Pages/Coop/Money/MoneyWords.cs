using System.Globalization;
using CoopLessons.Core.Coop;
using CoopLessons.Data.Coops.Money;
using AccountWords = CoopLessons.Core.Coop.CoopWords;

namespace CoopLessons.Web.Pages.Coops;

/// <summary>How a co-op's money is told.</summary>
public static class MoneyWords
{
    /// <summary>Stands on the page of the money.</summary>
    public const string NothingLeaves = "Nothing is charged here, and nothing leaves this server. It keeps who paid what; the money goes from hand to hand, as you do it.";

    /// <summary>“$41.37”; below 0 “−$0.05”.</summary>
    public static string Of(long cents) => (cents < 0 ? "−$" : "$") + AccountWords.Money(Math.Abs(cents));

    /// <summary>As it is typed: “41.37”.</summary>
    public static string Plain(int cents) => AccountWords.Money(cents);

    /// <summary>How a family stands.</summary>
    public static string Stands(long net) => net switch
    {
        0 => "even",
        > 0 => $"is owed {Of(net)}",
        _ => $"owes {Of(-net)}",
    };

    /// <summary>What is known about the number of payments.</summary>
    public static string Fewest(Settled settled) => (settled.Payments.Count, settled.IsLeast) switch
    {
        (0, _) => "All are even.",
        (1, _) => "One payment makes all even.",
        (var count, true) => $"{count} payments make all even; fewer do not.",
        (var count, false) => $"{count} payments make all even.",
    };

    /// <summary>How shares come about, in a sentence.</summary>
    public static string Divided(CoopExpense expense)
    {
        var learners = expense.Shares.Sum(s => s.Learners);
        var bearers = expense.Shares.Count(s => s.Learners > 0);
        var by = expense.By == SharedBy.Learner ? $"{learners} {(learners == 1 ? "child" : "children")} of {Count(bearers)}" : Count(expense.Shares.Count);
        return $"{Of(expense.Cents)} divided over {by}. Where it does not divide evenly, the odd cents go to those whose exact share is nearest to the next cent, so that the shares add up to the cent.";
    }

    /// <summary>The rule by which a fee is given back, the same for all.</summary>
    public static string Rule(CoopFee fee) => string.Create(CultureInfo.InvariantCulture,
        $"A family that says before {fee.WholeBefore:d MMMM yyyy} that it leaves gets the whole back. From that day on it gets the part of the term’s meetings that are still to come after the day on which it says so, rounded down to the cent. The rule is the same for all.");

    /// <summary>“$20.00 a family and $5.00 a child, at most $40.00”.</summary>
    public static string Rates(TermFee fee)
    {
        string[] parts = [.. fee.FamilyCents > 0 || fee.LearnerCents == 0 ? [$"{Of(fee.FamilyCents)} a family"] : Array.Empty<string>(), .. fee.LearnerCents > 0 ? [$"{Of(fee.LearnerCents)} a child"] : Array.Empty<string>()];
        return string.Join(" and ", parts) + (fee.MostCents is { } most ? $", at most {Of(most)}" : "");
    }

    private static string Count(int families) => families == 1 ? "1 family" : $"{families} families";
}
