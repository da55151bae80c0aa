using CoopLessons.Core.Credits;
using CoopLessons.Data;
using CoopLessons.Data.Credits;
using CoopLessons.Web.Pages.Planning;
using Microsoft.AspNetCore.Mvc;
using Microsoft.EntityFrameworkCore;

namespace CoopLessons.Web.Pages.HighSchool;

/// <summary>What a course is: added at the address with "new", changed and removed at the one with its id.</summary>
public sealed class TermsModel(AppDb db, TimeProvider clock) : HighSchoolPage(db, clock)
{
    [BindProperty]
    public TermsInput Input { get; set; } = new();

    /// <summary>Made with the form, so that a form sent twice adds one course.</summary>
    [BindProperty]
    public Guid NewId { get; set; }

    [BindProperty]
    public int Version { get; set; }

    /// <summary>Null while it is being added.</summary>
    public HighSchoolCourse? Row { get; private set; }
    public Removal? Removal { get; private set; }

    public string Back => Row is null ? Overview : $"{Overview}/{Row.Id}";

    public async Task<IActionResult> OnGetAsync(string id, bool remove)
    {
        if (!await FindAsync(id))
            return NotFound();
        if (Row is null)
        {
            NewId = Guid.CreateVersion7();
            var year = All.Years.FirstOrDefault(y => y.Days.Contains(Today)) ?? (All.Years.Count > 0 ? All.Years[^1] : null);
            Input = new TermsInput { First = year?.First, Last = year?.Last };
            return Page();
        }

        (Input, Version) = (TermsInput.Of(Row), Row.Version);
        if (remove)
            Ask(Row);
        return Page();
    }

    public async Task<IActionResult> OnPostAsync(string id)
    {
        if (!await FindAsync(id) || (Input.SubjectId is { } subject && All.Log.Ledger.Subjects.All(s => s.Id != subject)))
            return NotFound();
        if (!ModelState.IsValid)
            return Again();
        if (Row is null)
            return await AddAsync();
        Row.Describe(Input.Read());
        Expect(Row, Version);
        if (!await SaveAsync())
            return await AgainAsync(id);
        Say($"“{Row.Title}” is saved.");
        return LocalRedirect(Back);
    }

    public async Task<IActionResult> OnPostRemoveAsync(string id)
    {
        if (!await FindAsync(id) || Row is null)
            return NotFound();
        // The fields of the other form did not come with this one.
        ModelState.Clear();
        var title = Row.Title;
        Db.Remove(Row);
        Expect(Row, Version);
        if (!await SaveAsync())
        {
            if (!await FindAsync(id) || Row is null)
                return NotFound();
            Ask(Row);
            return Again(StatusCodes.Status409Conflict);
        }

        Say($"“{title}” is removed. What was logged stays in the log.");
        return LocalRedirect(Overview);
    }

    private async Task<IActionResult> AddAsync()
    {
        if (NewId == Guid.Empty)
            return BadRequest();
        if (All.Courses.Count >= HighSchoolCourse.Most)
        {
            ModelState.AddModelError("", $"A learner has at most {HighSchoolCourse.Most} courses here.");
            return Again();
        }

        if (All.Course(NewId) is null)
        {
            var terms = Input.Read();
            var course = new HighSchoolCourse(NewId, LearnerId, All.Courses.Count == 0 ? 0 : All.Courses.Max(c => c.Order) + 1, terms);
            if (Input.SubjectId is { } subject)
                course.AddRule(Guid.CreateVersion7(), new CourseRule(subject, terms.Days));
            Db.Add(course);
            if (!await SaveNewAsync() && !await Db.HighSchoolCourses.AnyAsync(c => c.Id == NewId, Ct))
                return AgainAfterOthers();
            Say($"“{terms.Title}” is added.");
        }

        return LocalRedirect($"{Overview}/{NewId}");
    }

    private async Task<IActionResult> AgainAsync(string id)
    {
        if (!await FindAsync(id) || Row is null)
            return NotFound();
        Version = Row.Version;
        ModelState.Remove(nameof(Version));
        return Again(StatusCodes.Status409Conflict);
    }

    private void Ask(HighSchoolCourse row) => Removal = new Removal(row.Title, row.Version, Request.Path.Value!,
        ["Its rules, its picks by hand, its study outside the log, its mark and its description go with it.", "What was logged stays in the log, and other courses may ask for it."]);

    private async Task<bool> FindAsync(string id)
    {
        if (!await FindAsync())
            return false;
        Row = Guid.TryParse(id, out var courseId) ? await Db.HighSchoolCourses.SingleOrDefaultAsync(c => c.Id == courseId && c.LearnerId == LearnerId, Ct) : null;
        return Row is not null || id == "new";
    }
}
