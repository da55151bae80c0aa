using CoopLessons.Core.Prepare.Printing;
using CoopLessons.Data.Tenancy;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;

namespace CoopLessons.Data.Prepare.Printing;

/// <summary>How a family prints and what it pays for it. A family that never said so has no row and prints as <see cref="Usual"/> says.</summary>
public sealed class PrintHabits : IFamilyOwned, IVersioned
{
    public PrintHabits() => Describe(PrintPrices.SharedLaser, bothSides: true, PaperSize.Letter);

    /// <summary>Where nobody said anything.</summary>
    public static PrintHabits Usual { get; } = new();

    public Guid FamilyId { get; private set; }
    public int GreyTenths { get; private set; }
    public int ColourTenths { get; private set; }
    public int PaperTenths { get; private set; }
    public bool BothSides { get; private set; }
    public PaperSize Paper { get; private set; }
    public int Version { get; private set; }

    public PrintPrices Prices => new(GreyTenths, ColourTenths, PaperTenths);

    public void Describe(PrintPrices prices, bool bothSides, PaperSize paper) =>
        (GreyTenths, ColourTenths, PaperTenths, BothSides, Paper) = (prices.GreyTenths, prices.ColourTenths, prices.PaperTenths, bothSides, paper);

    internal sealed class Mapping : IEntityTypeConfiguration<PrintHabits>
    {
        public void Configure(EntityTypeBuilder<PrintHabits> b)
        {
            b.HasKey(h => h.FamilyId);
            b.Ignore(h => h.Prices);
        }
    }
}
