using System.Security.Cryptography;
using System.Text;
using CoopLessons.Core.Prepare.Supplies;
using CoopLessons.Data.Tenancy;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;

namespace CoopLessons.Data.Prepare.Supplies;

/// <summary>What a family says of a good, set together.</summary>
/// <param name="Name">As the family calls it; another word than the activities' does not make another good of it.</param>
/// <param name="Pack">How it is sold; null where nobody wrote that down.</param>
/// <param name="Place">A place in the shop or a shop, or empty.</param>
/// <param name="GramsPerCup">What a cup of it weighed; null where nobody weighed one.</param>
/// <param name="UsedUp">Whether it is gone afterwards; null where the usual holds.</param>
/// <param name="AlwaysThere">Never bought, such as water from the tap.</param>
/// <param name="SameAsId">The good that it is only another name for.</param>
public sealed record GoodFacts(string Name, Pack? Pack, string Place, decimal? GramsPerCup, bool? UsedUp, bool AlwaysThere, Guid? SameAsId);

/// <summary>
/// Something that activities need, as the family knows it. Its id follows from the family and the name, so that a line of a
/// list has one before anybody wrote anything about it.
/// </summary>
public sealed class Good : IFamilyOwned, IVersioned
{
    public const int LongestName = 120;
    public const int LongestPlace = 40;

    private Good() { }

    public Good(Guid familyId, string name)
    {
        Key = GoodName.Key(name);
        Id = IdFor(familyId, Key);
        Describe(new GoodFacts(GoodName.Proper(name), null, "", null, null, IsTapWater(Key), null));
    }

    public Guid FamilyId { get; private set; }
    public Guid Id { get; private set; }

    /// <summary>By which the supplies of activities find it; see <see cref="GoodName"/>.</summary>
    public string Key { get; private set; } = "";
    public string Name { get; private set; } = "";
    public decimal? PackSize { get; private set; }
    public string? PackMeasure { get; private set; }

    /// <summary>Price of a pack in whole cents.</summary>
    public int? PackCents { get; private set; }
    public string Place { get; private set; } = "";
    public decimal? GramsPerCup { get; private set; }
    public bool? UsedUp { get; private set; }
    public bool AlwaysThere { get; private set; }
    public Guid? SameAsId { get; private set; }
    public int Version { get; private set; }

    public Pack? Pack => PackSize is { } size && Measures.Find(PackMeasure) is { } measure ? new Pack(size, measure, PackCents) : null;

    public GoodTerms Terms => new(GramsPerCup, UsedUp);

    /// <summary>The id of the family's good of that key, whether it was written down or not: a name-based UUID (RFC 9562, version 8).</summary>
    public static Guid IdFor(Guid familyId, string key)
    {
        Span<byte> hash = stackalloc byte[SHA256.HashSizeInBytes];
        SHA256.HashData([.. familyId.ToByteArray(bigEndian: true), .. Encoding.UTF8.GetBytes(key)], hash);
        hash[6] = (byte)(hash[6] & 0x0F | 0x80);
        hash[8] = (byte)(hash[8] & 0x3F | 0x80);
        return new Guid(hash[..16], bigEndian: true);
    }

    /// <summary>Water comes from the tap unless the family says otherwise (common practice, no source).</summary>
    public static bool IsTapWater(string key) => key is "water" or "tap water" or "cold tap water" or "warm water" or "cold water" or "clean water";

    /// <exception cref="ArgumentException">It would be the same as itself.</exception>
    public void Describe(GoodFacts facts)
    {
        if (facts.SameAsId == Id)
            throw new ArgumentException("A good is not another name for itself.", nameof(facts));
        (Name, Place, GramsPerCup, UsedUp, AlwaysThere, SameAsId) = (facts.Name, facts.Place, facts.GramsPerCup, facts.UsedUp, facts.AlwaysThere, facts.SameAsId);
        (PackSize, PackMeasure, PackCents) = (facts.Pack?.Size, facts.Pack?.Measure.Word, facts.Pack?.Cents);
    }

    internal sealed class Mapping : IEntityTypeConfiguration<Good>
    {
        public void Configure(EntityTypeBuilder<Good> b)
        {
            b.HasKey(g => new { g.FamilyId, g.Id });
            b.Property(g => g.Id).ValueGeneratedNever();
            b.Property(g => g.Key).HasMaxLength(2 * LongestName);
            b.Property(g => g.Name).HasMaxLength(LongestName);
            b.Property(g => g.PackMeasure).HasMaxLength(ShelfCount.LongestMeasure);
            b.Property(g => g.Place).HasMaxLength(LongestPlace);
            b.Ignore(g => g.Pack).Ignore(g => g.Terms);
            b.HasIndex(g => new { g.FamilyId, g.Key }).IsUnique();
            b.HasOne<Good>().WithMany().HasForeignKey(g => new { g.FamilyId, g.SameAsId }).OnDelete(DeleteBehavior.NoAction);
        }
    }
}
