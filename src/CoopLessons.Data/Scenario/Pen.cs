using CoopLessons.Data.Log;

namespace CoopLessons.Data.Scenario;

/// <summary>
/// The hand that writes lines down: mostly the same evening, some at once, some weeks on Sunday night; now and then it
/// mends or strikes out what it wrote. Nothing is written after the evening before today.
/// </summary>
internal sealed class Pen(Household house, DateOnly today)
{
    private const int Evening = (20 * 60) + 40;
    private const int Midnight = 24 * 60;
    private readonly DateTime _last = house.Utc(today.AddDays(-1), Midnight - 1);

    /// <summary>Writes the lines of one week.</summary>
    public IEnumerable<Draft> Write(IReadOnlyList<Line> lines, Chance chance)
    {
        var onSunday = chance.In(20);
        var late = 0;
        foreach (var day in lines.GroupBy(l => l.Date))
        {
            var author = chance.In(78) ? house.Adults[0] : chance.Of(house.Adults);
            var sunday = day.Key.AddDays((7 - (int)day.Key.DayOfWeek) % 7);
            var waits = onSunday && day.Key.DayOfWeek != DayOfWeek.Sunday && house.Utc(sunday, Midnight - 1) <= _last;
            var evening = Math.Max(Evening + chance.Between(0, 55), day.Max(l => l.To) + 4);
            var ordinal = 0;
            foreach (var line in day)
            {
                var atOnce = chance.In(28);
                var after = chance.Between(2, 11);
                var at = waits ? house.Utc(sunday, Evening + (late++ * 0.75))
                    : atOnce ? house.Utc(line.Date, line.To + after)
                    : house.Utc(line.Date, Math.Min(Midnight - 1, evening + (ordinal++ * 0.9)));
                if (at > _last)
                    at = _last;
                foreach (var draft in Write(line, author, at, chance))
                    yield return draft;
            }
        }
    }

    private IEnumerable<Draft> Write(Line line, Author author, DateTime at, Chance chance)
    {
        var id = chance.Id(at);
        var again = at.AddDays(chance.Between(1, 4)).AddMinutes(-chance.Between(0, 50));
        (EntryFacts Facts, string Why)? mend = chance.In(1.6) ? Mended(line, chance) : null;
        yield return mend is { } first && again <= _last
            ? new Draft(id, first.Facts, author, at, new Rewriting(line.Facts, chance.Of(house.Adults), again, first.Why), line.Placed)
            : new Draft(id, line.Facts, author, at, null, line.Placed);

        if (line.Placed is null && chance.In(0.7))
        {
            var twin = chance.Id(at);
            var why = chance.Of(house.Coop.Whys.Removed);
            if (again <= _last)
                yield return new Draft(twin, line.Facts with { StartsAt = null, Note = "" }, author, at, new Rewriting(null, author, again, why), null);
        }
    }

    /// <summary>What was written first, before it was mended to what was done.</summary>
    private (EntryFacts Facts, string Why) Mended(Line line, Chance chance)
    {
        var whys = house.Coop.Whys;
        var longer = chance.Of([5, 10, 15, 20]);
        var kind = chance.Between(0, 2);
        if (kind == 0 && line.Place != Core.Hours.Place.Home)
            return (line.Facts with { Place = Core.Hours.Place.Home }, chance.Of(whys.Place));
        if (kind == 1)
            return (line.Facts with { What = line.Untitled }, chance.Of(whys.What));
        var times = line.Times.Select(t => new Core.Hours.LearnerTime(t.LearnerId, new Core.Hours.Minutes(t.Minutes.Value + longer)));
        return (line.Facts with { Times = [.. times] }, chance.Of(whys.Minutes));
    }
}
