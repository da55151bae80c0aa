using CoopLessons.Core.Hours;
using CoopLessons.Data.Log;
using Microsoft.EntityFrameworkCore;
using Xunit;

namespace CoopLessons.Web.Tests.Scenario;

[Collection(OneCoop.Name)]
public sealed class TheLogOfTheCoop(LoadedOnce once)
{
    private readonly MillraceDatabase _coop = once.Coop;

    /// <summary>Common practice, no source: a year's log holds 1,200 to 2,000 entries a child.</summary>
    [Fact]
    public async Task A_child_of_school_age_has_a_full_year_of_entries()
    {
        foreach (var (family, learner) in _coop.Learners.Where(l => l.Learner.IsOfSchoolAge))
            Assert.InRange((await _coop.YearOf(family, learner, MillraceDatabase.LastYear)).Ledger.Entries.Count, 1_200, 2_000);
    }

    [Fact]
    public async Task The_two_year_old_has_hardly_any_entries()
    {
        var birch = _coop.Loaded["Birch"];
        var pipit = birch.Learners.Single(l => l.Name == "Pipit");
        Assert.Empty((await _coop.YearOf(birch, pipit, MillraceDatabase.LastYear)).Ledger.Entries);
        Assert.InRange((await _coop.YearOf(birch, pipit, MillraceDatabase.ThisYear)).Ledger.Entries.Count, 0, 40);
    }

    /// <summary>Missouri asks for 1,000 hours a year (RSMo 167.031, from memory); the demo ends a little above.</summary>
    [Theory]
    [InlineData("Alder")]
    [InlineData("Cedar")]
    public async Task A_child_in_Missouri_ends_the_year_a_little_above_a_thousand_hours(string name)
    {
        foreach (var learner in _coop.Loaded[name].Learners.Where(l => l.IsOfSchoolAge))
            Assert.InRange((await _coop.YearOf(_coop.Loaded[name], learner, MillraceDatabase.LastYear)).Ledger.Total.Value, 1_000 * 60, 1_080 * 60);
    }

    /// <summary>Kansas asks for 186 days or 1,116 hours (K.S.A. 72-3115, from memory); the demo has a family for each.</summary>
    [Fact]
    public async Task A_child_in_Kansas_ends_the_year_with_the_hours_or_the_days()
    {
        foreach (var learner in _coop.Loaded["Birch"].Learners.Where(l => l.IsOfSchoolAge))
            Assert.InRange((await _coop.YearOf(_coop.Loaded["Birch"], learner, MillraceDatabase.LastYear)).Ledger.Total.Value, 1_116 * 60, 1_150 * 60);
        foreach (var learner in _coop.Loaded["Dogwood"].Learners)
            Assert.InRange((await _coop.YearOf(_coop.Loaded["Dogwood"], learner, MillraceDatabase.LastYear)).Days.Strict, 186, 195);
    }

    [Fact]
    public async Task Three_overlaps_and_one_long_day_raise_a_question_and_nothing_else_does()
    {
        var questions = new List<LedgerQuestion>();
        foreach (var (family, learner) in _coop.Learners)
        {
            foreach (var year in new[] { MillraceDatabase.LastYear, MillraceDatabase.ThisYear })
                questions.AddRange((await _coop.YearOf(family, learner, year)).Ledger.Questions());
        }

        Assert.Equal(3, questions.OfType<CountedTwice>().Count());
        Assert.Single(questions.OfType<LongDay>());
    }

    [Fact]
    public async Task Nothing_is_dated_today_or_later()
    {
        foreach (var family in _coop.Loaded.Families)
        {
            var last = await _coop.In(family, db => db.LogRevisions.MaxAsync(r => r.Date));
            Assert.InRange(last, _coop.Today.AddDays(-4), _coop.Today.AddDays(-1));
            Assert.True(await _coop.In(family, db => db.DayMarks.AllAsync(m => m.Date < _coop.Today)));
        }
    }

    [Fact]
    public async Task An_entry_is_written_after_it_was_done_and_before_today_at_noon()
    {
        var chicago = TimeZoneInfo.FindSystemTimeZoneById("America/Chicago");
        var noon = DateTime.SpecifyKind(_coop.Today.ToDateTime(new TimeOnly(12, 0)), DateTimeKind.Utc);
        var all = await Revisions();
        Assert.All(all, r =>
        {
            Assert.Equal(DateTimeKind.Utc, r.WrittenAt.Kind);
            Assert.True(r.WrittenAt < noon);
            var local = TimeZoneInfo.ConvertTimeFromUtc(r.WrittenAt, chicago);
            Assert.True(DateOnly.FromDateTime(local) >= r.Date);
            if (r.StartsAt is { } start)
                Assert.True(local >= r.Date.ToDateTime(TimeOnly.MinValue).AddMinutes(start));
        });
        var late = all.Count(r => r.Number == 1 && DateOnly.FromDateTime(TimeZoneInfo.ConvertTimeFromUtc(r.WrittenAt, chicago)) > r.Date);
        Assert.InRange(late * 100.0 / all.Count, 5, 35);
    }

    [Fact]
    public async Task Some_entries_were_mended_and_some_struck_out_and_each_says_why()
    {
        var second = (await Revisions()).Where(r => r.Number == 2).ToList();
        Assert.True(second.Count(r => !r.Removed) > 60);
        Assert.True(second.Count(r => r.Removed) > 30);
        Assert.All(second, r => Assert.NotEqual("", r.Why));
    }

    [Fact]
    public async Task About_half_of_the_entries_say_when_they_began_and_some_carry_a_note()
    {
        var all = await _coop.InEach((_, db) => db.Standing().ToListAsync());
        Assert.InRange(all.Count(r => r.StartsAt is not null) * 100.0 / all.Count, 40, 60);
        Assert.InRange(all.Count(r => r.Note.Length > 0) * 100.0 / all.Count, 3, 20);
        Assert.True(all.Count(r => r.Times.Select(t => t.Minutes).Distinct().Count() > 1) > 200);
        Assert.True(all.Count(r => r.Subjects.Any(s => s.Weight == 0)) > 1_000);
        Assert.True(all.Select(r => r.What).Distinct().Count() > 1_500);
    }

    [Fact]
    public async Task No_text_keeps_a_word_in_braces_and_all_fit_their_columns()
    {
        var all = await Revisions();
        Assert.All(all, r =>
        {
            Assert.DoesNotContain('{', r.What);
            Assert.InRange(r.What.Length, 3, LogRevision.LongestWhat);
            Assert.InRange(r.Note.Length, 0, LogRevision.LongestNote);
        });
    }

    private Task<List<LogRevision>> Revisions() => _coop.InEach((_, db) => db.LogRevisions.AsNoTracking().ToListAsync());
}
