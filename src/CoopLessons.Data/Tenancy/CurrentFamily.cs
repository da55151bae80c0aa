namespace CoopLessons.Data.Tenancy;

/// <summary>A row that belongs to one family. Its family stands first in its key.</summary>
public interface IFamilyOwned
{
    Guid FamilyId { get; }
}

/// <summary>
/// Whose rows this unit of work may see. Empty until somebody is known to act for a family: with no family set, no
/// family's row can be read or written.
/// </summary>
public sealed class CurrentFamily
{
    public Guid? FamilyId { get; private set; }
    public Guid? PersonId { get; private set; }

    /// <summary>Hash of a link's secret, for the one row which that link opens.</summary>
    public string? LinkHash { get; private set; }

    public Role? Role { get; private set; }

    /// <summary>Raised when any part changes, so that an open connection can be told.</summary>
    public int Version { get; private set; }

    public void Act(Guid familyId, Guid personId, Role role)
    {
        (FamilyId, PersonId, Role) = (familyId, personId, role);
        Version++;
    }

    /// <summary>A signed-in person who has not chosen a family sees only the list of the families that are theirs.</summary>
    public void Know(Guid personId)
    {
        PersonId = personId;
        Version++;
    }

    public void Hold(string linkHash)
    {
        LinkHash = linkHash;
        Version++;
    }

    /// <summary>For the program itself: a command or the demo's making, one family at a time.</summary>
    public void ActForProgram(Guid familyId) => Act(familyId, Guid.Empty, Tenancy.Role.Guardian);
}

/// <summary>What a person may do in a family.</summary>
public enum Role
{
    /// <summary>Everything.</summary>
    Guardian,

    /// <summary>Today's list and the log, nothing else.</summary>
    Helper,
}
