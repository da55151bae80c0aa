using CoopLessons.Core.Prepare;

namespace CoopLessons.Web.Pages.Week.Ready;

/// <summary>One part of getting ready as the page shows it.</summary>
/// <param name="Empty">What is said where there is nothing to do.</param>
/// <param name="Doors">Where the part is worked on, with the words of the link.</param>
public sealed record ReadyPart(string Id, string Title, IReadOnlyList<ReadyTask> Tasks, string Empty, DateOnly Today, IReadOnlyList<(string Path, string Words)> Doors);
