using System.Text.Json;
using CoopLessons.Core.Requirements;
using CoopLessons.Data.Tenancy;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;

namespace CoopLessons.Data.Requirements;

/// <summary>A pathway that the family wrote itself, kept in the shape of the catalog's. It stays while a learner stands under it.</summary>
public sealed class OwnPathway : IFamilyOwned, IVersioned
{
    public const int LongestName = 80;
    public const int LongestJson = 60_000;

    private static readonly JsonSerializerOptions Compact = new(Catalog.Json) { WriteIndented = false };

    private OwnPathway() { }

    public OwnPathway(Guid id, Pathway pathway)
    {
        Id = id;
        Write(pathway);
    }

    public Guid FamilyId { get; private set; }
    public Guid Id { get; private set; }
    public string Name { get; private set; } = "";
    public string Json { get; private set; } = "";
    public int Version { get; private set; }

    /// <summary>The pathway under this row's id and name.</summary>
    /// <exception cref="ArgumentException">It is longer than the row holds.</exception>
    public void Write(Pathway pathway)
    {
        var json = JsonSerializer.Serialize(pathway with { Id = Id.ToString() }, Compact);
        if (json.Length > LongestJson)
            throw new ArgumentException($"A pathway of the family's own has at most {LongestJson} signs.", nameof(pathway));
        (Name, Json) = (pathway.Name, json);
    }

    /// <summary>Null where the text is no longer of the pathway's shape.</summary>
    public Pathway? Read()
    {
        try
        {
            return JsonSerializer.Deserialize<Pathway>(Json, Catalog.Json);
        }
        catch (JsonException)
        {
            return null;
        }
    }

    /// <summary>Whether a learner stands or stood under it; the database then refuses to remove it.</summary>
    public Task<bool> IsNamedAsync(AppDb db, CancellationToken ct) => db.LearnerPathways.AnyAsync(p => p.OwnPathwayId == Id, ct);

    internal sealed class Mapping : IEntityTypeConfiguration<OwnPathway>
    {
        public void Configure(EntityTypeBuilder<OwnPathway> b)
        {
            b.HasKey(p => new { p.FamilyId, p.Id });
            b.Property(p => p.Name).HasMaxLength(LongestName);
            b.Property(p => p.Json).HasMaxLength(LongestJson);
        }
    }
}
