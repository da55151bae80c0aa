using CoopLessons.Core.Calendar;
using CoopLessons.Data;
using Microsoft.EntityFrameworkCore;
using Xunit;

namespace CoopLessons.Web.Tests.Scenario;

[Collection(OneCoop.Name)]
public sealed class TheSameSeed(LoadedOnce once)
{
    private readonly MillraceDatabase _coop = once.Coop;

    [Fact]
    public async Task With_the_same_day_writes_the_same_log_to_the_byte()
    {
        await using var again = await MillraceDatabase.LoadedOn(_coop.Today);
        foreach (var year in new[] { MillraceDatabase.LastYear, MillraceDatabase.ThisYear })
            Assert.Equal(await Fingerprints(_coop, year), await Fingerprints(again, year));
        Assert.Equal(await Lines(_coop, _coop.Today), await Lines(again, _coop.Today));
    }

    [Fact]
    public async Task With_another_day_leaves_the_year_before_as_it_was()
    {
        await using var earlier = await MillraceDatabase.LoadedOn(new DateOnly(2026, 9, 9));
        Assert.Equal(await Fingerprints(_coop, MillraceDatabase.LastYear), await Fingerprints(earlier, MillraceDatabase.LastYear));
        var upTo = MillraceDatabase.LastYear.Last.AddDays(1);
        Assert.Equal(await Lines(_coop, upTo), await Lines(earlier, upTo));
    }

    private static async Task<List<string>> Fingerprints(MillraceDatabase coop, DayRange year)
    {
        var marks = new List<string>();
        foreach (var (family, learner) in coop.Learners)
            marks.Add($"{learner.Name} {(await coop.YearOf(family, learner, year)).Report("year", year.Last).Fingerprint}");
        return marks;
    }

    /// <summary>Every revision dated before a day, as text.</summary>
    private static Task<List<string>> Lines(MillraceDatabase coop, DateOnly before) => coop.InEach(async (_, db) =>
    {
        var names = await db.Subjects.ToDictionaryAsync(s => s.Id, s => s.Code);
        var revisions = await db.LogRevisions.AsNoTracking().Include(r => r.Times).Include(r => r.Subjects).AsSplitQuery()
            .Where(r => r.Date < before).OrderBy(r => r.EntryId).ThenBy(r => r.Number).ToListAsync();
        return revisions.Select(r => string.Join('|',
            r.FamilyId, r.EntryId, r.Number, r.Date.ToString("O"), r.StartsAt, r.What, r.Place, r.Note, r.AuthorId, r.AuthorName, r.WrittenAt.ToString("O"), r.Why, r.Removed,
            string.Join(',', r.Times.Select(t => $"{t.LearnerId}={t.Minutes}").Order()),
            string.Join(',', r.Subjects.Select(s => $"{names[s.SubjectId]}={s.Weight}").Order()))).ToList();
    });
}
