using CoopLessons.Data.Families;
using CoopLessons.Data.Tenancy;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;

namespace CoopLessons.Data.Coops.Turns;

/// <summary>Who has a turn, by the names at that time, so that it is still known when the family has left.</summary>
public sealed record TurnTaker(Guid AdultId, string Adult, Guid FamilyId, string Family);

/// <summary>An adult has a role at a meeting. It stays when the adult, the family or the role go.</summary>
public sealed class CoopTurn : ICoopOwned
{
    public const int LongestWhy = 300;

    private CoopTurn() { }

    public CoopTurn(TurnTerm term, Guid meetingId, Guid roleId, string role, int weight, TurnTaker who, string why)
    {
        (CoopId, TermId, MeetingId, RoleId, Role, Weight) = (term.CoopId, term.Id, meetingId, roleId, role, weight);
        (AdultId, Adult, FamilyId, Family) = (who.AdultId, who.Adult, who.FamilyId, who.Family);
        Why = why.Length <= LongestWhy ? why : why[..LongestWhy];
    }

    public Guid CoopId { get; private set; }
    public Guid MeetingId { get; private set; }
    public Guid RoleId { get; private set; }
    public Guid AdultId { get; private set; }
    public Guid FamilyId { get; private set; }
    public Guid TermId { get; private set; }
    public string Role { get; private set; } = "";

    /// <summary>What it counted when it was given.</summary>
    public int Weight { get; private set; }
    public string Adult { get; private set; } = "";
    public string Family { get; private set; } = "";

    /// <summary>Why this adult, in a sentence.</summary>
    public string Why { get; private set; } = "";

    internal sealed class Mapping : IEntityTypeConfiguration<CoopTurn>
    {
        public void Configure(EntityTypeBuilder<CoopTurn> b)
        {
            b.HasKey(t => new { t.CoopId, t.MeetingId, t.RoleId, t.AdultId });
            b.HasIndex(t => new { t.CoopId, t.TermId });
            b.Property(t => t.Role).HasMaxLength(TurnRole.LongestName);
            b.Property(t => t.Adult).HasMaxLength(People.Person.LongestName);
            b.Property(t => t.Family).HasMaxLength(Data.Families.Family.LongestName);
            b.Property(t => t.Why).HasMaxLength(LongestWhy);
        }
    }
}
