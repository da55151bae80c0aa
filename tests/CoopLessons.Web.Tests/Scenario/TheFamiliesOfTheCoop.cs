using CoopLessons.Core.Families;
using CoopLessons.Core.Hours;
using CoopLessons.Data.Families;
using CoopLessons.Data.Scenario;
using CoopLessons.Data.Tenancy;
using Microsoft.EntityFrameworkCore;
using Xunit;

namespace CoopLessons.Web.Tests.Scenario;

[Collection(OneCoop.Name)]
public sealed class TheFamiliesOfTheCoop(LoadedOnce once)
{
    private static readonly DateOnly FirstOfSeptember = new(2026, 9, 1);
    private readonly MillraceDatabase _coop = once.Coop;

    [Fact]
    public void Four_families_live_on_both_sides_of_the_state_line() =>
        Assert.Equal(
            [("Alder", "MO"), ("Birch", "KS"), ("Cedar", "MO"), ("Dogwood", "KS")],
            _coop.Loaded.Families.Select(f => (f.Name, f.State)));

    [Fact]
    public void The_children_are_from_two_to_fifteen()
    {
        var ages = _coop.Learners.Select(l => Age.On(FirstOfSeptember, l.Learner.BirthDate)).Order().ToList();
        Assert.Equal(11, ages.Count);
        Assert.Equal(2, ages[0]);
        Assert.Equal(15, ages[^1]);
        Assert.Equal(9, _coop.Learners.Count(l => l.Learner.IsOfSchoolAge));
    }

    [Fact]
    public async Task A_grandmother_helps_in_one_family_and_everybody_can_sign_in()
    {
        var adults = _coop.Loaded.Families.SelectMany(f => f.Adults).ToList();
        Assert.Equal("Hazel", Assert.Single(adults, a => a.Role == Role.Helper).Name);
        Assert.All(_coop.Loaded.Families, f => Assert.Equal(Role.Guardian, f.Guardian.Role));
        Assert.All(adults, a => Assert.EndsWith(".millrace.example", a.Email, StringComparison.Ordinal));
        foreach (var adult in adults)
            Assert.True(await _coop.CanSignIn(adult.Email));
    }

    [Fact]
    public async Task Each_family_orders_its_subjects_in_a_way_of_its_own()
    {
        var orders = await _coop.InEach(async (_, db) =>
            new List<string> { string.Join(' ', await db.Subjects.OrderBy(s => s.Order).Select(s => s.Code).ToListAsync()) });
        Assert.Equal(4, orders.Distinct().Count());
        Assert.All(orders, o => Assert.Equal(FamilySubject.Usual.Select(s => s.Code).Order(), o.Split(' ').Order()));
    }

    [Fact]
    public async Task Some_children_have_allergies_and_two_work_at_levels_other_than_their_ages()
    {
        var learners = await _coop.InEach((_, db) => db.Learners.Include(l => l.Levels).ToListAsync());
        Assert.True(learners.Count(l => l.Allergies.Count > 0) >= 4);
        var uneven = learners.Where(l => l.Levels.Any(v => Math.Abs(v.Level.UsualAge - l.AgeOn(FirstOfSeptember)) > 2));
        Assert.Equal(["Lark", "Robin"], uneven.Select(l => l.Name).Order());
    }

    /// <summary>Common practice, no source: a family takes some six of a unit's nine subjects.</summary>
    [Fact]
    public async Task A_family_takes_six_of_nine_subjects_of_each_unit()
    {
        var units = await _coop.InEach((_, db) => db.Units.Include(u => u.Subjects).ToListAsync());
        Assert.Equal(12, units.Count);
        Assert.All(units, u => Assert.Equal((9, 3), (u.Subjects.Count, u.LeftOut.Count)));
        Assert.All(units.Where(u => u.IsTaken), u => Assert.Equal(DayOfWeek.Monday, u.StartsOn!.Value.DayOfWeek));
    }

    [Fact]
    public async Task Each_family_has_two_school_years_with_breaks_that_lie_inside_them()
    {
        var years = await _coop.InEach((_, db) => db.SchoolYears.Include(y => y.Breaks).OrderBy(y => y.First).ToListAsync());
        Assert.Equal(8, years.Count);
        foreach (var year in years)
        {
            Assert.Contains(year.Days, new[] { MillraceDatabase.LastYear, MillraceDatabase.ThisYear });
            Assert.All(year.Breaks, b => Assert.True(year.Days.Contains(b.First) && year.Days.Contains(b.Last)));
            Assert.Contains(year.Breaks, b => b.Name == "Labor Day");
            Assert.InRange(year.Calendar.TeachingDays().Count(), 160, 195);
        }
    }

    [Fact]
    public async Task Nobody_sees_the_rows_of_another_family()
    {
        foreach (var family in _coop.Loaded.Families)
        {
            var names = await _coop.In(family, db => db.Learners.Select(l => l.Name).ToListAsync());
            Assert.Equal(family.Learners.Select(l => l.Name).Order(), names.Order());
        }
    }

    [Fact]
    public async Task All_four_places_are_met()
    {
        foreach (var (family, learner) in _coop.Learners.Where(l => l.Learner.IsOfSchoolAge))
        {
            var year = await _coop.YearOf(family, learner, MillraceDatabase.LastYear);
            Assert.All(Enum.GetValues<Place>(), place => Assert.True(year.Ledger.At(place) > Minutes.Zero));
        }
    }

    [Fact]
    public async Task A_second_loading_is_refused_and_changes_nothing()
    {
        await Assert.ThrowsAsync<InvalidOperationException>(_coop.LoadAgain);
        var families = await _coop.InEach((_, db) => db.Families.ToListAsync());
        Assert.Equal(4, families.Count);
        Assert.Equal(8, await _coop.In(_coop.Loaded.Families[0], db => db.Users.CountAsync()));
    }
}
