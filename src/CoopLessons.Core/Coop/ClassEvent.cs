namespace CoopLessons.Core.Coop;

/// <summary>Something that happened to the list of a class.</summary>
public abstract record ClassEvent;

/// <summary>A family signs up one child, or two of its children who come together or not at all.</summary>
/// <param name="Id">Of the sign-up.</param>
/// <param name="Children">One or two; none of them has or awaits a place already.</param>
public sealed record SignedUp(Guid Id, Guid Family, IReadOnlyList<Guid> Children) : ClassEvent;

/// <summary>A child wants no place any longer, whether it has one or waits. Of a pair the other stays, alone.</summary>
public sealed record Withdrew(Guid Child) : ClassEvent;

/// <summary>The class takes another number of children. A smaller one takes a place from nobody.</summary>
/// <param name="Size">0 and more.</param>
public sealed record Resized(int Size) : ClassEvent;
