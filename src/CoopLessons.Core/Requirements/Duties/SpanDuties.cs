using System.Globalization;

namespace CoopLessons.Core.Requirements.Duties;

/// <summary>The duties of one learner under one span in one school year.</summary>
internal sealed class SpanDuties(LearnerFacts learner, PathwaySpan span, DutyYear year, KnownEvents events, IReadOnlyDictionary<string, DateOnly> setByFamily, string keyEnd)
{
    private readonly Dictionary<string, IReadOnlyList<DatedDuty>> _rows = [];
    private readonly HashSet<string> _beingReckoned = [];
    private readonly DueWords _words = new(year);

    public IEnumerable<DatedDuty> All() => span.Pathway.Duties.SelectMany(Rows);

    private IReadOnlyList<DatedDuty> Rows(string id) =>
        span.Pathway.Duties.FirstOrDefault(d => d.Id == id) is { } duty ? Rows(duty) : [];

    private IReadOnlyList<DatedDuty> Rows(Duty duty)
    {
        if (_rows.TryGetValue(duty.Id, out var known))
            return known;
        // Two duties that wait for each other give no date rather than an endless round.
        if (!_beingReckoned.Add(duty.Id))
            return [];
        var rows = Reckon(duty).ToList();
        _beingReckoned.Remove(duty.Id);
        return _rows[duty.Id] = rows;
    }

    private IEnumerable<DatedDuty> Reckon(Duty duty)
    {
        var ages = BoundAges.Of(learner, span.Pathway.Ages, duty, year);
        if (!Asked(duty, ages))
            return [];
        EventDay? One(LegalEvent legal) => events.One(legal, ages);
        var kinds = DueReckoning.EventsOf(duty.Due).ToList();
        if (duty.Repeats != Repeats.Event || kinds.Count == 0)
            return duty.Repeats == Repeats.Event && duty.Due is WithDuty with && Rows(with.Duty).Count == 0 ? [] : Dated(duty, ages, One, null);
        return kinds.SelectMany(events.All).SelectMany(happened =>
            Dated(duty, ages, legal => legal == happened.Event ? happened : One(legal), happened));
    }

    private bool Asked(Duty duty, BoundAges ages)
    {
        // A paper on beginning or ending may fall into the summer around the school year; a yearly one needs teaching.
        var days = duty.Repeats == Repeats.Yearly ? span.In(year.Calendar.Year) : span.In(year.Reach);
        if (days is not { } asked || !ages.Meet(asked))
            return false;
        if (duty.Grades is { } grades && learner.Grade is { } grade && !grades.Hold(grade))
            return false;
        var opens = year.Opens(events.Beginning(ages).On);
        return duty.Repeats switch
        {
            Repeats.Once => opens,
            Repeats.Yearly => !(duty.NotFirstYear && opens),
            _ => true,
        };
    }

    private IEnumerable<DatedDuty> Dated(Duty duty, BoundAges ages, Func<LegalEvent, EventDay?> one, EventDay? happened)
    {
        var found = new DueReckoning(learner, year, span, one, Rows).All(duty.Due);
        return found.Select((r, i) => Row(duty, ages, r, i + 1, found.Count, happened)).OfType<DatedDuty>();
    }

    private DatedDuty? Row(Duty duty, BoundAges ages, Reckoned reckoned, int number, int of, EventDay? happened)
    {
        var day = happened is null ? "" : string.Create(CultureInfo.InvariantCulture, $"/{happened.On:yyyy-MM-dd}");
        var key = string.Create(CultureInfo.InvariantCulture, $"{span.Code}/{span.Pathway.Id}/{duty.Id}/{number}{day}{keyEnd}");
        DateOnly? set = setByFamily.TryGetValue(key, out var own) ? own : null;
        var due = set ?? reckoned.Date;
        if (due is { } date ? !IsOfThisStay(duty, date, set is not null) : !IsInForceSometime(duty))
            return null;
        var missing = due is null ? reckoned.Missing : null;
        var origin = set is not null ? DueOrigin.SetByFamily : due is null ? DueOrigin.None : reckoned.Origin;
        return new DatedDuty(
            key, span, duty, number, of, due, duty.Lead is { } lead ? due?.AddDays(-lead) : null, origin, missing, Why(duty, ages, reckoned, due, set is not null, missing))
        {
            TellsBirthDate = reckoned.TellsBirthDate,
        };
    }

    private bool IsOfThisStay(Duty duty, DateOnly due, bool setByFamily)
    {
        if (due < duty.From || due > duty.Until)
            return false;
        var behind = EventsBehind(duty, []);
        // A paper on ending follows the ending, and one before beginning goes before it.
        if (due > span.Until && !behind.Contains(LegalEvent.End))
            return false;
        // What fell due earlier in the year was the affair of another place, unless instruction began with the year;
        // a paper asked only once would come in no later year and stays.
        return setByFamily || duty.Repeats == Repeats.Once || due >= span.From || span.From <= year.First
            || behind.Exists(e => e is not (LegalEvent.YearStart or LegalEvent.YearEnd or LegalEvent.PublicSchoolStart));
    }

    private List<LegalEvent> EventsBehind(Duty duty, HashSet<string> seen)
    {
        if (duty.Due is not WithDuty with)
            return [.. DueReckoning.EventsOf(duty.Due)];
        return seen.Add(duty.Id) && span.Pathway.Duties.FirstOrDefault(d => d.Id == with.Duty) is { } other ? EventsBehind(other, seen) : [];
    }

    private bool IsInForceSometime(Duty duty) =>
        span.In(year.Reach) is { } days && !(days.Last < duty.From) && !(days.First > duty.Until);

    private string Why(Duty duty, BoundAges ages, Reckoned reckoned, DateOnly? due, bool set, LegalEvent? missing)
    {
        var sentence = (set, missing) switch
        {
            (true, _) when reckoned.Date is { } computed && computed != due => $"Your own date; otherwise {_words.Day(computed)}: {reckoned.Words}",
            (true, _) => $"Your own date; the rule: {reckoned.Words}",
            (_, { } legal) => $"Tell the day on which {DueWords.Present(legal)}: due {reckoned.Words}",
            _ => char.ToUpperInvariant(reckoned.Words[0]) + reckoned.Words[1..],
        };
        if (duty.Grades is { } grades && learner.Grade is null)
            sentence += $"; the grade decides whether it is asked ({grades.Text})";
        if (due is { } date && ages.Past is { } past && date >= past)
            sentence += "; the law's ages have ended for the child by then";
        else if (due is { } early && ages.From is { } from && early < from && duty.Due is OnDate)
            sentence += "; the law's ages begin for the child after it";
        if (!set && due < span.From && span.From > year.First && duty is { Repeats: Repeats.Once, Due: OnDate })
            sentence += "; that was before instruction began here, so ask the office";
        return sentence + ".";
    }
}
