using CoopLessons.Data.Tenancy;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;

namespace CoopLessons.Data.Coops;

/// <summary>Families who share the teaching.</summary>
public sealed class Coop : ICoopOwned, IVersioned
{
    public const int LongestName = 60;
    public const int LongestRule = 1000;

    /// <summary>Common practice, no source: groups word it alike and differ in the hours.</summary>
    public const string UsualSickRule = "Stay at home with a fever until a whole day has passed without one and without medicine, after vomiting or diarrhoea for two days, and with anything that is catching until a doctor or nurse says otherwise.";

    private Coop() { }

    public Coop(Guid id, string name, DateTime now) => (Id, Name, FoundedAt) = (id, name, now);

    public Guid Id { get; private set; }
    Guid ICoopOwned.CoopId => Id;
    public string Name { get; private set; } = "";

    /// <summary>When somebody stays at home, in the co-op's own words; local health rules come first.</summary>
    public string SickRule { get; private set; } = UsualSickRule;

    /// <summary>What the families agreed on besides; may be empty.</summary>
    public string Agreement { get; private set; } = "";
    public DateTime FoundedAt { get; private set; }
    public int Version { get; private set; }

    public void Describe(string name, string sickRule, string agreement) => (Name, SickRule, Agreement) = (name, sickRule, agreement);

    internal sealed class Mapping : IEntityTypeConfiguration<Coop>
    {
        public void Configure(EntityTypeBuilder<Coop> b)
        {
            b.HasKey(c => c.Id);
            b.Property(c => c.Id).ValueGeneratedNever();
            b.Property(c => c.Name).HasMaxLength(LongestName);
            b.Property(c => c.SickRule).HasMaxLength(LongestRule);
            b.Property(c => c.Agreement).HasMaxLength(LongestRule);
        }
    }
}
