using CoopLessons.Core.Log.Sheets;
using CoopLessons.Data.Tenancy;
using CoopLessons.Data.Travel;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;

namespace CoopLessons.Data.Log.Sheets;

/// <summary>A name of a sheet and what somebody says it is: an id of the family’s, <see cref="New"/>, or empty for nothing here.</summary>
public sealed record NameMeant(string Name, string Meant)
{
    /// <summary>A subject that is made when the sheet is taken in.</summary>
    public const string New = "new";
}

/// <summary>What somebody said of a sheet so far.</summary>
/// <param name="Columns">Null until they were looked at.</param>
public sealed record SheetChoices(SheetColumns? Columns, IReadOnlyList<NameMeant> Learners, IReadOnlyList<NameMeant> Subjects)
{
    public static SheetChoices None => new(null, [], []);
}

/// <summary>A file of separated values that somebody brought and has not taken in yet. It is kept for a day, so that it can be looked at in peace.</summary>
[StaysHere("is kept for a day at most, until its rows are taken in")]
public sealed class BroughtSheet : IFamilyOwned, IVersioned
{
    public const int LongestName = 120;
    public const int MostBytes = 5_000_000;

    public static readonly TimeSpan Life = TimeSpan.FromDays(1);

    private BroughtSheet() { }

    public BroughtSheet(Guid id, string fileName, byte[] content, DateTime now) => (Id, FileName, Content, At) = (id, fileName, content, now);

    public Guid FamilyId { get; private set; }

    /// <summary>Made on the page that brought it; its import bears the same.</summary>
    public Guid Id { get; private set; }
    public string FileName { get; private set; } = "";
    public byte[] Content { get; private set; } = [];
    public DateTime At { get; private set; }
    public SheetChoices Choices { get; private set; } = SheetChoices.None;
    public int Version { get; private set; }

    public void Choose(SheetChoices choices) => Choices = choices;

    internal sealed class Mapping : IEntityTypeConfiguration<BroughtSheet>
    {
        public void Configure(EntityTypeBuilder<BroughtSheet> b)
        {
            b.HasKey(s => new { s.FamilyId, s.Id });
            b.Property(s => s.Id).ValueGeneratedNever();
            b.Property(s => s.FileName).HasMaxLength(LongestName);
            b.Property(s => s.Choices).AsJson();
        }
    }
}
