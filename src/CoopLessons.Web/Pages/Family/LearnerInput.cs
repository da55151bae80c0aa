using System.ComponentModel.DataAnnotations;
using CoopLessons.Core.Families;
using CoopLessons.Data;
using CoopLessons.Data.Families;
using CoopLessons.Web.Pages.Account;
using Microsoft.EntityFrameworkCore;

namespace CoopLessons.Web.Pages.Families;

/// <summary>What a parent writes about a child.</summary>
public sealed class LearnerInput : IValidatableObject
{
    private static readonly DateOnly Earliest = new(1990, 1, 1);

    [Required(ErrorMessage = "Give the child’s first name, or what you call them.")]
    [StringLength(Learner.LongestName, ErrorMessage = "A name has at most {1} signs.")]
    [Visible]
    public string Name { get; set; } = "";

    [Required(ErrorMessage = "Give the birth date.")]
    public DateOnly? BirthDate { get; set; }

    [MaxLength(20)]
    public List<Allergen> Allergies { get; set; } = [];

    [StringLength(Learner.LongestAllergyNote, ErrorMessage = "The note has at most {1} signs.")]
    public string? AllergyNote { get; set; }

    [MaxLength(200)]
    public List<LevelInput> Levels { get; set; } = [];

    public IEnumerable<ValidationResult> Validate(ValidationContext validationContext)
    {
        if (BirthDate < Earliest)
            yield return new ValidationResult($"The birth date is {Earliest:yyyy} or later.", [nameof(BirthDate)]);
    }

    /// <summary>The subjects in the family's order, retired ones only where a level is set; levels as the learner has them.</summary>
    public async Task ListLevelsAsync(AppDb db, Learner? learner, CancellationToken ct)
    {
        var subjects = await db.Subjects.AsNoTracking().OrderBy(s => s.Order).ThenBy(s => s.Name).ToListAsync(ct);
        var typed = Levels.DistinctBy(l => l.SubjectId).ToDictionary(l => l.SubjectId, l => l.Grade);
        Levels = [.. subjects.Where(s => !s.Retired || learner?.LevelIn(s.Id) is not null)
            .Select(s => new LevelInput { SubjectId = s.Id, Name = s.Name, Grade = typed.TryGetValue(s.Id, out var grade) ? grade : learner?.LevelIn(s.Id)?.Grade })];
    }

    /// <summary>Fills the form from a learner.</summary>
    public static LearnerInput Of(Learner learner) => new()
    {
        Name = learner.Name,
        BirthDate = learner.BirthDate,
        Allergies = [.. learner.Allergies],
        AllergyNote = learner.AllergyNote,
    };

    /// <summary>Whether each subject named is the family's own.</summary>
    public async Task<bool> NamesOwnSubjectsAsync(AppDb db, CancellationToken ct)
    {
        var ids = Levels.Select(l => l.SubjectId).Distinct().ToList();
        return await db.Subjects.CountAsync(s => ids.Contains(s.Id), ct) == ids.Count;
    }

    public void Write(Learner learner)
    {
        learner.Describe(Name, BirthDate!.Value, Allergies, AllergyNote ?? "");
        foreach (var level in Levels)
            learner.SetLevel(level.SubjectId, level.Grade is { } grade ? new Level(grade) : null);
    }
}

public sealed class LevelInput
{
    public Guid SubjectId { get; set; }

    /// <summary>For the page alone; what is posted here is not read.</summary>
    internal string Name { get; set; } = "";

    [Range(0, 12, ErrorMessage = "Choose a level from the list.")]
    public int? Grade { get; set; }
}
