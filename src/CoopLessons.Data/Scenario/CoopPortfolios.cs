using System.Text.Json;
using CoopLessons.Data.Evidence;
using CoopLessons.Data.Families;
using Microsoft.EntityFrameworkCore;

namespace CoopLessons.Data.Scenario;

/// <summary>What families of the co-op wrote of a year, as <c>seed-scenario/portfolios.json</c> tells it.</summary>
internal sealed record CoopPortfolios(IReadOnlyDictionary<string, IReadOnlyList<CoopPortfolio>> Families)
{
    public static CoopPortfolios Read() =>
        JsonSerializer.Deserialize<CoopPortfolios>(ScenarioFiles.Bytes("scenario/portfolios.json"), Coop.Json) ?? throw new InvalidDataException("portfolios.json holds nothing.");
}

/// <param name="Year">By its name.</param>
/// <param name="On">The day on which it was written.</param>
/// <param name="Told">The parent's sentences by the law's id of a subject.</param>
internal sealed record CoopPortfolio(
    string Learner, string Year, DateOnly On, string Opening, IReadOnlyDictionary<string, string> Told, IReadOnlyList<CoopPair> Pairs, IReadOnlyList<CoopTermReport> Reports);

/// <summary>Two drawings in <c>seed-scenario/pieces/</c> that show growth.</summary>
internal sealed record CoopPair(string Early, string Late, string Skill, string Words);

/// <summary>A report of the family's own on one of even parts of the year; subjects without sentences keep their draft.</summary>
internal sealed record CoopTermReport(int Number, int Of, DateOnly FinishedOn, string Opening, IReadOnlyDictionary<string, string> Told);

/// <summary>Writes what a family said of its years; days that did not come yet are left out.</summary>
internal sealed class PortfoliosOfFamily(AppDb db, Household house, IReadOnlyList<CoopPortfolio> told, DateOnly today)
{
    private readonly Dictionary<string, Guid> _learners = house.Children.ToDictionary(c => c.Child.Name, c => c.Id);

    /// <summary>Adds everything to the unit of work, once log and pieces are saved. Nothing is saved here.</summary>
    public async Task AddAsync(CancellationToken ct)
    {
        foreach (var portfolio in told)
        {
            var year = await db.SchoolYears.AsNoTracking().Include(y => y.Breaks).SingleAsync(y => y.Name == portfolio.Year, ct);
            if (portfolio.On <= today)
                await AddAsync(portfolio, year, ct);
            foreach (var report in portfolio.Reports.Where(r => r.FinishedOn <= today))
                await AddAsync(report, _learners[portfolio.Learner], year, ct);
        }
    }

    private async Task AddAsync(CoopPortfolio told, SchoolYear year, CancellationToken ct)
    {
        var portfolio = new Portfolio(_learners[told.Learner], year.Id);
        portfolio.Describe(Portfolio.UsualParts, "", told.Opening);
        foreach (var (subject, sentences) in told.Told)
            portfolio.Decide(new SubjectChoice(Key(subject), sentences, null));
        var pieces = await db.Pieces.AsNoTracking().Where(p => p.Date >= year.First && p.Date <= year.Last).ToListAsync(ct);
        foreach (var pair in told.Pairs)
        {
            if (pieces.Find(p => p.Name == pair.Early + ".png") is { } early && pieces.Find(p => p.Name == pair.Late + ".png") is { } late)
                portfolio.Pair(new ChosenPair(early.Id, late.Id, pair.Skill, pair.Words));
        }

        db.Portfolios.Add(portfolio);
    }

    private async Task AddAsync(CoopTermReport told, Guid learner, SchoolYear year, CancellationToken ct)
    {
        var asked = TermsOfYear.Own(year, told.Number, told.Of) ?? throw new InvalidDataException($"portfolios.json: {year.Name} has no part {told.Number} of {told.Of}.");
        var term = (await TermAtHand.LoadAsync(db, learner, year, asked.Days, told.FinishedOn, ct))!;
        var report = new TermReport(Guid.CreateVersion7(), learner, year.Id, asked);
        var subjects = term.Told(report).Select(t => told.Told.FirstOrDefault(s => Key(s.Key) == t.Key) is { Value: { } said } ? t with { Narrative = said } : t).ToList();
        report.Describe(asked.Title, asked.Days, asked.Parts, told.Opening, subjects);
        report.Finish(term.Totals(house.Family.Name), term.Fixed(subjects), told.FinishedOn, house.Adults[0]);
        db.TermReports.Add(report);
    }

    private static string Key(string subject) => $"law-{subject}";
}
