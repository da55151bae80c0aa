namespace CoopLessons.Documents;

/// <summary>How far the writing of a paper is.</summary>
/// <param name="Step">A sentence without a full stop.</param>
/// <param name="Share">0 to 1, never falling.</param>
public sealed record PaperProgress(string Step, double Share);
