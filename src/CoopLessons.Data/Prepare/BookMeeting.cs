using CoopLessons.Core.Units;
using CoopLessons.Data.Tenancy;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;

namespace CoopLessons.Data.Prepare;

/// <summary>How children meet a book, set together.</summary>
/// <param name="Learners">At least one.</param>
/// <param name="EndedOn">The last day with it; null while it goes on.</param>
/// <param name="Unfinished">It was put away before its end.</param>
/// <param name="Note">For whom it was hard, and what else is to be remembered.</param>
public sealed record MeetingFacts(IReadOnlyList<Guid> Learners, BookUse How, DateOnly BegunOn, DateOnly? EndedOn, bool Unfinished, string Note);

/// <summary>Children who meet a book together: heard, read alone, listened to or looked through. A line of their reading lists.</summary>
public sealed class BookMeeting : IFamilyOwned, IVersioned
{
    public const int LongestNote = 300;

    private BookMeeting() { }

    public BookMeeting(Guid id, Guid bookId, MeetingFacts facts)
    {
        (Id, BookId) = (id, bookId);
        Describe(facts);
    }

    public Guid FamilyId { get; private set; }
    public Guid Id { get; private set; }
    public Guid BookId { get; private set; }
    public List<Guid> Learners { get; private set; } = [];
    public BookUse How { get; private set; }
    public DateOnly BegunOn { get; private set; }
    public DateOnly? EndedOn { get; private set; }
    public bool Unfinished { get; private set; }
    public string Note { get; private set; } = "";
    public int Version { get; private set; }

    public MeetingFacts Facts => new(Learners, How, BegunOn, EndedOn, Unfinished, Note);

    public void Describe(MeetingFacts facts)
    {
        Learners = [.. facts.Learners.Distinct()];
        (How, BegunOn, EndedOn, Note) = (facts.How, facts.BegunOn, facts.EndedOn, facts.Note);
        Unfinished = facts.Unfinished && facts.EndedOn is not null;
    }

    /// <summary>It was met to the end.</summary>
    public void Finish(DateOnly on) => (EndedOn, Unfinished) = (on < BegunOn ? BegunOn : on, false);

    internal sealed class Mapping : IEntityTypeConfiguration<BookMeeting>
    {
        public void Configure(EntityTypeBuilder<BookMeeting> b)
        {
            b.HasKey(m => new { m.FamilyId, m.Id });
            b.Property(m => m.Learners).AsJson();
            b.Property(m => m.How).HasConversion<string>().HasMaxLength(20);
            b.Property(m => m.Note).HasMaxLength(LongestNote);
            b.Ignore(m => m.Facts);
            b.HasOne<BookTitle>().WithMany().HasForeignKey(m => new { m.FamilyId, m.BookId }).OnDelete(DeleteBehavior.Cascade);
        }
    }
}
