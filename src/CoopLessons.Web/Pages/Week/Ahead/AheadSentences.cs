using CoopLessons.Core.Prepare;
using CoopLessons.Data.Prepare;
using CoopLessons.Web.Pages.Today;
using CoopLessons.Web.Pages.Units;

namespace CoopLessons.Web.Pages.Week.Ahead;

/// <summary>How things begun ahead are told.</summary>
public static class AheadSentences
{
    /// <summary>Where it stands, in two or three words.</summary>
    public static string State(AheadLine line, DateOnly today) => line switch
    {
        { NotNeeded: true } => "not needed",
        { Underway: { } underway } => underway.ReadyOn <= today ? "ready" : AheadWords.Begun(line.Start.Kind),
        _ when line.Dates.By < today => "its day to begin is over",
        _ when line.Dates.By == today => "today is the last day",
        _ when line.Dates.From is { } from && from > today => "not yet",
        _ => "can begin",
    };

    /// <summary>When to begin, or how what was begun stands.</summary>
    public static string When(AheadLine line, DateOnly today)
    {
        var needed = $"needed {(line.DayIsSet ? "on" : "in the week from")} {line.NeededOn.InWords(today)}";
        if (line.Underway is { } underway)
        {
            var ready = underway.ReadyOn <= today ? "ready since" : "ready on";
            var keeps = underway.KeepsUntil is { } until ? $", good until {until.InWords(today)}" : "";
            return $"{Capital(AheadWords.Begun(line.Start.Kind))} on {line.Mark!.BegunOn!.Value.InWords(today)}, {ready} {underway.ReadyOn.InWords(today)}{keeps}; {needed}.";
        }

        var begin = AheadWords.Begin(line.Start.Kind);
        return line.Dates.From is { } from && from < line.Dates.By
            ? $"{begin} from {from.InWords(today)} to {line.Dates.By.InWords(today)}; {needed}."
            : line.Dates.From is null ? $"{begin} by {line.Dates.By.InWords(today)}; {needed}." : $"{begin} on {line.Dates.By.InWords(today)}; {needed}.";
    }

    /// <summary>When somebody sees to it; empty where nobody need.</summary>
    public static string Tending(AheadLine line, DateOnly today)
    {
        if (line.Start.TendEveryDays == 0)
            return "";
        var often = line.Start.TendEveryDays == 1 ? "every day" : $"every {line.Start.TendEveryDays} days";
        var next = line.TendNext(today) is { } day ? $", next {(day == today ? "today" : $"on {day.InWords(today)}")}" : "";
        return $"{AheadWords.Tend(line.Start.Kind)} {often}{next}.";
    }

    /// <summary>What the plan's change did to something begun already; empty where all is well.</summary>
    public static string Trouble(AheadLine line, DateOnly today)
    {
        if (line.Underway is not { NeedsThought: true } underway)
            return "";
        var moved = underway.Slid == 0 ? "" : $"“{line.Activity.Title}” is {UnitWords.Count(Math.Abs(underway.Slid), "day", "days")} {(underway.Slid > 0 ? "later" : "earlier")} than when this was {AheadWords.Begun(line.Start.Kind)}, and what is {AheadWords.Begun(line.Start.Kind)} does not move with it. ";
        var outcome = underway.Outcome switch
        {
            AheadOutcome.NotReadyYet => $"It will not be ready: it lacks {UnitWords.Count(underway.DaysOff, "day", "days")}. Move the activity to {underway.ReadyOn.InWords(today)} or later.",
            AheadOutcome.PastItsTime => $"It will be past its time by {UnitWords.Count(underway.DaysOff, "day", "days")}. {AheadWords.WhenLater(line.Start.Kind)} Or begin it anew{Window(line, today)}.",
            _ => underway.Slid > 0 ? $"It is still in time. {AheadWords.WhenLater(line.Start.Kind)}" : "It is still in time.",
        };
        return moved + outcome;
    }

    /// <summary>What to do where its last day to begin went by; empty where it did not.</summary>
    public static string TooLate(AheadLine line, DateOnly today) =>
        line.Underway is null && !line.NotNeeded && line.Dates.By < today
            ? $"Begun today, it is ready on {today.AddDays(line.Start.TakesDays).InWords(today)}. Move the activity there, use something ready-made, or leave it out."
            : "";

    private static string Window(AheadLine line, DateOnly today) =>
        line.Dates.By < today ? "" : line.Dates.From is { } from && from > today ? $" from {from.InWords(today)} to {line.Dates.By.InWords(today)}" : $" by {line.Dates.By.InWords(today)}";

    private static string Capital(string words) => char.ToUpperInvariant(words[0]) + words[1..];
}
