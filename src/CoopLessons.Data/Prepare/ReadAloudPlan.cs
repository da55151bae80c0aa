using CoopLessons.Core.Calendar;
using CoopLessons.Data.Schedule;
using CoopLessons.Data.Tenancy;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;

namespace CoopLessons.Data.Prepare;

/// <summary>The evenings on which a family reads: every one, those of its teaching days, or chosen weekdays.</summary>
public enum ReadingDays { EveryEvening, TeachingDays, Chosen }

/// <summary>Over which evenings a book is read aloud. Its chapters are the book's, what was read its sittings'.</summary>
public sealed class ReadAloudPlan : IFamilyOwned, IVersioned
{
    /// <summary>The last day is at most so many days after the first.</summary>
    public const int MostDays = 366;

    private ReadAloudPlan() { }

    public ReadAloudPlan(Guid bookId, DayRange days, ReadingDays on, Weekdays chosen)
    {
        BookId = bookId;
        Run(days, on, chosen);
    }

    public Guid FamilyId { get; private set; }
    public Guid BookId { get; private set; }
    public DateOnly First { get; private set; }

    /// <summary>Included: the day on which the book is to end.</summary>
    public DateOnly Last { get; private set; }
    public ReadingDays On { get; private set; }

    /// <summary>The weekdays where they are chosen.</summary>
    public Weekdays Chosen { get; private set; }
    public int Version { get; private set; }

    public DayRange Days => new(First, Last);

    public void Run(DayRange days, ReadingDays on, Weekdays chosen)
    {
        (First, Last, On) = (days.First, days.Last, on);
        Chosen = on == ReadingDays.Chosen ? chosen : Weekdays.None;
    }

    /// <summary>The evenings of some days, ascending.</summary>
    public IEnumerable<DateOnly> EveningsIn(DayRange range, TeachingDays teaching) => range.Days().Where(d => On switch
    {
        ReadingDays.EveryEvening => true,
        ReadingDays.TeachingDays => teaching.Holds(d),
        _ => Chosen.Holds(d.DayOfWeek),
    });

    /// <summary>Evenings after the last day, at most so many: where the book goes on that does not end in time.</summary>
    public IReadOnlyList<DateOnly> Later(TeachingDays teaching, int most) => On == ReadingDays.TeachingDays
        ? teaching.After(Last, most)
        : [.. EveningsIn(new DayRange(Last.AddDays(1), Last.AddDays(most * 7)), teaching).Take(most)];

    internal sealed class Mapping : IEntityTypeConfiguration<ReadAloudPlan>
    {
        public void Configure(EntityTypeBuilder<ReadAloudPlan> b)
        {
            b.HasKey(p => new { p.FamilyId, p.BookId });
            b.Property(p => p.On).HasConversion<string>().HasMaxLength(20);
            b.Ignore(p => p.Days);
            b.HasOne<BookTitle>().WithOne().HasForeignKey<ReadAloudPlan>(p => new { p.FamilyId, p.BookId }).OnDelete(DeleteBehavior.Cascade);
        }
    }
}
