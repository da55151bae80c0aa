namespace CoopLessons.Core.Prepare;

/// <summary>What sort of getting ready it is; in the order in which a week's list is told within a day.</summary>
public enum ReadyKind { StartAhead, Borrow, Gather, Print, ReadAloud }

/// <summary>One thing to do before or in a week, so that what is planned can be done.</summary>
/// <param name="By">The last day on which it is in time; that day included. It may lie before today: then it is told so, and nothing is blamed.</param>
/// <param name="What">What to do, as one would write it on a note: "Fetch 3 books from the library".</param>
/// <param name="For">What it is for, or empty.</param>
/// <param name="Link">Where it is done, as a path of this site.</param>
public sealed record ReadyTask(ReadyKind Kind, DateOnly By, string What, string For, string Link, bool Done);
