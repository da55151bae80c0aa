using CoopLessons.Core.Schedule;
using CoopLessons.Web.Pages.Units;

namespace CoopLessons.Web.Pages.Week;

/// <summary>What the week's page says of the weeks that belong to nothing yet.</summary>
public static class SlackWords
{
    /// <summary><c>17 teaching weeks left in 2025–26: 6 are spoken for, 11 are free.</c></summary>
    public static string Line(string year, Slack slack) =>
        $"{UnitWords.Count(slack.Owned, "teaching week", "teaching weeks")} left in {year}: {slack.Committed} {(slack.Committed == 1 ? "is" : "are")} spoken for, "
        + (slack.Left < 0 ? $"{-slack.Left} more than there are." : $"{slack.Left} {(slack.Left == 1 ? "is" : "are")} free.");

    /// <summary>Null while the free weeks do not go faster than the year.</summary>
    public static string? Warning(Slack slack) => !slack.GoesFast ? null
        : slack.AtFirst <= 0
            ? $"{UnitWords.Count(slack.Used, "week", "weeks")} went by with nothing in the log, and no week was free. Something ahead will have to give way."
        : $"The free weeks go faster than the year: {slack.Used} of {slack.AtFirst} {(slack.Used == 1 ? "is" : "are")} used, and {slack.Gone} of {slack.OwnedAtFirst} teaching weeks are gone.";
}
