using CoopLessons.Core.Prepare;

namespace CoopLessons.Web.Pages.Week.Ready;

/// <summary>One part of getting ready as the page shows it.</summary>
/// <param name="Empty">What is said where there is nothing to do.</param>
/// <param name="Doors">Where the part is worked on, with the words of the link.</param>
public sealed record ReadyPart(string Id, string Title, IReadOnlyList<ReadyTask> Tasks, string Empty, DateOnly Today, IReadOnlyList<(string Path, string Words)> Doors)
{
    /// <summary>What comes again on several days stands once, with its next day and how many days follow.</summary>
    public IEnumerable<(ReadyTask Task, int More)> Lines => Tasks.GroupBy(t => (t.What, t.For, t.Link, t.Done))
        .Select(g => g.Key.Done ? (g.Last(), 0) : (g.First(), g.Count() - 1));
}
