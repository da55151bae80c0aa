namespace CoopLessons.Web.Pages.Records;

/// <summary>The ways from a page to the same page of another learner or year.</summary>
/// <param name="Route">The page's name.</param>
public sealed record Choosers(LearnerYearPage Page, string Route);
