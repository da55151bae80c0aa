using AngleSharp.Html.Dom;
using CoopLessons.Core.Units;
using CoopLessons.Data.Families;
using CoopLessons.Data.Planning;
using CoopLessons.Data.Schedule;
using CoopLessons.Web.Tests.App;
using CoopLessons.Web.Tests.Today;
using Microsoft.EntityFrameworkCore;

namespace CoopLessons.Web.Tests.Planning;

/// <summary>A family with two children and nothing planned.</summary>
public sealed class PlanningFamily
{
    private PlanningFamily(TestFamily family) => Family = family;

    public TestFamily Family { get; }
    public Visitor Guardian => Family.Guardian;
    public Guid Wren { get; } = Guid.CreateVersion7();
    public Guid Linnet { get; } = Guid.CreateVersion7();
    public IReadOnlyDictionary<string, Guid> Subjects { get; private set; } = new Dictionary<string, Guid>();

    public static async Task<PlanningFamily> MakeAsync(TestServer server)
    {
        var made = new PlanningFamily(await server.FamilyAsync());
        await made.Family.WithDbAsync(async db =>
        {
            made.Subjects = await db.Subjects.ToDictionaryAsync(s => s.Code, s => s.Id);
            db.Learners.Add(new Learner(made.Linnet, "Linnet", new DateOnly(2016, 9, 14), 0));
            db.Learners.Add(new Learner(made.Wren, "Wren", new DateOnly(2019, 5, 2), 1));
            await db.SaveChangesAsync();
        });
        return made;
    }

    public async Task<Guid> AddAsync<T>(Func<Guid, T> make)
        where T : class
    {
        var id = Guid.CreateVersion7();
        await Family.WithDbAsync(async db =>
        {
            db.Add(make(id));
            await db.SaveChangesAsync();
        });
        return id;
    }

    /// <summary>Mathematics of Linnet's, at lesson 61 of 120.</summary>
    public Task<Guid> CourseAsync(int next = 61, int? last = 120) =>
        AddAsync(id => new Course(id, new CourseFacts("Mathematics", Subjects["mathematics"], [Linnet], 30, 5, AdultNeed.Alone, last, next, false)));

    /// <summary>Maps, songs and birds; songs come next.</summary>
    public Task<Guid> LoopAsync() => AddAsync(id =>
    {
        var steps = new[] { ("Maps", "geography"), ("Songs", "music"), ("Birds", "nature") }.Select(s => new LoopStep(Guid.CreateVersion7(), s.Item1, Subjects[s.Item2])).ToList();
        var loop = new LessonLoop(id, new LoopFacts("Afternoons", steps, 20, 3, [Linnet, Wren], AdultNeed.Beside, false));
        loop.GoTo(steps[1].Id);
        return loop;
    });

    public Task<Guid> LessonAsync(Guid course, DateOnly date, int startsAt = 540) => AddAsync(id => PlannedSession.OfCourse(id, course, date, startsAt, 0, [Linnet]));

    public Task<Guid> SittingAsync(Guid loop, DateOnly date, int startsAt = 780) => AddAsync(id => PlannedSession.OfLoop(id, loop, date, startsAt, 0, [Linnet, Wren]));

    public Task<Course> CourseOf(Guid id) => Family.FromDbAsync(db => db.Courses.AsNoTracking().SingleAsync(c => c.Id == id));

    public Task<LessonLoop> LoopOf(Guid id) => Family.FromDbAsync(db => db.Loops.AsNoTracking().SingleAsync(l => l.Id == id));

    public Task<PlannedSession> SessionOf(Guid id) => Family.FromDbAsync(db => db.PlannedSessions.AsNoTracking().SingleAsync(s => s.Id == id));

    public Task<IHtmlDocument> TodayAsync() => Guardian.GetAsync("/today");

    /// <summary>Ticks a line of today off.</summary>
    public async Task DoneAsync(Guid session)
    {
        using var answer = await Guardian.SubmitAsync(await TodayAsync(), within: PlannedDay.Form(session, "Done"));
        Assert.Equal(System.Net.HttpStatusCode.Redirect, answer.StatusCode);
    }

    /// <summary>Takes a done line of today back.</summary>
    public async Task TakeBackAsync(Guid session)
    {
        using var answer = await Guardian.SubmitAsync(await TodayAsync(), within: PlannedDay.Form(session, "Undo"));
        Assert.Equal(System.Net.HttpStatusCode.Redirect, answer.StatusCode);
    }
}
