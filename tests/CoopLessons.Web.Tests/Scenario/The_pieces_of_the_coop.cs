using CoopLessons.Core.Evidence;
using CoopLessons.Data.Evidence;
using CoopLessons.Data.Hours;
using CoopLessons.Data.Log;
using CoopLessons.Data.Scenario;
using Microsoft.EntityFrameworkCore;

namespace CoopLessons.Web.Tests.Scenario;

[Collection(OneCoop.Name)]
public sealed class The_pieces_of_the_coop(LoadedOnce loaded)
{
    private readonly MillraceDatabase _coop = loaded.Coop;
    private LoadedFamily Alder => _coop.Loaded.Families.Single(f => f.Name == "Alder");

    [Fact]
    public async Task Show_the_work_of_each_child_over_several_months_with_what_they_said()
    {
        var pieces = await _coop.In(Alder, db => db.Pieces.AsNoTracking().ToListAsync());
        Assert.True(pieces.Count >= 12, $"Only {pieces.Count} pieces.");
        Assert.True(pieces.Select(p => p.Date.Month).Distinct().Count() >= 3);
        Assert.All(pieces, p => Assert.True(p.Caption.Length > 0 && p.SmallHash is not null && p.Date < _coop.Today));
        Assert.Equal(Alder.Learners.Select(l => l.Id).Order(), pieces.SelectMany(p => p.Learners).Distinct().Order());
        Assert.Contains(pieces, p => p.SetAside);
    }

    [Fact]
    public async Task Belong_to_entries_of_their_day_children_and_family()
    {
        var odd = await _coop.In(Alder, async db =>
        {
            var entries = await db.Standing().ToDictionaryAsync(r => r.EntryId);
            var pieces = await db.Pieces.AsNoTracking().ToListAsync();
            return pieces.Where(p => entries[p.EntryId!.Value] is var entry && (entry.Date != p.Date || p.Learners.Exists(l => entry.Times.All(t => t.LearnerId != l)))).Select(p => p.Caption).ToList();
        });
        Assert.Empty(odd);
    }

    [Fact]
    public async Task Give_Linnet_a_finished_year_with_samples_of_each_third_one_of_health_and_none_of_music()
    {
        var subjects = await _coop.In(Alder, db => db.Subjects.AsNoTracking().ToDictionaryAsync(s => s.Id, s => s.Code));
        var pieces = (await PiecesOfLinnet()).ToLookup(p => subjects[p.SubjectId!.Value]);
        PartOfYear[] thirds = [PartOfYear.Beginning, PartOfYear.Middle, PartOfYear.End];
        foreach (var (name, codes) in new[] { ("science", new[] { "science", "nature" }), ("writing", ["writing"]), ("reading", ["reading"]), ("mathematics", ["mathematics"]), ("society", ["history", "geography", "citizenship"]) })
        {
            var found = codes.SelectMany(c => pieces[c]).Select(p => SampleSpread.PartOf(p.Date, MillraceDatabase.LastYear)).Distinct().Order();
            Assert.True(thirds.SequenceEqual(found), $"{name} has samples only from {string.Join(", ", found)}.");
        }

        Assert.Equal(10, Assert.Single(pieces["health"]).Date.Month);
        Assert.Empty(pieces["music"]);
    }

    [Fact]
    public async Task Fill_Linnets_portfolio_of_that_year_and_show_growth_in_birds_and_in_handwriting()
    {
        var linnet = Alder.Learners.Single(l => l.Name == "Linnet");
        var portfolio = await _coop.In(Alder, async db =>
        {
            var year = await db.SchoolYears.SingleAsync(y => y.First == MillraceDatabase.LastYear.First);
            var log = await LearnerYear.LoadAsync(db, linnet.Id, MillraceDatabase.LastYear, CancellationToken.None);
            return await PortfolioYear.LoadAsync(db, log!, year, _coop.Today, CancellationToken.None);
        });
        Assert.All(portfolio.Subjects.Where(s => s.Subject.ByLaw), s =>
        {
            Assert.True(s.Samples.Count >= SampleSpread.Usual, $"{s.Subject.Name} shows {s.Samples.Count}.");
            Assert.DoesNotContain(s.Evidence.Missing, m => m.StartsWith("No sample", StringComparison.Ordinal));
        });
        var shown = portfolio.Subjects.Where(s => s.Subject.ByLaw).SelectMany(s => s.Samples).Select(p => p.Name).ToList();
        Assert.All(new[] { "firstbird.png", "laterbird.png", "firsthand.png", "laterhand.png", "shelf.png" }, f => Assert.Contains(f, shown));
        var pairs = portfolio.Pairs.Select(p => (p.Early.Name, p.Late.Name)).ToList();
        Assert.Contains(("firstbird.png", "laterbird.png"), pairs);
        Assert.Contains(("firsthand.png", "laterhand.png"), pairs);
    }

    private Task<List<Piece>> PiecesOfLinnet()
    {
        var (linnet, year) = (Alder.Learners.Single(l => l.Name == "Linnet").Id, MillraceDatabase.LastYear);
        return _coop.In(Alder, async db => (await db.Pieces.AsNoTracking().Where(p => p.Date >= year.First && p.Date <= year.Last).ToListAsync()).FindAll(p => p.Learners.Contains(linnet)));
    }
}
