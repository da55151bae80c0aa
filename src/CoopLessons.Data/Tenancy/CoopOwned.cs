namespace CoopLessons.Data.Tenancy;

/// <summary>A row that belongs to a co-op: its families read it. Its co-op stands first in its key.</summary>
public interface ICoopOwned
{
    Guid CoopId { get; }
}

/// <summary>A row of a co-op that one family put there: the co-op's families read it, that family alone writes it.</summary>
public interface IShownByFamily : ICoopOwned
{
    Guid FamilyId { get; }
}
