using System.Globalization;
using System.Text.Json;
using AngleSharp.Html.Dom;
using CoopLessons.Core.Calendar;
using CoopLessons.Core.Hours;
using CoopLessons.Core.Schedule;
using CoopLessons.Core.Units;
using CoopLessons.Data;
using CoopLessons.Data.Families;
using CoopLessons.Data.Log;
using CoopLessons.Data.Planning;
using CoopLessons.Data.Scenario;
using CoopLessons.Data.Schedule;
using CoopLessons.Data.Tenancy;
using CoopLessons.Data.Units;
using CoopLessons.Web.Planning;
using CoopLessons.Web.Tests.App;
using CoopLessons.Web.Tests.Units;
using Microsoft.EntityFrameworkCore;
using Microsoft.Extensions.DependencyInjection;
using IsoWeek = CoopLessons.Core.Calendar.Week;

namespace CoopLessons.Web.Tests.Week;

/// <summary>
/// The family Alder in the second week of “From Grain to Loaf”, which began on Monday 9 March 2026: the first week's
/// activities are done. Each child has five lessons of mathematics and five of reading a week. Today is Thursday 12 March.
/// </summary>
internal sealed class AWeekToLayOut
{
    public const string Next = "2026-W12";
    public static readonly DateOnly Monday = new(2026, 3, 16);
    private static readonly string[] Subjects = ["science", "history", "geography", "writing", "art", "home-arts"];

    private AWeekToLayOut(TestFamily family) => Family = family;

    public TestFamily Family { get; }
    public Visitor Guardian => Family.Guardian;
    public Guid Heron { get; } = Guid.CreateVersion7();
    public Guid Linnet { get; } = Guid.CreateVersion7();
    public Guid Wren { get; } = Guid.CreateVersion7();
    public Guid Unit { get; private set; }

    /// <summary>Activities of the unit by their codes.</summary>
    public IReadOnlyDictionary<string, Guid> Activities { get; private set; } = new Dictionary<string, Guid>();

    private LayoutLine Line => Family.Server.Services.GetRequiredService<LayoutLine>();

    /// <param name="isDone">Which activities are done already; without it, those of the first week.</param>
    public static async Task<AWeekToLayOut> MakeAsync(TestServer server, Func<Activity, bool>? isDone = null, bool courses = true)
    {
        var week = new AWeekToLayOut(await server.FamilyAsync());
        await week.Family.WithDbAsync(async db =>
        {
            var subjects = await db.Subjects.ToDictionaryAsync(s => s.Code, s => s.Id);
            db.Add(new Learner(week.Heron, "Heron", new DateOnly(2013, 3, 14), 0));
            db.Add(new Learner(week.Linnet, "Linnet", new DateOnly(2016, 5, 2), 1));
            db.Add(new Learner(week.Wren, "Wren", new DateOnly(2019, 6, 21), 2));
            var unit = await UnitTravel.TakeInAsync(db, ScenarioFiles.Units[UnitSamples.Loaf], default);
            unit.Take(Monday.AddDays(-7));
            foreach (var (code, id) in subjects.Where(s => !Subjects.Contains(s.Key)))
                unit.LeaveOut(id);
            (week.Unit, week.Activities) = (unit.Id, unit.Activities.ToDictionary(a => a.Code, a => a.Id));
            var author = new Author(week.Family.GuardianId, "Iris");
            foreach (var (activity, i) in unit.Activities.Where(isDone ?? (a => a.Week == 1)).Select((a, i) => (a, i)))
            {
                var session = new PlannedSession(Guid.CreateVersion7(), activity.Id, Monday.AddDays(-7 + (i % 3)), null, i, [week.Heron, week.Linnet, week.Wren]);
                var facts = new EntryFacts(session.Date, null, activity.Title, Place.Home, "", [new LearnerTime(week.Wren, new Minutes(20))], [new SubjectWeight(subjects["science"], 1)], []);
                db.Add(session);
                db.Add(session.MarkDone(Guid.CreateVersion7(), facts, author, TestServer.Start.UtcDateTime));
            }

            foreach (var (child, need) in courses ? [(week.Heron, AdultNeed.Alone), (week.Linnet, AdultNeed.Beside), (week.Wren, AdultNeed.Beside)] : Array.Empty<(Guid, AdultNeed)>())
            {
                db.Add(new Course(Guid.CreateVersion7(), new CourseFacts("Mathematics", subjects["mathematics"], [child], 30, 5, need, null, 1, false)));
                db.Add(new Course(Guid.CreateVersion7(), new CourseFacts("Reading", subjects["reading"], [child], 20, 5, need, null, 1, false)));
            }

            await db.SaveChangesAsync();
        });
        return week;
    }

    /// <summary>One with the second week laid out and taken.</summary>
    public static async Task<AWeekToLayOut> TakenAsync(TestServer server)
    {
        var week = await MakeAsync(server);
        using var taken = await week.TakeAsync(await week.LayOutAsync());
        Assert.Equal(System.Net.HttpStatusCode.Redirect, taken.StatusCode);
        return week;
    }

    /// <summary>Asks for a week by the page's own form and waits for the plan.</summary>
    public async Task<IHtmlDocument> LayOutAsync(string week = Next, params string[] choices)
    {
        var page = await Guardian.GetAsync($"/week/layout/{week}");
        using var asked = await Guardian.SubmitAsync(page, within: "form[action$='handler=Ask']", more: choices.Select(c => new KeyValuePair<string, string>("choices", c)));
        Assert.Equal($"/week/layout/{week}", asked.Headers.Location?.OriginalString);
        return await FoundAsync($"/week/layout/{week}", FamilyWork.KeyOf(WeekOf(week)));
    }

    /// <summary>Asks for three ways on and waits for them.</summary>
    public async Task<IHtmlDocument> WaysAsync(string path, string key)
    {
        using var asked = await Guardian.SubmitAsync(await Guardian.GetAsync(path), within: "form[action$='handler=Ask']");
        Assert.Equal(path, asked.Headers.Location?.OriginalString);
        return await FoundAsync(path, key);
    }

    /// <summary>Presses the button of a choice, and waits for the plan that it asks for.</summary>
    public Task<IHtmlDocument> ChooseAsync(IHtmlDocument page, string choice) => PressAsync(page, $"button[name=choices][value='{choice}']", new KeyValuePair<string, string>("choices", choice));

    /// <summary>Sends the form of a button on the page of a layout, and waits for the plan that it asks for.</summary>
    public async Task<IHtmlDocument> PressAsync(IHtmlDocument page, string button, params KeyValuePair<string, string>[] more)
    {
        using var asked = await Guardian.SubmitAsync(page, within: button, more: more);
        Assert.Equal($"/week/layout/{Next}", asked.Headers.Location?.OriginalString);
        return await FoundAsync($"/week/layout/{Next}", FamilyWork.KeyOf(WeekOf(Next)));
    }

    public Task<HttpResponseMessage> TakeAsync(IHtmlDocument page) => Guardian.SubmitAsync(page, within: "form[action$='handler=Take']");

    /// <summary>The newest layout of a week.</summary>
    public WeekLaid Laid(string week = Next) =>
        (Line.Newest(Family.Id, FamilyWork.KeyOf(WeekOf(week)))?.Result as WeekOutcome)?.Laid ?? throw new InvalidOperationException("The week is not laid out.");

    public T Outcome<T>(string key)
        where T : class => Line.Newest(Family.Id, key)?.Result as T ?? throw new InvalidOperationException($"Nothing came of “{key}”.");

    public Task<List<PlannedSession>> SessionsAsync() =>
        Family.FromDbAsync(db => db.PlannedSessions.AsNoTracking().OrderBy(s => s.Date).ThenBy(s => s.StartsAt).ThenBy(s => s.Id).ToListAsync());

    public async Task<PlannedSession> SessionOfAsync(string code) => (await SessionsAsync()).Single(s => s.ActivityId == Activities[code]);

    /// <summary>All that a plan consists of, to the last member; versions alone are counted on by every change.</summary>
    public async Task<string> RowsAsync() =>
        string.Join("\n", await RowsAsync<PlannedSession>()) + string.Join("\n", await RowsAsync<Activity>()) + string.Join("\n", await RowsAsync<Data.Units.Unit>());

    public async Task<PlannedSession> PlanAsync(string code, DateOnly date, int? startsAt, bool pinned = false, params Guid[] learners)
    {
        var session = new PlannedSession(Guid.CreateVersion7(), Activities[code], date, startsAt, 0, learners.Length > 0 ? learners : [Heron, Linnet, Wren]);
        session.Pin(pinned);
        await AddAsync(session);
        return session;
    }

    public Task AddAsync(object row) => Family.WithDbAsync(async db =>
    {
        db.Add(row);
        await db.SaveChangesAsync();
    });

    /// <summary>The same hours for the whole family from Monday to Friday.</summary>
    public Task HoursAsync(params (int From, int To)[] stretches) =>
        AddAsync(new DayPattern(null, new WeekHours(WeekHours.FromMonday.Take(5).ToDictionary(d => d, IReadOnlyList<Stretch> (_) => [.. stretches.Select(s => new Stretch(s.From, s.To))]))));

    /// <summary>Whoever teaches, so that hands have a name.</summary>
    public async Task<Guid> AdultAsync(string name)
    {
        var id = Guid.CreateVersion7();
        await AddAsync(new TeachingAdult(id, name, null, "", 0));
        return id;
    }

    /// <param name="repeats">A rule of RFC 5545; empty for once.</param>
    public async Task<Guid> AppointmentAsync(string title, AppointmentKind kind, DateOnly first, int startsAt, int minutes, string repeats, params Guid[] learners)
    {
        var id = Guid.CreateVersion7();
        await AddAsync(new Appointment(id, new AppointmentFacts(title, kind, learners, [], first, startsAt, minutes, repeats, [], null)));
        return id;
    }

    private async Task<IHtmlDocument> FoundAsync(string path, string key)
    {
        var job = Line.Newest(Family.Id, key) ?? throw new InvalidOperationException($"“{key}” was not asked for.");
        await Line.WaitAsync(Family.Id, job.Id, CancellationToken.None);
        Assert.Equal(JobState.Done, Line.Newest(Family.Id, key)!.State);
        return await Guardian.GetAsync(path);
    }

    private async Task<List<string>> RowsAsync<T>()
        where T : class, IFamilyOwned => await Family.FromDbAsync(async db =>
        {
            var rows = await db.Set<T>().ToListAsync();
            return rows.Select(r => typeof(T).Name + JsonSerializer.Serialize(db.Entry(r).Properties.Where(p => p.Metadata.Name != nameof(IVersioned.Version)).ToDictionary(p => p.Metadata.Name, p => p.CurrentValue)))
                .Order(StringComparer.Ordinal).ToList();
        });

    private static IsoWeek WeekOf(string week) => IsoWeek.TryParse(week, out var read) ? read : throw new FormatException(string.Create(CultureInfo.InvariantCulture, $"{week} is no week."));
}
