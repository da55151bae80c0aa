using CoopLessons.Core.Schedule;
using CoopLessons.Data;
using CoopLessons.Data.Files;
using CoopLessons.Data.Tenancy;
using CoopLessons.Documents.Placing;
using CoopLessons.Documents.Portfolios;
using CoopLessons.Web.Files;
using CoopLessons.Web.Planning;
using CoopLessons.Web.Travel;
using Microsoft.EntityFrameworkCore;

namespace CoopLessons.Web.Pages.Records;

/// <summary>How the making of a full portfolio ended.</summary>
/// <param name="Fault">A sentence to show; null where it was made.</param>
public sealed record FullPortfolioMade(string? Fault);

/// <summary>Makes a learner's full portfolio in the line of long works.</summary>
public sealed class FullPortfolioWork(LayoutLine line, IServiceScopeFactory scopes, FileShelf shelf, PicturePaper maker, FullPortfolios made, TimeProvider clock)
{
    // Reading the year and its files takes about this share.
    private const double Loaded = 0.15;

    public JobStanding? Standing(Guid family, Guid learner, Guid year) => line.Newest(family, Key(learner, year));

    /// <summary>The id of the job; null where the line is full.</summary>
    public Guid? Ask(Guid family, Guid by, Guid learner, Guid year) => line.Ask(family, Key(learner, year), async (progress, ct) =>
    {
        progress.Report(new LayoutProgress("The year is read", 0.02));
        await using var scope = scopes.CreateAsyncScope();
        scope.ServiceProvider.GetRequiredService<CurrentFamily>().ActForProgram(family);
        var db = scope.ServiceProvider.GetRequiredService<AppDb>();
        var today = (await db.Families.AsNoTracking().SingleAsync(ct)).Today(clock);
        if (await PortfolioAtHand.LoadAsync(db, shelf, family, learner, year, full: true, today, ct) is not { } portfolio)
            return new FullPortfolioMade("This learner or school year is not there any more.");
        try
        {
            await using var paper = await maker.MakeAsync(
                family, portfolio.Shown, (files, ending) => PortfolioPdf.Write(portfolio.Papers, files with { Tell = p => progress.Report(new LayoutProgress(p.Step, Loaded + (1 - Loaded) * p.Share)) }, ending), ct);
            if (paper is null)
                return new FullPortfolioMade(PaperAnswer.Busy);
            await portfolio.GiveOutAsync(db, paper, ct);
            await KeepAsync([family, learner, year], by, paper, ct);
            return new FullPortfolioMade(null);
        }
        catch (SourceUnreadableException)
        {
            return new FullPortfolioMade(PaperAnswer.Unreadable);
        }
        catch (OperationCanceledException) when (!ct.IsCancellationRequested)
        {
            return new FullPortfolioMade(PaperAnswer.TooLong);
        }
    });

    private async Task KeepAsync(Guid[] of, Guid by, Stream paper, CancellationToken ct)
    {
        var now = clock.GetUtcNow().UtcDateTime;
        made.Sweep(now);
        var file = made.Begin(of, by, now);
        try
        {
            await using (file)
                await paper.CopyToAsync(file, ct);
            made.Keep(file.Name);
        }
        catch
        {
            File.Delete(file.Name);
            throw;
        }
    }

    private static string Key(Guid learner, Guid year) => $"portfolio {learner:N} {year:N}";
}
