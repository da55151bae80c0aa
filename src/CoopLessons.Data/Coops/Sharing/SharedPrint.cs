using CoopLessons.Data.Files;
using CoopLessons.Data.Prepare.Printing;
using CoopLessons.Data.Tenancy;
using CoopLessons.Data.Units;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;

namespace CoopLessons.Data.Coops.Sharing;

/// <summary>A file to print from that travels with a revision, since its author said that it may.</summary>
public sealed class SharedPrint : IShownByFamily, IAppendOnly
{
    private SharedPrint() { }

    /// <param name="file">As it lies on the author's shelf; the same bytes lie on the co-op's.</param>
    public SharedPrint(SharedRevision revision, string activity, PrintSource source, StoredFile file)
    {
        (CoopId, FamilyId, SharedUnitId, Number) = (revision.CoopId, revision.FamilyId, revision.SharedUnitId, revision.Number);
        (Activity, Printable, FileName) = (activity, source.Printable, source.FileName);
        (Hash, Kind, Bytes, Pages) = (file.Hash, file.Kind, file.Bytes, file.Pages);
    }

    public Guid CoopId { get; private set; }
    public Guid FamilyId { get; private set; }
    public Guid SharedUnitId { get; private set; }
    public int Number { get; private set; }

    /// <summary>The activity's code.</summary>
    public string Activity { get; private set; } = "";
    public string Printable { get; private set; } = "";
    public string FileName { get; private set; } = "";
    public string Hash { get; private set; } = "";
    public StoredKind Kind { get; private set; }
    public long Bytes { get; private set; }
    public int Pages { get; private set; }

    public TravellingPrint Travelling => new(Activity, Printable, FileName, Hash, Kind, Bytes, Pages);

    internal sealed class Mapping : IEntityTypeConfiguration<SharedPrint>
    {
        public void Configure(EntityTypeBuilder<SharedPrint> b)
        {
            b.HasKey(p => new { p.CoopId, p.SharedUnitId, p.Number, p.Activity, p.Printable });
            b.Property(p => p.Activity).HasMaxLength(40);
            b.Property(p => p.Printable).HasMaxLength(PrintSource.LongestTitle);
            b.Property(p => p.FileName).HasMaxLength(PrintSource.LongestFileName);
            b.Property(p => p.Hash).HasMaxLength(64);
            b.Ignore(p => p.Travelling);
            b.HasOne<SharedRevision>().WithMany().HasForeignKey(p => new { p.CoopId, p.SharedUnitId, p.Number }).OnDelete(DeleteBehavior.Cascade);
        }
    }
}
