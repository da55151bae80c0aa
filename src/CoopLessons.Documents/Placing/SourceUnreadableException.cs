namespace CoopLessons.Documents.Placing;

/// <summary>A file that pages are taken from is not what it was when it was checked, or is gone.</summary>
/// <param name="hash">Names the file, as the plan's pieces do.</param>
public sealed class SourceUnreadableException(string hash, Exception inner) : Exception($"The file {hash} cannot be read any more.", inner)
{
    public string Hash { get; } = hash;
}
