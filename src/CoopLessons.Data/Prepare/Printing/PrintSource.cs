using CoopLessons.Core.Prepare.Printing;
using CoopLessons.Data.Files;
using CoopLessons.Data.Tenancy;
using CoopLessons.Data.Units;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;

namespace CoopLessons.Data.Prepare.Printing;

/// <summary>The file from which a printable of an activity is printed, and what of it is printed for whom.</summary>
public sealed class PrintSource : IFamilyOwned, IVersioned
{
    public const int LongestTitle = 120;
    public const int LongestFileName = 120;

    /// <summary>Most ways in which one file is printed, as for one age and another.</summary>
    public const int MostChoices = 6;

    private PrintSource() { }

    public PrintSource(Guid id, Guid activityId, string printable, StoredFile file, string fileName)
    {
        (Id, ActivityId, Printable) = (id, activityId, printable);
        Choices = [PrintChoice.Usual];
        Exchange(file, fileName);
    }

    public Guid FamilyId { get; private set; }
    public Guid Id { get; private set; }
    public Guid ActivityId { get; private set; }

    /// <summary>The title under which the activity asks for it, or one of its own.</summary>
    public string Printable { get; private set; } = "";
    public string Hash { get; private set; } = "";

    /// <summary>As somebody's device called it; shown and given back, never used to find the file.</summary>
    public string FileName { get; private set; } = "";

    /// <summary>At least one; their pages are pages of the file.</summary>
    public List<PrintChoice> Choices { get; private set; } = [];
    public int Version { get; private set; }

    /// <summary>Takes another file in place of the one before.</summary>
    /// <returns>False where chosen pages are not in it: all pages are chosen there from now on.</returns>
    public bool Exchange(StoredFile file, string fileName)
    {
        (Hash, FileName) = (file.Hash, fileName);
        var fits = Choices.TrueForAll(c => HasPages(c, file.Pages));
        if (!fits)
            Choices = [.. Choices.Select(c => HasPages(c, file.Pages) ? c : c with { Pages = "" })];
        return fits;
    }

    /// <param name="choices">1 to <see cref="MostChoices"/>.</param>
    public void Choose(IEnumerable<PrintChoice> choices) => Choices = [.. choices];

    private static bool HasPages(PrintChoice choice, int pages) => PageRanges.TryRead(choice.Pages, out var ranges, out _) && ranges.TryIn(pages, out _, out _);

    internal sealed class Mapping : IEntityTypeConfiguration<PrintSource>
    {
        public void Configure(EntityTypeBuilder<PrintSource> b)
        {
            b.HasKey(s => new { s.FamilyId, s.Id });
            b.Property(s => s.Id).ValueGeneratedNever();
            b.Property(s => s.Printable).HasMaxLength(LongestTitle);
            b.Property(s => s.FileName).HasMaxLength(LongestFileName);
            b.Property(s => s.Choices).AsJson();
            b.HasIndex(s => new { s.FamilyId, s.ActivityId, s.Printable }).IsUnique();
            b.HasOne<Activity>().WithMany().HasForeignKey(s => new { s.FamilyId, s.ActivityId }).OnDelete(DeleteBehavior.Cascade);
            b.HasOne<StoredFile>().WithMany().HasForeignKey(s => new { s.FamilyId, s.Hash }).OnDelete(DeleteBehavior.NoAction);
        }
    }
}
