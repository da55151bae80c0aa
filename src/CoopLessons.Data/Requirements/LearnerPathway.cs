using CoopLessons.Core.Requirements;
using CoopLessons.Data.Families;
using CoopLessons.Data.Tenancy;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;

namespace CoopLessons.Data.Requirements;

/// <summary>From which day on a learner stands under which pathway, until the next such row of theirs.</summary>
public sealed class LearnerPathway : IFamilyOwned, IVersioned
{
    /// <summary>As long as an id of the catalog may be.</summary>
    public const int LongestPathwayId = 60;

    private LearnerPathway() { }

    /// <summary>A pathway of the catalog.</summary>
    public LearnerPathway(Guid id, Guid learnerId, string code, string pathwayId, DateOnly from, SpanReason because, DateOnly? countsFrom)
    {
        (Id, LearnerId, Code, PathwayId, Because) = (id, learnerId, code, pathwayId, because);
        Move(from, countsFrom);
    }

    /// <summary>A pathway that the family wrote itself.</summary>
    public LearnerPathway(Guid id, Guid learnerId, OwnPathway own, DateOnly from, SpanReason because)
        : this(id, learnerId, "", own.Id.ToString(), from, because, null) => OwnPathwayId = own.Id;

    public Guid FamilyId { get; private set; }
    public Guid Id { get; private set; }
    public Guid LearnerId { get; private set; }
    public DateOnly From { get; private set; }

    /// <summary>ISO 3166-2, such as US-MO; empty for a pathway of the family's own.</summary>
    public string Code { get; private set; } = "";

    /// <summary>The id in the catalog, or that of the family's own pathway.</summary>
    public string PathwayId { get; private set; } = "";

    /// <summary>Set for a pathway of the family's own, so that the database keeps it while it is named.</summary>
    public Guid? OwnPathwayId { get; private set; }
    public SpanReason Because { get; private set; }

    /// <summary>Where nothing counts before a paper is in: the day it was in.</summary>
    public DateOnly? CountsFrom { get; private set; }

    /// <summary>Ids of figures that bind nobody and that the family takes as its own.</summary>
    public List<string> Goals { get; private set; } = [];

    /// <summary>Figures that are set locally, by the requirement's id: days as days, hours as hours.</summary>
    public Dictionary<string, decimal> Figures { get; private set; } = [];
    public int Version { get; private set; }

    public void Move(DateOnly from, DateOnly? countsFrom) => (From, CountsFrom) = (from, countsFrom);

    public void Explain(SpanReason because) => Because = because;

    public void Choose(IEnumerable<string> goals, IReadOnlyDictionary<string, decimal> figures)
    {
        Goals = [.. goals.Distinct().Order(StringComparer.Ordinal)];
        Figures = new(figures.OrderBy(f => f.Key, StringComparer.Ordinal));
    }

    internal sealed class Mapping : IEntityTypeConfiguration<LearnerPathway>
    {
        public void Configure(EntityTypeBuilder<LearnerPathway> b)
        {
            b.HasKey(p => new { p.FamilyId, p.Id });
            b.HasIndex(p => new { p.FamilyId, p.LearnerId, p.From }).IsUnique();
            b.Property(p => p.Code).HasMaxLength(8);
            b.Property(p => p.PathwayId).HasMaxLength(LongestPathwayId);
            b.Property(p => p.Goals).AsJson();
            b.Property(p => p.Figures).AsJson();
            b.HasOne<Learner>().WithMany().HasForeignKey(p => new { p.FamilyId, p.LearnerId }).OnDelete(DeleteBehavior.Cascade);
            // No action rather than restrict: where the whole family goes, both go with it.
            b.HasOne<OwnPathway>().WithMany().HasForeignKey(p => new { p.FamilyId, p.OwnPathwayId }).OnDelete(DeleteBehavior.NoAction);
        }
    }
}
