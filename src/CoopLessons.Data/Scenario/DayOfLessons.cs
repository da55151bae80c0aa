using CoopLessons.Core.Units;

namespace CoopLessons.Data.Scenario;

/// <summary>What fills the different sorts of days.</summary>
internal sealed class DayOfLessons(Household house, DayPage page)
{
    private readonly Coop _coop = house.Coop;
    private DateOnly Date => page.Date;

    /// <summary>A teaching day: the co-op's classes, the unit, the courses whose turn it is, and whatever the day still lacks.</summary>
    public void Teach(IReadOnlyList<PlacedActivity> unit, IReadOnlySet<string> turns, bool unitRuns)
    {
        var coopDay = _coop.Meeting.IsHeldOn(Date);
        var work = new List<(int At, int Rank, Action Do)>();
        if (coopDay)
            work.Add((0, 0, Meet));
        work.AddRange(unit.Where(p => p.Date == Date && !p.FellThrough).Select(p => (p.StartsAt, 1, (Action)(() => Write(p)))));
        foreach (var course in _coop.Courses.Where(c => c.How != CourseHow.Filler && turns.Contains(c.Code)))
        {
            if ((coopDay && !course.OnCoopDay) || (unitRuns && course.PausesForUnit))
                continue;
            work.Add((DayPage.Minute(course.At), 2, () => Write(course)));
        }

        work.Add((16 * 60 + 5, 3, Fill));
        foreach (var (_, _, act) in work.OrderBy(w => w.At).ThenBy(w => w.Rank))
            act();
    }

    /// <summary>A day on which the family was ill: a story or nothing.</summary>
    public void Rest()
    {
        if (!page.Chance.In(60))
            return;
        var who = house.Children.Where(c => c.AgeOn(Date) >= 4).ToList();
        page.Write(14 * 60, page.Told(page.Chance.Of(_coop.SickTexts)), "Stories in bed", Core.Hours.Place.Home, "", page.Times(who, 35),
            house.Split(new Dictionary<string, int> { ["reading"] = 1 }), [], timedIn: 15);
    }

    /// <summary>A weekend or a day in a break: mostly nothing, now and then an outing or a book.</summary>
    /// <param name="percentOut">How often the family goes out.</param>
    public void BeFree(double percentOut)
    {
        var who = house.Children.Where(c => c.AgeOn(Date) >= 4).ToList();
        if (page.Chance.In(percentOut))
        {
            var outing = page.Chance.Of([.. _coop.Outings.Where(o => o.Months?.Contains(Date.Month) ?? true)]);
            page.Write(DayPage.Minute(outing.At), outing.What, "Outing", outing.Place, Note("outing", 30), page.Times(who, outing.Minutes), house.Split(outing.Split), house.Touches(outing.Touches), timedIn: 60);
        }
        else if (page.Chance.In(6))
        {
            var one = page.Chance.Of([.. who.Where(p => p.IsOfSchoolAge)]);
            page.Write(15 * 60, page.Told(page.Chance.Of(_coop.WeekendTexts), one), "Reading", Core.Hours.Place.Home, "", [(one, page.Chance.Of([20, 30, 40]))],
                house.Split(new Dictionary<string, int> { ["reading"] = 1 }), [], timedIn: 20);
        }
    }

    // Which classes are held is drawn for the co-op and the date alone, so that all families write down the same ones.
    private void Meet()
    {
        var drawn = new Chance(_coop.Seed, 1000, Date.DayNumber);
        var taught = new List<(CoopClass Class, string Text, int At)>();
        foreach (var group in _coop.Meeting.Classes.GroupBy(c => (c.From, c.To)))
        {
            var at = DayPage.Minute(_coop.Meeting.At);
            foreach (var held in drawn.Shuffled(group).Take(3))
            {
                taught.Add((held, drawn.Of(held.Texts), at));
                at += _coop.Meeting.Minutes + 5;
            }
        }

        foreach (var (held, text, at) in taught)
        {
            var who = house.Children.Where(c => c.AgeOn(Date) >= held.From && c.AgeOn(Date) <= held.To).Select(p => (p, _coop.Meeting.Minutes)).ToList();
            page.Write(at, $"Co-op class: {char.ToLowerInvariant(text[0])}{text[1..]}", "Co-op", Core.Hours.Place.Coop, "", who, house.Split(held.Split), house.Touches(held.Touches), timedIn: 70);
        }
    }

    private void Write(PlacedActivity placed)
    {
        var activity = placed.Activity;
        var quiet = activity.Kind is ActivityKind.Research or ActivityKind.Writing or ActivityKind.Reading;
        var who = placed.Pupils.Where(p => p.AgeOn(Date) >= 6 || (!quiet && page.Chance.In(60))).ToList();
        var phrase = page.Chance.Of(_coop.UnitNotes.Phrases);
        var what = phrase.Replace("{title}", activity.Title, StringComparison.Ordinal).Replace("{unit}", placed.Unit.Title, StringComparison.Ordinal);
        var split = activity.Split(placed.Unit.LeftOut)!;
        var place = _coop.UnitNotes.AtTheMill.Contains(activity.Code) ? Core.Hours.Place.Coop
            : activity.Kind == ActivityKind.Outing ? Core.Hours.Place.Elsewhere : Core.Hours.Place.Home;
        page.Write(placed.StartsAt, what, placed.Unit.Title, place, Note(KindOf(activity.Kind), 22), page.Times(who, activity.HandsOnMinutes), split.Split, split.Touches, timedIn: 70, placed);
    }

    private void Write(CoopCourse course)
    {
        var at = DayPage.Minute(course.At);
        var who = house.Children.Where(p => TakesPart(p, course)).ToList();
        if (course.How == CourseHow.Together)
        {
            if (who.Count == 0)
                return;
            var band = who.Select(p => course.BandFor(p.AgeOn(Date))).LastOrDefault(b => b is not null) ?? course.Bands[0];
            Write(course, band, page.Times(who, band.Minutes), at, null);
            return;
        }

        foreach (var pupil in who.Where(_ => !page.Chance.In(5)))
        {
            var band = course.BandFor(pupil.AgeOn(Date))!;
            Write(course, band, [(pupil, Math.Max(10, band.Minutes + page.Chance.Of([-5, 0, 0, 0, 5])))], at, pupil);
        }
    }

    private void Fill()
    {
        foreach (var pupil in house.Children.Where(p => p.IsOfSchoolAge))
        {
            var entries = 0;
            foreach (var course in page.Chance.Shuffled(_coop.Courses.Where(c => c.How == CourseHow.Filler && c.BandFor(pupil.AgeOn(Date)) is not null)))
            {
                var lacking = page.Short(pupil) / 5 * 5;
                if (lacking < 15 || entries++ == 2)
                    break;
                var band = course.BandFor(pupil.AgeOn(Date))!;
                Write(course, band, [(pupil, Math.Min(band.Minutes, lacking))], DayPage.Minute(course.At), pupil);
            }
        }
    }

    private void Write(CoopCourse course, CourseBand band, IReadOnlyList<(Pupil, int)> who, int at, Pupil? pupil)
    {
        var note = course.Notes.Count > 0 && page.Chance.In(9) ? page.Chance.Of(course.Notes) : "";
        page.Write(at, page.Told(page.Chance.Of(band.Texts), pupil), course.Name, course.Place, note, who, house.Split(course.Split), house.Touches(course.Touches));
    }

    private bool TakesPart(Pupil pupil, CoopCourse course)
    {
        var age = pupil.AgeOn(Date);
        if (!pupil.IsOfSchoolAge)
            return course.How == CourseHow.Together && (age >= 3 ? course.BandFor(age) is not null && page.Chance.In(38)
                : age == 2 && course.BandFor(3) is { } && page.Chance.In(2.5) && course.Place == Core.Hours.Place.Home);
        return course.BandFor(age) is { } band && !(course.Optional && page.Short(pupil) < band.Minutes);
    }

    private string Note(string kind, double percent)
    {
        if (!page.Chance.In(percent))
            return "";
        var notes = _coop.UnitNotes.Notes;
        return page.Chance.Of(notes.TryGetValue(kind, out var own) && page.Chance.In(60) ? own : notes["any"]);
    }

    private static string KindOf(ActivityKind kind) => char.ToLowerInvariant(kind.ToString()[0]) + kind.ToString()[1..];
}
