namespace CoopLessons.Core.Families;

/// <summary>A subject as the family names it. A list of subjects is always in the family's own order.</summary>
public sealed record Subject(Guid Id, string Name);
