using CoopLessons.Core.Coop;
using CoopLessons.Data.Tenancy;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;

namespace CoopLessons.Data.Coops.Days;

/// <summary>What happened to the list of a class.</summary>
public enum ListEvent { SignedUp, Withdrew, Resized }

/// <summary>
/// One thing that happened to the list of a class; who has a place follows from all of them in their order. It holds ids
/// and no names, and stays when a family leaves: taken out of the middle, it could cost another family a place. The family
/// is the one that wrote it, so that a child is signed up by its own family alone.
/// </summary>
public sealed class ClassListLine : IShownByFamily
{
    private ClassListLine() { }

    private ClassListLine(CoopClass of, int number, Guid familyId, Guid id, ListEvent what, DateTime now) =>
        (CoopId, ClassId, Number, FamilyId, Id, What, At) = (of.CoopId, of.Id, number, familyId, id, what, now);

    public Guid CoopId { get; private set; }
    public Guid ClassId { get; private set; }

    /// <summary>From 1, one more than the last: of two that happen at once, one is refused and looks again.</summary>
    public int Number { get; private set; }
    public Guid FamilyId { get; private set; }

    /// <summary>Made on the page, so that a second sending changes nothing.</summary>
    public Guid Id { get; private set; }
    public ListEvent What { get; private set; }
    public Guid? Child { get; private set; }

    /// <summary>The second of a pair that comes together or not at all.</summary>
    public Guid? Other { get; private set; }
    public int? Size { get; private set; }
    public DateTime At { get; private set; }

    public static ClassListLine SignUp(CoopClass of, int number, Guid familyId, Guid id, IReadOnlyList<Guid> children, DateTime now) =>
        new(of, number, familyId, id, ListEvent.SignedUp, now) { Child = children[0], Other = children.Count > 1 ? children[1] : null };

    public static ClassListLine Withdraw(CoopClass of, int number, Guid familyId, Guid child, DateTime now) =>
        new(of, number, familyId, Guid.CreateVersion7(), ListEvent.Withdrew, now) { Child = child };

    public static ClassListLine Resize(CoopClass of, int number, Guid familyId, DateTime now) =>
        new(of, number, familyId, Guid.CreateVersion7(), ListEvent.Resized, now) { Size = of.Size };

    public ClassEvent ToCore() => What switch
    {
        ListEvent.SignedUp => new SignedUp(Id, FamilyId, Other is { } other ? [Child!.Value, other] : [Child!.Value]),
        ListEvent.Withdrew => new Withdrew(Child!.Value),
        _ => new Resized(Size!.Value),
    };

    internal sealed class Mapping : IEntityTypeConfiguration<ClassListLine>
    {
        public void Configure(EntityTypeBuilder<ClassListLine> b)
        {
            b.HasKey(l => new { l.CoopId, l.ClassId, l.Number });
            b.Property(l => l.Number).ValueGeneratedNever();
            b.HasIndex(l => new { l.CoopId, l.Id }).IsUnique();
            b.Property(l => l.What).HasConversion<string>().HasMaxLength(20);
            b.HasOne<CoopClass>().WithMany().HasForeignKey(l => new { l.CoopId, l.ClassId }).OnDelete(DeleteBehavior.Cascade);
        }
    }
}
