using CoopLessons.Core.Hours;
using CoopLessons.Core.Units;
using CoopLessons.Data.Families;
using CoopLessons.Data.Tenancy;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;

namespace CoopLessons.Data.Planning;

/// <summary>What a family says of a course, set together.</summary>
/// <param name="Learners">At least one; they do its lessons together.</param>
/// <param name="Minutes">5–240, for one lesson.</param>
/// <param name="PerWeek">1–7 lessons.</param>
/// <param name="Lessons">Number of the last lesson, or null where there is no last one.</param>
/// <param name="NextLesson">1 or more; one more than the last lesson where all are done.</param>
public sealed record CourseFacts(
    string Title, Guid SubjectId, IReadOnlyList<Guid> Learners, int Minutes, int PerWeek, AdultNeed Need, int? Lessons, int NextLesson, bool Morning);

/// <summary>Lessons from elsewhere, numbered and taken one after the other, with a bookmark at the next one.</summary>
public sealed class Course : IFamilyOwned, IVersioned
{
    public const int LongestTitle = 120;
    public const int LeastMinutes = 5;
    public const int MostMinutes = 240;
    public const int MostLessons = 999;

    private Course() { }

    public Course(Guid id, CourseFacts facts)
    {
        Id = id;
        Describe(facts);
    }

    public Guid FamilyId { get; private set; }
    public Guid Id { get; private set; }
    public string Title { get; private set; } = "";
    public Guid SubjectId { get; private set; }
    public List<Guid> Learners { get; private set; } = [];
    public int Minutes { get; private set; }
    public int PerWeek { get; private set; }
    public AdultNeed Need { get; private set; }
    public int? Lessons { get; private set; }
    public int NextLesson { get; private set; } = 1;

    /// <summary>Wished for before noon.</summary>
    public bool Morning { get; private set; }
    public bool SetAside { get; private set; }
    public int Version { get; private set; }

    public CourseFacts Facts => new(Title, SubjectId, Learners, Minutes, PerWeek, Need, Lessons, NextLesson, Morning);

    public void Describe(CourseFacts facts)
    {
        (Title, SubjectId, Minutes, PerWeek, Need) = (facts.Title, facts.SubjectId, facts.Minutes, facts.PerWeek, facts.Need);
        (Lessons, NextLesson, Morning) = (facts.Lessons, facts.NextLesson, facts.Morning);
        Learners = [.. facts.Learners.Distinct()];
    }

    public void PutAside() => SetAside = true;

    public void BringBack() => SetAside = false;

    /// <summary>The lesson that comes so many after the next one; null past the last.</summary>
    public int? LessonAhead(int ahead) => NextLesson + ahead is var lesson && (Lessons is null || lesson <= Lessons) ? lesson : null;

    /// <summary>The next lesson is done, and the bookmark moves on. Its number; null where all were done before.</summary>
    public int? LessonDone()
    {
        var lesson = LessonAhead(0);
        if (lesson is not null)
            NextLesson++;
        return lesson;
    }

    /// <summary>The lesson was not done after all: the bookmark goes back to it, unless a later lesson was done since.</summary>
    public void TakeBack(int lesson)
    {
        if (NextLesson == lesson + 1)
            NextLesson = lesson;
    }

    /// <summary>The lesson counts as done again; the bookmark moves on where it stands at this very lesson.</summary>
    public void DoneAgain(int lesson)
    {
        if (NextLesson == lesson)
            NextLesson = lesson + 1;
    }

    public TakenSplit Split => new([new SubjectWeight(SubjectId, 1)], []);

    internal sealed class Mapping : IEntityTypeConfiguration<Course>
    {
        public void Configure(EntityTypeBuilder<Course> b)
        {
            b.HasKey(c => new { c.FamilyId, c.Id });
            b.Property(c => c.Title).HasMaxLength(LongestTitle);
            b.Property(c => c.Learners).AsJson();
            b.Ignore(c => c.Facts).Ignore(c => c.Split);
            // No action rather than restrict: where the whole family goes, both go with it.
            b.HasOne<FamilySubject>().WithMany().HasForeignKey(c => new { c.FamilyId, c.SubjectId }).OnDelete(DeleteBehavior.NoAction);
        }
    }
}
