using CoopLessons.Data;
using CoopLessons.Data.Planning;

namespace CoopLessons.Web.Pages.Planning;

/// <summary>A course: what it is, whose, how often, and at which lesson the bookmark lies.</summary>
public sealed class CourseModel(AppDb db, TimeProvider clock) : PlanThingPage<Course, CourseInput>(db, clock)
{
    protected override IQueryable<Course> Rows(Guid id) => Db.Courses.Where(c => c.Id == id);

    protected override CourseInput FormOf(Course row) => CourseInput.Of(row);

    protected override string TitleOf(Course row) => row.Title;

    protected override bool NamesOwn() => Choices.HasLearners(Input.Learners) && Choices.HasSubject(Input.SubjectId);

    protected override Task BeginAsync()
    {
        Input = new CourseInput { Minutes = 30, PerWeek = 5, NextLesson = 1 };
        return Task.CompletedTask;
    }

    protected override Task<Course> MakeAsync(Guid id) => Task.FromResult(new Course(id, Input.Read()));

    protected override void Write(Course row)
    {
        row.Describe(Input.Read());
        if (Input.SetAside)
            row.PutAside();
        else
            row.BringBack();
    }

    protected override Task<IReadOnlyList<string>> BecomesAsync(Course row) => SessionsGoAsync(Db.PlannedSessions.Where(s => s.CourseId == row.Id), "lesson", "lessons");
}
