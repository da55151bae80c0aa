using CoopLessons.Data.Tenancy;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;

namespace CoopLessons.Data.Prepare;

/// <summary>
/// Chapters that were read aloud on a day. What no sitting holds is what is left, so that an evening without reading needs
/// no mark. It is no entry of the log: hours are counted from there alone.
/// </summary>
public sealed class ReadingSitting : IFamilyOwned
{
    public const int MostMinutes = 480;

    private ReadingSitting() { }

    /// <param name="from">The first chapter, from 1.</param>
    /// <param name="to">The last one, included.</param>
    /// <param name="minutes">1 to <see cref="MostMinutes"/>; null where nobody looked at the clock.</param>
    public ReadingSitting(Guid id, Guid bookId, DateOnly date, int from, int to, int? minutes) =>
        (Id, BookId, Date, FromChapter, ToChapter, Minutes) = (id, bookId, date, from, to, minutes);

    public Guid FamilyId { get; private set; }
    public Guid Id { get; private set; }
    public Guid BookId { get; private set; }
    public DateOnly Date { get; private set; }
    public int FromChapter { get; private set; }

    /// <summary>Included.</summary>
    public int ToChapter { get; private set; }
    public int? Minutes { get; private set; }

    public bool Holds(int chapter) => chapter >= FromChapter && chapter <= ToChapter;

    internal sealed class Mapping : IEntityTypeConfiguration<ReadingSitting>
    {
        public void Configure(EntityTypeBuilder<ReadingSitting> b)
        {
            b.HasKey(s => new { s.FamilyId, s.Id });
            b.HasOne<BookTitle>().WithMany().HasForeignKey(s => new { s.FamilyId, s.BookId }).OnDelete(DeleteBehavior.Cascade);
        }
    }
}
