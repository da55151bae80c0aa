using CoopLessons.Core.Families;
using CoopLessons.Core.Hours;
using CoopLessons.Data.Families;
using CoopLessons.Data.Log;
using CoopLessons.Data.People;
using CoopLessons.Data.Requirements;
using CoopLessons.Data.Tenancy;
using CoopLessons.Data.Units;
using Microsoft.AspNetCore.Identity;
using Microsoft.EntityFrameworkCore;

namespace CoopLessons.Data.Scenario;

/// <summary>A family of the scenario set up as a parent would: people, subjects, years, children, units on the shelf.</summary>
internal sealed class Founding(AppDb db, UserManager<Person> people, Coop coop, int number)
{
    private readonly CoopFamily _told = coop.Families[number];
    private readonly Chance _chance = new(coop.Seed, number, 0);

    /// <summary>Saves all of it; the unit of work then acts for the new family.</summary>
    public async Task<(Guid Family, Household House, IReadOnlyList<LoadedAdult> Adults)> FoundAsync(DateOnly today, string password, CancellationToken ct)
    {
        var since = _told.Years[0].First;
        var now = DateTime.SpecifyKind(since.ToDateTime(new TimeOnly(12, 0)), DateTimeKind.Utc);
        var adults = await AddPeopleAsync(password, now);
        var family = NewFamily.Found(db, _chance.Id(now), _told.Name, coop.TimeZone, adults[0].PersonId, adults[0].Name, since, now);
        family.Describe(_told.Name, coop.TimeZone, _told.State);
        family.CountBy(_told.CountingPolicy, new Minutes(_told.MinimumDay));
        foreach (var adult in adults.Skip(1))
            db.Memberships.Add(new Membership(adult.PersonId, adult.Name, adult.Role, now));
        foreach (var subject in db.Subjects.Local)
            subject.StandAt(_told.SubjectOrder.Index().Single(s => s.Item == subject.Code).Index);
        AddYears();
        var subjects = db.Subjects.Local.ToDictionary(s => s.Code, s => s.Id);
        var pupils = AddLearners(subjects, now);
        AddLaw(pupils);
        await db.SaveChangesAsync(ct);

        var runs = await TakeUnitsInAsync(subjects, today, ct);
        await db.SaveChangesAsync(ct);
        var authors = adults.Select(a => new Author(a.PersonId, a.Name)).ToList();
        var house = new Household(coop, number, _told, family.Zone, subjects, pupils, authors, [.. runs.OrderBy(r => r.Monday)]);
        return (family.Id, house, adults);
    }

    private async Task<IReadOnlyList<LoadedAdult>> AddPeopleAsync(string password, DateTime now)
    {
        var adults = new List<LoadedAdult>();
        foreach (var adult in _told.Adults)
        {
            var person = Person.Named(adult.Name, adult.Email);
            person.Id = _chance.Id(now);
            person.EmailConfirmed = true;
            var made = await people.CreateAsync(person, password);
            if (!made.Succeeded)
                throw new InvalidOperationException($"{adult.Email} could not be made: {string.Join(" ", made.Errors.Select(e => e.Description))}");
            adults.Add(new LoadedAdult(person.Id, adult.Name, adult.Email, adult.Role));
        }

        return adults;
    }

    /// <summary>The year with which the family was founded becomes the first of the data; the others are added.</summary>
    private void AddYears()
    {
        var founded = db.SchoolYears.Local.Single();
        foreach (var told in _told.Years)
        {
            var calendar = told.Calendar;
            var year = founded.First == told.First ? founded : new SchoolYear(Guid.CreateVersion7(), told.Name, calendar.Year, calendar.Weekdays);
            year.Describe(told.Name, calendar.Year, calendar.Weekdays);
            foreach (var away in calendar.Breaks)
                year.AddBreak(Guid.CreateVersion7(), away.Name, away.Days);
            if (year != founded)
                db.SchoolYears.Add(year);
        }
    }

    private List<Pupil> AddLearners(Dictionary<string, Guid> subjects, DateTime now)
    {
        var pupils = new List<Pupil>();
        foreach (var (order, child) in _told.Children.OrderBy(c => c.Born).Index())
        {
            var learner = new Learner(_chance.Id(now), child.Name, child.Born, order);
            learner.Describe(child.Name, child.Born, child.Allergies, child.AllergyNote);
            foreach (var (code, grade) in child.Levels)
                learner.SetLevel(subjects[code], new Level(grade));
            db.Learners.Add(learner);
            pupils.Add(new Pupil(learner.Id, child));
        }

        return pupils;
    }

    /// <summary>Pathways and grades of the children of school age. Their ids come from no stream, so that the log's stay what they are.</summary>
    private void AddLaw(IEnumerable<Pupil> pupils)
    {
        var years = db.SchoolYears.Local.ToList();
        foreach (var pupil in pupils.Where(p => p.IsOfSchoolAge))
        {
            foreach (var told in pupil.Child.Pathways ?? _told.Pathways)
            {
                var row = new LearnerPathway(Guid.CreateVersion7(), pupil.Id, told.Code, told.Id, told.Since, told.Because, null);
                row.Choose(told.Goals, new Dictionary<string, decimal>());
                db.LearnerPathways.Add(row);
            }

            foreach (var year in years)
            {
                var own = pupil.Child.Grades?.TryGetValue(year.Name, out var told) == true ? told : UsualGrade.In(year.First, pupil.Child.Born);
                if (own is { } grade)
                    db.LearnerGrades.Add(new LearnerGrade(pupil.Id, year.Id, grade));
            }
        }
    }

    /// <summary>
    /// Every unit comes onto the shelf; those the data says are taken, without the subjects there is no room for. One that
    /// would run beside the unit of this week stays on the shelf.
    /// </summary>
    private async Task<List<UnitRun>> TakeUnitsInAsync(Dictionary<string, Guid> subjects, DateOnly today, CancellationToken ct)
    {
        var runs = new List<UnitRun>();
        foreach (var told in _told.Units.OrderByDescending(u => u.WeekNow is not null))
        {
            var unit = await UnitTravel.TakeInAsync(db, ScenarioFiles.Units[told.File], ct);
            foreach (var subject in unit.Subjects.Where(s => !told.Takes.Any(code => subjects[code] == s.SubjectId)).ToList())
                unit.LeaveOut(subject.SubjectId);
            if (told.MondayFor(today) is not { } monday || runs.Any(r => Math.Abs(r.Monday.DayNumber - monday.DayNumber) < 7 * Math.Max(unit.Weeks, r.Unit.Weeks)))
                continue;
            unit.Take(monday);
            runs.Add(new UnitRun(unit));
        }

        return runs;
    }
}
