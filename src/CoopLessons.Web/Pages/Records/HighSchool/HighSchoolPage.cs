using CoopLessons.Core.Calendar;
using CoopLessons.Core.Credits;
using CoopLessons.Data;
using CoopLessons.Data.Credits;
using CoopLessons.Data.Families;
using Microsoft.AspNetCore.Mvc;
using Microsoft.EntityFrameworkCore;

namespace CoopLessons.Web.Pages.HighSchool;

/// <summary>A page about one learner's high school courses.</summary>
public abstract class HighSchoolPage(AppDb db, TimeProvider clock) : FamilyPage(db, clock)
{
    [BindProperty(SupportsGet = true, Name = "learnerId")]
    public Guid LearnerId { get; set; }

    public LearnersCourses All { get; private set; } = null!;
    public Learner Learner => All.Learner;

    /// <summary>The list of courses, where one goes back to.</summary>
    public string Overview => $"/records/{LearnerId}/courses";

    /// <summary>False where the family has no such learner.</summary>
    protected virtual async Task<bool> FindAsync()
    {
        if (await LearnersCourses.LoadAsync(Db, LearnerId, Today, Ct) is not { } all)
            return false;
        All = all;
        return true;
    }

    /// <summary>What was typed for the learner's transcript; an empty sheet where nothing was.</summary>
    protected async Task<TranscriptDetails> DetailsAsync() =>
        await Db.TranscriptDetails.SingleOrDefaultAsync(d => d.LearnerId == LearnerId, Ct) ?? new TranscriptDetails(LearnerId);
}

/// <summary>A page about one of these courses.</summary>
public abstract class CoursePage(AppDb db, TimeProvider clock) : HighSchoolPage(db, clock)
{
    [BindProperty(SupportsGet = true, Name = "courseId")]
    public Guid CourseId { get; set; }

    [BindProperty]
    public int Version { get; set; }

    public HighSchoolCourse Course { get; private set; } = null!;
    public CourseTotal Total => All.Ledger[CourseId];

    /// <summary>The course's own page.</summary>
    public string Home => $"{Overview}/{CourseId}";

    protected override async Task<bool> FindAsync()
    {
        if (!await base.FindAsync() || All.Course(CourseId) is not { } course)
            return false;
        Course = course;
        return true;
    }

    /// <summary>The course to be changed.</summary>
    protected Task<HighSchoolCourse> RowAsync() => Db.HighSchoolCourses.Include(c => c.Rules).SingleAsync(c => c.Id == CourseId, Ct);

    /// <summary>Changes the course where it still stands as the form showed it; else the form once more.</summary>
    protected async Task<IActionResult> ChangeAsync(Action<HighSchoolCourse> change, string said, string back)
    {
        var row = await RowAsync();
        change(row);
        Expect(row, Version);
        Db.Entry(row).State = EntityState.Modified;
        if (await SaveAsync())
        {
            Say(said);
            return LocalRedirect(back);
        }

        if (!await FindAsync())
            return NotFound();
        Version = Course.Version;
        ModelState.Remove(nameof(Version));
        return Again(StatusCodes.Status409Conflict);
    }
}

/// <summary>Days as forms ask for them: a first and a last.</summary>
internal static class AskedDays
{
    public static string? Fault(DateOnly? first, DateOnly? last) =>
        first is { Year: < 1990 or > 2200 } || last is { Year: < 1990 or > 2200 } ? "Choose a day from the year 1990 on."
        : last < first ? "It ends on the day on which it begins, or later."
        : last is { } end && first is { } begin && end > begin.AddYears(5) ? "At most five years from the first day to the last."
        : null;

    public static DayRange Of(DateOnly? first, DateOnly? last) => new(first!.Value, last!.Value);
}
