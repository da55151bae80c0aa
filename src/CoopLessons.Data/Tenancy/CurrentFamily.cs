namespace CoopLessons.Data.Tenancy;

/// <summary>A row that belongs to one family. Its family stands first in its key.</summary>
public interface IFamilyOwned
{
    Guid FamilyId { get; }
}

/// <summary>A row that belongs to nobody, since it outlasts whom it was about: it names nobody and holds nothing of theirs.</summary>
public interface IOwnedByNobody;

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

    /// <summary>The family's tablet on which this is done; null where a person does it.</summary>
    public Guid? TabletId { get; private set; }

    /// <summary>The child whose list is open on it.</summary>
    public Guid? LearnerId { get; private set; }

    /// <summary>The co-ops that the family belongs to now; rows of others are not there for it.</summary>
    public IReadOnlyList<Guid> Coops { get; private set; } = [];

    /// <summary>Raised when any part changes, so that an open connection can be told.</summary>
    public int Version { get; private set; }

    public void Act(Guid familyId, Guid personId, Role role)
    {
        (FamilyId, PersonId, Role) = (familyId, personId, role);
        (TabletId, LearnerId, Coops) = (null, null, []);
        Version++;
    }

    public void BelongTo(IReadOnlyList<Guid> coops)
    {
        Coops = coops;
        Version++;
    }

    /// <summary>The family founds or joins a co-op with what is saved next.</summary>
    public void Enter(Guid coopId) => BelongTo([.. Coops.Where(c => c != coopId), coopId]);

    /// <summary>On the family's tablet nobody acts but the child whose list is open, if any.</summary>
    public void ActOnTablet(Guid familyId, Guid tabletId, Guid? learnerId)
    {
        (FamilyId, PersonId, Role) = (familyId, null, learnerId is null ? null : Tenancy.Role.Learner);
        (TabletId, LearnerId, Coops) = (tabletId, learnerId, []);
        Version++;
    }

    /// <summary>Nobody acts any more.</summary>
    public void Leave()
    {
        (FamilyId, PersonId, Role, TabletId, LearnerId, Coops) = (null, null, null, null, null, []);
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

    /// <summary>A child on the family's tablet: the child's own list, nothing else. No person has this part.</summary>
    Learner,
}
