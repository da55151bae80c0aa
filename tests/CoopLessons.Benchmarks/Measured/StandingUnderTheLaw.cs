using BenchmarkDotNet.Attributes;
using CoopLessons.Core.Requirements;
using CoopLessons.Core.Requirements.Standing;
using CoopLessons.Data;
using CoopLessons.Data.Families;
using CoopLessons.Data.Hours;
using CoopLessons.Data.Requirements;
using Microsoft.EntityFrameworkCore;

namespace CoopLessons.Benchmarks.Measured;

/// <summary>Where one learner with 2,000 entries stands under three figures with forecasts, beside the plain sum of the same rows.</summary>
[BenchmarkCategory("Standing under the law")]
public class StandingUnderTheLaw
{
    private const int Entries = 3000;
    private const int OfOneLearner = 2000;
    private CoopServer _coop = null!;
    private AlderFamily _family = null!;
    private SchoolYear _year = null!;
    private Guid _learner;
    private LearnerStanding _standing = null!;

    [GlobalSetup]
    public async Task SetUpAsync()
    {
        _coop = await CoopServer.StartAsync();
        _family = await AlderFamily.MoveInAsync(_coop, Entries);
        _learner = _family.Learners[2];
        _year = await _coop.WithDbAsync(_family.Id, async db =>
        {
            var year = await db.SchoolYears.AsNoTracking().Include(y => y.Breaks).SingleAsync();
            db.LearnerPathways.Add(new LearnerPathway(Guid.CreateVersion7(), _learner, "US-MO", "home-school", year.First, SpanReason.Begins, null));
            await db.SaveChangesAsync();
            return year;
        });
        _standing = await StandAsync();
        var sum = await SumAsync();
        if (_standing.Question.Ledger.Entries.Count != OfOneLearner || _standing.Question.Ledger.Total.Value != sum || _standing.Now?.Lines.Count(l => l.Forecast?.Outlook is not null) < 1)
            throw new InvalidOperationException($"The log holds {_standing.Question.Ledger.Entries.Count} entries and {sum} minutes, the ledger {_standing.Question.Ledger.Total.Value}; {_standing.Now?.Sentence}");
    }

    [GlobalCleanup]
    public async Task CleanUpAsync()
    {
        _family.Guardian.Dispose();
        await _coop.DisposeAsync();
    }

    [Benchmark(Baseline = true, Description = "A plain SQL sum of the learner's minutes")]
    public Task<int> SumAsync() => _coop.WithDbAsync(_family.Id, db => db.Database.SqlQuery<int>($"""
        SELECT SUM(t."Minutes") AS "Value" FROM "LogTime" t
        JOIN "LogRevisions" r ON r."FamilyId" = t."FamilyId" AND r."EntryId" = t."EntryId" AND r."Number" = t."Number"
        JOIN "LogEntries" e ON e."FamilyId" = r."FamilyId" AND e."Id" = r."EntryId" AND e."Newest" = r."Number"
        WHERE t."FamilyId" = {_family.Id} AND t."LearnerId" = {_learner} AND NOT r."Removed" AND r."Date" BETWEEN {_year.First} AND {_year.Last}
        """).SingleAsync());

    [Benchmark(Description = "Log read, counted, held against Missouri's figures, forecast")]
    public Task<LearnerStanding> StandAsync() => _coop.WithDbAsync(_family.Id, async db =>
        await LearnerStanding.LoadAsync(db, (await LearnerYear.LoadAsync(db, _learner, _year.Days, default))!, _year, _family.Today, default));

    [Benchmark(Description = "The arithmetic alone: three figures and their forecasts")]
    public PathwayStanding Reckon() => PathwayStanding.Of(_standing.Question, _standing.Law.Spans[0]);
}
