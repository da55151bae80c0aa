using CoopLessons.Core.Calendar;
using CoopLessons.Data.Tenancy;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;

namespace CoopLessons.Data.Families;

/// <summary>A school year of a family with its teaching weekdays and breaks. Years of a family do not overlap.</summary>
public sealed class SchoolYear : IFamilyOwned, IVersioned
{
    public const int LongestName = 40;

    private readonly List<SchoolBreak> _breaks = [];

    private SchoolYear() { }

    public SchoolYear(Guid id, string name, DayRange days, Weekdays weekdays)
    {
        Id = id;
        Describe(name, days, weekdays);
    }

    public Guid FamilyId { get; private set; }
    public Guid Id { get; private set; }
    public string Name { get; private set; } = "";
    public DateOnly First { get; private set; }

    /// <summary>Included.</summary>
    public DateOnly Last { get; private set; }
    public Weekdays Weekdays { get; private set; }
    public int Version { get; private set; }
    public IReadOnlyList<SchoolBreak> Breaks => _breaks;

    public DayRange Days => new(First, Last);

    public TeachingCalendar Calendar => new(Days, Weekdays, [.. _breaks.OrderBy(b => b.First).Select(b => new Break(b.Name, new DayRange(b.First, b.Last)))]);

    public void Describe(string name, DayRange days, Weekdays weekdays) => (Name, First, Last, Weekdays) = (name, days.First, days.Last, weekdays);

    public void AddBreak(Guid id, string name, DayRange days) => _breaks.Add(new SchoolBreak(id, name, days));

    public bool RemoveBreak(Guid id) => _breaks.RemoveAll(b => b.Id == id) > 0;

    internal sealed class Mapping : IEntityTypeConfiguration<SchoolYear>
    {
        public void Configure(EntityTypeBuilder<SchoolYear> b)
        {
            b.HasKey(y => new { y.FamilyId, y.Id });
            b.Property(y => y.Name).HasMaxLength(LongestName);
            b.Ignore(y => y.Days).Ignore(y => y.Calendar);
            b.HasMany(y => y.Breaks).WithOne().HasForeignKey(x => new { x.FamilyId, x.SchoolYearId }).OnDelete(DeleteBehavior.Cascade);
        }
    }
}

public sealed class SchoolBreak : IFamilyOwned
{
    private SchoolBreak() { }

    internal SchoolBreak(Guid id, string name, DayRange days) => (Id, Name, First, Last) = (id, name, days.First, days.Last);

    public Guid FamilyId { get; private set; }
    public Guid Id { get; private set; }
    public Guid SchoolYearId { get; private set; }
    public string Name { get; private set; } = "";
    public DateOnly First { get; private set; }

    /// <summary>Included.</summary>
    public DateOnly Last { get; private set; }

    internal sealed class Mapping : IEntityTypeConfiguration<SchoolBreak>
    {
        public void Configure(EntityTypeBuilder<SchoolBreak> b)
        {
            b.HasKey(x => new { x.FamilyId, x.Id });
            b.Property(x => x.Id).ValueGeneratedNever();
            b.Property(x => x.Name).HasMaxLength(SchoolYear.LongestName);
        }
    }
}
