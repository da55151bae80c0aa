using System.Globalization;
using CoopLessons.Core.Calendar;
using CoopLessons.Core.Requirements.Forecasts;

namespace CoopLessons.Core.Requirements.Standing;

/// <summary>The sentences that say in numbers where a figure stands.</summary>
internal static class StandingWords
{
    private const int MinutesOfADay = 24 * 60;

    /// <summary>What is counted: <c>hours of core at home</c>, <c>days of at least 4 hours</c>.</summary>
    public static string Counted(Requirement requirement, int value = 2) => requirement switch
    {
        HoursRequirement h => Unit(Measure.Minutes, value) + (h.Subjects is null ? "" : " of core") + (h.Place is null ? "" : " at home"),
        DaysRequirement { MinutesADay: { } minutes } => $"{Unit(Measure.Days, value)} of at least {new Quantity(minutes, Measure.Minutes)}",
        DaysRequirement => Unit(Measure.Days, value),
        MonthsRequirement => Unit(Measure.Months, value),
        _ => Unit(Measure.Minutes, value),
    };

    public static string Total(Requirement of, Verdict verdict, Quantity measured, Quantity full, Quantity? part, LegalWindow own, Forecast? forecast)
    {
        var progress = $"{measured.Figure} of {full.Figure} {Counted(of, full.Value)}";
        return verdict switch
        {
            Verdict.Met => $"{progress}: met.",
            Verdict.NotMet => $"{Missing(of, measured, full)}: {measured.Figure} of {full.Figure}.",
            Verdict.OnPace => $"{progress}, on pace{Spare(forecast!.Outlook!.SpareDays)}.",
            Verdict.Behind when forecast!.TeachingDaysLeft == 0 => $"{progress}, and no teaching day is left in your calendar.",
            Verdict.Behind => $"{progress}, behind: the last weeks lead to about {(measured with { Value = forecast!.Outlook!.YearEnd.P50 }).Figure}{Needed(forecast, measured.Measure)}.",
            Verdict.CannotTellYet => $"{progress}{Needed(forecast!, measured.Measure)}. A forecast needs three whole weeks of log.",
            _ => $"{progress}. {Partly(own, part)}",
        };
    }

    /// <summary>Such as <c>20 hours of core at home are missing</c>.</summary>
    public static string Missing(Requirement of, Quantity measured, Quantity full)
    {
        var missing = measured.MissingTo(full);
        var one = missing.Value == (missing.Measure == Measure.Minutes ? 60 : 1);
        return $"{missing.Figure} {Counted(of, missing.Value)} {(one ? "is" : "are")} missing";
    }

    public static string Months(MonthsRequirement of, Verdict verdict, Quantity measured, int left)
    {
        var still = $"{new Quantity(left, Measure.Months)} {(left == 1 ? "is" : "are")} still to come";
        return $"{measured.Figure} of {new Quantity(of.Months, Measure.Months)}{(verdict == Verdict.OnPace ? $", on pace: {still}" : left == 0 ? ", and none is still to come" : $", behind: only {still}")}.";
    }

    public static string NothingAsked(LearnerFacts learner, LegalWindow own) =>
        own.Why.Count > 0 ? $"Nothing is asked of {learner.Name} in this year: {Together(own.Why)}." : $"Nothing is asked of {learner.Name} in this year.";

    public static string Average(int minutes, int days, int asked) => days == 0
        ? "No day has been taught yet."
        : $"Over the {days.ToString("N0", CultureInfo.InvariantCulture)} days taught that is {new Quantity(minutes / days, Measure.Minutes)} a day on average{(minutes < (long)asked * days ? $", under the {new Quantity(asked, Measure.Minutes)} of the law" : "")}.";

    public static string UnderTheDay(int days, int minimum) => days == 0 ? ""
        : $" {days.ToString("N0", CultureInfo.InvariantCulture)} logged {(days == 1 ? "day stays" : "days stay")} under {new Quantity(minimum, Measure.Minutes)} and {(days == 1 ? "does" : "do")} not count.";

    public static string Marked(int days) => days == 0 ? "" : $" {days.ToString("N0", CultureInfo.InvariantCulture)} of the counted days {(days == 1 ? "is" : "are")} marked by hand.";

    public static string Group(Requirement group, Verdict verdict, IReadOnlyList<RequirementStanding> parts)
    {
        var told = parts.Where(p => p.Verdict != Verdict.NotAsked).ToList();
        if (told.Count == 0)
            return "None of this is asked here.";
        if (group is AnyOf && verdict == Verdict.Met)
            return told.First(p => p.Verdict == Verdict.Met).Why + (told.Count > 1 ? " One is enough." : "");
        var joined = string.Join(group is AnyOf ? " Or: " : " And: ", told.Select(p => p.Why).Distinct());
        return group is AnyOf && told.Count > 1 ? "One of these is enough. " + joined : joined;
    }

    public static string Part(int number, DayRange days, Quantity measured, Quantity? full) =>
        $"Part {number}, {days.First.Plain()} to {days.Last.Plain()}: {measured}{(full is { } f ? $" of {f.Figure}" : "")}.";

    public static string Parts(Requirement of, IReadOnlyList<RequirementStanding> parts)
    {
        var figures = string.Join(" · ", parts.Select(p => p.Measured!.Value.Figure));
        var full = parts.Count > 0 && parts[0].Target is { } target ? $", beside {target.Figure} each" : "";
        return $"{figures} {Counted(of)} in the {parts.Count} parts of the year{full}.";
    }

    public static string Together(IReadOnlyList<string> clauses) =>
        clauses.Count < 2 ? string.Concat(clauses) : string.Join(", ", clauses.Take(clauses.Count - 1)) + " and " + clauses[^1];

    private static string Partly(LegalWindow own, Quantity? part) =>
        $"{OnlyAPart(own)} Cut down to those days the figure would be {part}: arithmetic, not law.";

    /// <summary>Which part of a year is asked, and why.</summary>
    public static string OnlyAPart(LegalWindow own) =>
        $"Only {own.Asked!.Value.First.Plain()} to {own.Asked.Value.Last.Plain()} is asked{(own.Why.Count > 0 ? $", because {Together(own.Why)}" : "")}.";

    private static string Needed(Forecast forecast, Measure measure)
    {
        if (forecast.NeededADay is not { } day)
            return "";
        var (one, missing) = (forecast.TeachingDaysLeft == 1, new Quantity(forecast.Missing, measure));
        var left = $"{forecast.TeachingDaysLeft.ToString("N0", CultureInfo.InvariantCulture)} teaching {(one ? "day" : "days")}";
        if (day > (measure == Measure.Minutes ? MinutesOfADay : 1))
            return $"; {missing} are missing, and {left} {(one ? "is" : "are")} left";
        return measure == Measure.Minutes
            ? $"; {new Quantity(day, measure)} on {(one ? "the" : "each of the")} {left} left would reach it"
            : $"; {missing} in the {left} left would reach it";
    }

    public static string Spare(int? days) => days switch
    {
        null => "",
        0 => " with no day to spare",
        1 => " with 1 day to spare",
        _ => $" with {days} days to spare",
    };

    private static string Unit(Measure measure, int value) => new Quantity(value, measure).Unit;
}
