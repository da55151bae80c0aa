using BenchmarkDotNet.Attributes;
using CoopLessons.Benchmarks.Floor;
using CoopLessons.Core.Schedule;
using CoopLessons.Core.Units;
using CoopLessons.Data;
using CoopLessons.Data.Planning;
using CoopLessons.Data.Scenario;
using CoopLessons.Data.Units;
using Microsoft.EntityFrameworkCore;

namespace CoopLessons.Benchmarks.Measured;

/// <summary>A unit of four weeks with its fit, beside six courses, two loops, four appointments a week and another unit, and a bare page.</summary>
[BenchmarkCategory("Fitting a unit")]
public class FittingAUnit
{
    private readonly string _folder = Directory.CreateTempSubdirectory("cooplessons-bare-").FullName;
    private BareHost _bare = null!;
    private CoopServer _coop = null!;
    private Browser _stranger = null!;
    private AlderFamily _family = null!;
    private Guid _unit;

    [GlobalSetup]
    public async Task SetUpAsync()
    {
        _bare = await BareHost.StartAsync(o => o.UseSqlite($"Data Source={Path.Combine(_folder, "bare.db")}"));
        _stranger = new Browser(_bare.Address);
        _coop = await CoopServer.StartAsync();
        _family = await AlderFamily.MoveInAsync(_coop, entries: 0);
        _unit = await _coop.WithDbAsync(_family.Id, PlanAsync);
        var page = await UnitAsync();
        if (!page.Contains("id=\"fit\"", StringComparison.Ordinal) || !page.Contains("grown-ups", StringComparison.Ordinal))
            throw new InvalidOperationException("The page of the unit shows no fit.");
    }

    [GlobalCleanup]
    public async Task CleanUpAsync()
    {
        _stranger.Dispose();
        _family.Guardian.Dispose();
        await _coop.DisposeAsync();
        await _bare.DisposeAsync();
        Directory.Delete(_folder, recursive: true);
    }

    [Benchmark(Baseline = true, Description = "A bare Razor page")]
    public Task<string> Bare() => _stranger.OpenAsync("/");

    [Benchmark(Description = "A unit of four weeks and whether it fits")]
    public Task<string> UnitAsync() => _family.Guardian.OpenAsync($"/units/{_unit}");

    [Benchmark(Description = "The fit of another week alone")]
    public Task<string> WeekAsync() => _family.Guardian.OpenAsync($"/units/{_unit}?handler=Fit&week=3");

    private async Task<Guid> PlanAsync(AppDb db)
    {
        var monday = Core.Calendar.Week.Of(_family.Today).Next.Monday;
        var subjects = _family.Subjects;
        var iris = new TeachingAdult(Guid.CreateVersion7(), "Iris", null, "", 0);
        db.AddRange(iris, new TeachingAdult(Guid.CreateVersion7(), "Basil", null, "", 1));
        foreach (var (learner, i) in _family.Learners.Select((l, i) => (l, i)))
        {
            db.Add(new Course(Guid.CreateVersion7(), new CourseFacts($"Mathematics {i}", subjects[0], [learner], 30, 5, AdultNeed.Beside, 150, 61, true)));
            db.Add(new Course(Guid.CreateVersion7(), new CourseFacts($"Reading {i}", subjects[1], [learner], 20, 5, AdultNeed.Alone, null, 12, false)));
        }

        for (var i = 0; i < 2; i++)
            db.Add(new LessonLoop(Guid.CreateVersion7(), new LoopFacts($"Loop {i}", [new LoopStep(Guid.CreateVersion7(), "First", subjects[2]), new LoopStep(Guid.CreateVersion7(), "Second", subjects[3])], 30, 2, _family.Learners, AdultNeed.HandsOn, false)));
        for (var i = 0; i < 4; i++)
            db.Add(new Appointment(Guid.CreateVersion7(), new AppointmentFacts($"Lesson {i}", AppointmentKind.LessonOut, [_family.Learners[i % 3]], [iris.Id], monday.AddDays(i - 70), 10 * 60, 60, "FREQ=WEEKLY", [], null)));
        var other = await UnitTravel.TakeInAsync(db, ScenarioFiles.Units.First(u => u.Key != "from-grain-to-loaf").Value, default);
        other.Take(monday);
        var unit = await db.Units.SingleAsync();
        unit.Take(monday);
        await db.SaveChangesAsync();
        return unit.Id;
    }
}
