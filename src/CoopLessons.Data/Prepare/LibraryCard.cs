using CoopLessons.Data.Tenancy;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;

namespace CoopLessons.Data.Prepare;

/// <summary>What a library allows on a card, as the parent writes it down.</summary>
/// <param name="LoanDays">1–365: days until a book is due.</param>
/// <param name="Renewals">0–20: how often a loan may be renewed.</param>
/// <param name="MostBooks">Books out at once; null where there is no limit or nobody knows it.</param>
/// <param name="MostHolds">Holds at once; null likewise.</param>
/// <param name="HoldDays">0–120: days from placing a hold until the book is there.</param>
public sealed record CardFacts(string Name, int LoanDays, int Renewals, int? MostBooks, int? MostHolds, int HoldDays);

/// <summary>A card of a library.</summary>
public sealed class LibraryCard : IFamilyOwned, IVersioned
{
    public const int LongestName = 80;
    public const int MostLoanDays = 365;
    public const int MostRenewals = 20;
    public const int MostAtOnce = 999;
    public const int MostHoldDays = 120;

    // Three weeks for a loan, two renewals, three weeks until a hold is there: common practice, no source.
    public const int UsualLoanDays = 21;
    public const int UsualRenewals = 2;
    public const int UsualHoldDays = 21;

    private LibraryCard() { }

    public LibraryCard(Guid id, CardFacts facts)
    {
        Id = id;
        Describe(facts);
    }

    public Guid FamilyId { get; private set; }
    public Guid Id { get; private set; }
    public string Name { get; private set; } = "";
    public int LoanDays { get; private set; }
    public int Renewals { get; private set; }
    public int? MostBooks { get; private set; }
    public int? MostHolds { get; private set; }
    public int HoldDays { get; private set; }
    public int Version { get; private set; }

    public CardFacts Facts => new(Name, LoanDays, Renewals, MostBooks, MostHolds, HoldDays);

    public void Describe(CardFacts facts) =>
        (Name, LoanDays, Renewals, MostBooks, MostHolds, HoldDays) = (facts.Name, facts.LoanDays, facts.Renewals, facts.MostBooks, facts.MostHolds, facts.HoldDays);

    internal sealed class Mapping : IEntityTypeConfiguration<LibraryCard>
    {
        public void Configure(EntityTypeBuilder<LibraryCard> b)
        {
            b.HasKey(c => new { c.FamilyId, c.Id });
            b.Property(c => c.Name).HasMaxLength(LongestName);
            b.Ignore(c => c.Facts);
        }
    }
}
