using CoopLessons.Core.Credits;
using CoopLessons.Core.Prepare.Printing;
using CoopLessons.Data.Credits;
using CoopLessons.Data.Scenario;
using CoopLessons.Documents.Reports;
using Microsoft.EntityFrameworkCore;

namespace CoopLessons.Web.Tests.Scenario;

[Collection(OneCoop.Name)]
public sealed class The_credits_of_the_coop(LoadedOnce loaded)
{
    private readonly MillraceDatabase _coop = loaded.Coop;
    private LoadedFamily Cedar => _coop.Loaded.Families.Single(f => f.Name == "Cedar");
    private Guid Merlin => Cedar.Learners.Single(l => l.Name == "Merlin").Id;

    private Task<LearnersCourses> AllAsync() => _coop.In(Cedar, async db => (await LearnersCourses.LoadAsync(db, Merlin, _coop.Today, default))!);

    [Fact]
    public async Task Hold_each_minute_of_the_log_once()
    {
        var all = await AllAsync();
        Assert.Equal(all.Log.Ledger.Total.Value, all.Ledger.Courses.Sum(c => c.FromLog.Value) + all.Ledger.MinutesInNone.Value);
        Assert.All(all.Courses.Where(c => c.Basis == CreditBasis.Hours && c.Marked != MarkKind.Open), c => Assert.True(all.Ledger[c.Id].FromLog.Value > 0, c.Title));
    }

    [Fact]
    public async Task Award_by_hours_no_more_than_the_hours_make()
    {
        var all = await AllAsync();
        Assert.All(all.Courses.Where(c => c.Basis == CreditBasis.Hours && c.Awarded is not null), c => Assert.True(all.Computed(c)!.Value.Hundredths >= c.Awarded, $"{c.Title}: {all.Computed(c)!.Value.Text}"));
    }

    [Fact]
    public async Task Fit_on_a_transcript_of_one_page()
    {
        var all = await AllAsync();
        var details = await _coop.In(Cedar, db => db.TranscriptDetails.AsNoTracking().SingleAsync());
        var transcript = all.Transcript(details, _coop.Today);
        Assert.NotNull(TranscriptPdf.Write(transcript, PaperSize.Letter));
        Assert.True(transcript.Courses >= 14 && transcript.Average is { Unknown: 0, Unweighted: > 300 });
        Assert.Contains(all.Ledger.Courses, c => c.InAnother.Count > 0);
    }
}
