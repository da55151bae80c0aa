using CoopLessons.Data.Coops.Days;
using CoopLessons.Data.Tenancy;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;

namespace CoopLessons.Data.Coops.Turns;

/// <summary>A family says of one of its adults which role is liked, or rather not had.</summary>
public sealed class TurnWish : IShownByFamily
{
    private TurnWish() { }

    public TurnWish(CoopAdult adult, Guid roleId, bool liked) => (CoopId, FamilyId, AdultId, RoleId, Liked) = (adult.CoopId, adult.FamilyId, adult.Id, roleId, liked);

    public Guid CoopId { get; private set; }
    public Guid FamilyId { get; private set; }
    public Guid AdultId { get; private set; }
    public Guid RoleId { get; private set; }

    /// <summary>False where it is rather not had.</summary>
    public bool Liked { get; private set; }

    public void Be(bool liked) => Liked = liked;

    internal sealed class Mapping : IEntityTypeConfiguration<TurnWish>
    {
        public void Configure(EntityTypeBuilder<TurnWish> b) => b.HasKey(w => new { w.CoopId, w.AdultId, w.RoleId });
    }
}

/// <summary>
/// An adult is not at a meeting, as the family said, or a leader who heard of it. The co-op's own row: a leader writes it on
/// the morning on which a family cannot.
/// </summary>
public sealed class AdultAway : ICoopOwned
{
    private AdultAway() { }

    public AdultAway(CoopAdult adult, Guid meetingId, string saidBy) =>
        (CoopId, FamilyId, AdultId, MeetingId, SaidBy) = (adult.CoopId, adult.FamilyId, adult.Id, meetingId, saidBy);

    public Guid CoopId { get; private set; }
    public Guid MeetingId { get; private set; }
    public Guid AdultId { get; private set; }
    public Guid FamilyId { get; private set; }

    /// <summary>Which family said it, by its name at that time.</summary>
    public string SaidBy { get; private set; } = "";

    internal sealed class Mapping : IEntityTypeConfiguration<AdultAway>
    {
        public void Configure(EntityTypeBuilder<AdultAway> b)
        {
            b.HasKey(a => new { a.CoopId, a.MeetingId, a.AdultId });
            b.Property(a => a.SaidBy).HasMaxLength(Data.Families.Family.LongestName);
        }
    }
}
