namespace CoopLessons.Core.Tests.Requirements;

/// <summary>What a source outside the project publishes on the time of one pathway.</summary>
/// <param name="Code">ISO 3166-2 code of the jurisdiction.</param>
/// <param name="Pathway">Id of the pathway within it.</param>
/// <param name="Ages">Ages of compulsory attendance, "from-to" in years, one side empty where it is not known.</param>
/// <param name="Figures">
/// Every figure in one canonical line, sorted ordinally, its status last. Minutes a day after "at" and "average",
/// hours after "hours"; "when" marks a condition that no log shows, "any: " an alternative, "any-all: " one part
/// of an alternative that has several.
/// </param>
/// <param name="Source">The statute or document behind the row, and how it was read.</param>
internal sealed record PublishedFigure(string Code, string Pathway, string Ages, string[] Figures, string Source);
