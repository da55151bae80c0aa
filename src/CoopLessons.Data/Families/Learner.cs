using CoopLessons.Core.Families;
using CoopLessons.Core.Units;
using CoopLessons.Data.Tenancy;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;

namespace CoopLessons.Data.Families;

/// <summary>A child who is taught. Never removed, since the log names learners; one who has left is set aside.</summary>
public sealed class Learner : IFamilyOwned, IVersioned
{
    public const int LongestName = 40;
    public const int LongestAllergyNote = 200;

    private readonly List<LearnerLevel> _levels = [];

    private Learner() { }

    public Learner(Guid id, string name, DateOnly birthDate, int order) => (Id, Name, BirthDate, Order) = (id, name, birthDate, order);

    public Guid FamilyId { get; private set; }
    public Guid Id { get; private set; }

    /// <summary>First name or nickname.</summary>
    public string Name { get; private set; } = "";
    public DateOnly BirthDate { get; private set; }
    public int Order { get; private set; }
    public List<Allergen> Allergies { get; private set; } = [];

    /// <summary>Allergies beyond the nine, in the parent's words.</summary>
    public string AllergyNote { get; private set; } = "";
    public bool SetAside { get; private set; }
    public int Version { get; private set; }
    public IReadOnlyList<LearnerLevel> Levels => _levels;

    public int AgeOn(DateOnly date) => Age.On(date, BirthDate);

    public void Describe(string name, DateOnly birthDate, IEnumerable<Allergen> allergies, string allergyNote)
    {
        (Name, BirthDate, AllergyNote) = (name, birthDate, allergyNote);
        Allergies = [.. allergies.Distinct().Order()];
    }

    /// <summary>Sets or, with null, forgets the level in a subject.</summary>
    public void SetLevel(Guid subjectId, Level? level)
    {
        var known = _levels.FirstOrDefault(l => l.SubjectId == subjectId);
        if (level is null)
        {
            if (known is not null)
                _levels.Remove(known);
        }
        else if (known is null)
        {
            _levels.Add(new LearnerLevel(subjectId, level.Value));
        }
        else
        {
            known.Become(level.Value);
        }
    }

    public Level? LevelIn(Guid subjectId) => _levels.FirstOrDefault(l => l.SubjectId == subjectId)?.Level;

    /// <summary>The age whose version of the work fits: by the level in the subject where one is set, else by birth date.</summary>
    public int WorkingAge(DateOnly date, Guid? subjectId) =>
        subjectId is { } id && LevelIn(id) is { } level ? level.UsualAge : AgeOn(date);

    public CautionedLearner ToCautioned(DateOnly date) => new(Id, Name, AgeOn(date), Allergies);

    public void PutAside() => SetAside = true;

    public void BringBack() => SetAside = false;

    internal sealed class Mapping : IEntityTypeConfiguration<Learner>
    {
        public void Configure(EntityTypeBuilder<Learner> b)
        {
            b.HasKey(l => new { l.FamilyId, l.Id });
            b.Property(l => l.Name).HasMaxLength(LongestName);
            b.Property(l => l.AllergyNote).HasMaxLength(LongestAllergyNote);
            b.Property(l => l.Allergies).AsJson();
            b.HasMany(l => l.Levels).WithOne().HasForeignKey(l => new { l.FamilyId, l.LearnerId }).OnDelete(DeleteBehavior.Cascade);
        }
    }
}

/// <summary>A learner's level in one subject.</summary>
public sealed class LearnerLevel : IFamilyOwned
{
    private LearnerLevel() { }

    internal LearnerLevel(Guid subjectId, Level level) => (SubjectId, Grade) = (subjectId, level.Grade);

    public Guid FamilyId { get; private set; }
    public Guid LearnerId { get; private set; }
    public Guid SubjectId { get; private set; }

    /// <summary>0 for kindergarten, 1–12.</summary>
    public int Grade { get; private set; }
    public Level Level => new(Grade);

    internal void Become(Level level) => Grade = level.Grade;

    internal sealed class Mapping : IEntityTypeConfiguration<LearnerLevel>
    {
        public void Configure(EntityTypeBuilder<LearnerLevel> b)
        {
            b.HasKey(l => new { l.FamilyId, l.LearnerId, l.SubjectId });
            b.Ignore(l => l.Level);
            b.HasOne<FamilySubject>().WithMany().HasForeignKey(l => new { l.FamilyId, l.SubjectId }).OnDelete(DeleteBehavior.Cascade);
        }
    }
}
