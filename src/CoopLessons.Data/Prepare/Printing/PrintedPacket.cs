using CoopLessons.Core.Calendar;
using CoopLessons.Core.Prepare.Printing;
using CoopLessons.Data.Log;
using CoopLessons.Data.Tenancy;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;

namespace CoopLessons.Data.Prepare.Printing;

/// <summary>A week's packet as it lies on paper since somebody said that it is printed.</summary>
public sealed class PrintedPacket : IFamilyOwned, IAppendOnly
{
    private PrintedPacket() { }

    /// <param name="copies">The whole packet as it stands now, also where only what changed was printed.</param>
    /// <param name="at">UTC.</param>
    public PrintedPacket(Guid id, Week week, IReadOnlyList<PrintedCopy> copies, Author by, DateTime at)
    {
        (Id, Week, By, PrintedAt) = (id, week.Iso, by.Name, at);
        Copies = [.. copies];
    }

    public Guid FamilyId { get; private set; }
    public Guid Id { get; private set; }

    /// <summary>As ISO 8601 writes it.</summary>
    public string Week { get; private set; } = "";
    public DateTime PrintedAt { get; private set; }
    public string By { get; private set; } = "";
    public List<PrintedCopy> Copies { get; private set; } = [];

    internal sealed class Mapping : IEntityTypeConfiguration<PrintedPacket>
    {
        public void Configure(EntityTypeBuilder<PrintedPacket> b)
        {
            b.HasKey(p => new { p.FamilyId, p.Id });
            b.Property(p => p.Id).ValueGeneratedNever();
            b.Property(p => p.Week).HasMaxLength(8);
            b.Property(p => p.By).HasMaxLength(People.Person.LongestName);
            b.Property(p => p.Copies).AsJson();
            b.HasIndex(p => new { p.FamilyId, p.Week, p.PrintedAt });
        }
    }
}
