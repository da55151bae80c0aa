using System.Globalization;

namespace CoopLessons.Core.Requirements.Duties;

/// <summary>What a rule gives: a date or the event that must be told first, with the arithmetic in words.</summary>
internal sealed record Reckoned(DateOnly? Date, string Words, LegalEvent? Missing = null, DueOrigin Origin = DueOrigin.Computed, bool TellsBirthDate = false);

/// <summary>Finds the dates of one duty's rule for one span and school year.</summary>
/// <param name="one">The day of an event, or null where the family must tell it.</param>
/// <param name="others">The dated rows of another duty of the pathway.</param>
internal sealed class DueReckoning(
    LearnerFacts learner, DutyYear year, PathwaySpan span, Func<LegalEvent, EventDay?> one, Func<string, IReadOnlyList<DatedDuty>> others)
{
    private readonly DueWords _words = new(year);

    /// <summary>The events that a rule counts from, without those behind another duty.</summary>
    public static IEnumerable<LegalEvent> EventsOf(DueRule rule) => rule switch
    {
        AfterEvent after => [after.Event],
        BeforeEvent before => [before.Event],
        AtEvent at => [at.Event],
        LaterOf later => later.Of.SelectMany(EventsOf).Distinct(),
        EarlierOf earlier => earlier.Of.SelectMany(EventsOf).Distinct(),
        _ => [],
    };

    /// <summary>One for every time in the year; none where the rule gives nothing in this year.</summary>
    public IReadOnlyList<Reckoned> All(DueRule rule) => rule switch
    {
        InTerms terms => [.. Enumerable.Range(1, terms.Count).Select(n => Term(n, terms.Count))],
        OnBirthday birthday when !year.Reach.Contains(learner.Birthday(birthday.Age)) => [],
        _ => [Of(rule)],
    };

    private Reckoned Of(DueRule rule) => rule switch
    {
        OnDate on => On(on),
        AfterEvent after => After(after),
        BeforeEvent before => Before(before),
        AtEvent at => From(at.Event, day => new(day.On, $"on the day on which {_words.Until(day)}"), $"on the day on which {DueWords.Present(at.Event)}"),
        LaterOf later => Several(later.Of, "later", dates => dates.Max()),
        EarlierOf earlier => Several(earlier.Of, "earlier", dates => dates.Min()),
        WithDuty with => With(with),
        InTerms terms => Term(terms.Count, terms.Count),
        OnBirthday birthday => new(
            learner.Birthday(birthday.Age),
            string.Create(CultureInfo.InvariantCulture, $"on the day on which the child turns {birthday.Age}"),
            TellsBirthDate: true),
        InYear => new(null, "once in the school year; the law names no date"),
        OnRequest => new(null, "only when the office asks for it"),
        _ => throw new ArgumentOutOfRangeException(nameof(rule), rule, "A rule without a reckoning."),
    };

    private Reckoned On(OnDate on)
    {
        var named = on.Date.OnOrAfter(on.After ? year.Last.AddDays(1) : year.DatesFrom);
        var due = on.Before ? named.AddDays(-1) : named;
        var words = on.Before ? $"before {_words.Day(named)}, so by {_words.Day(due)}" : $"by {_words.Day(named)}";
        if (on.After)
            words += $", the first after the school year's last day, {_words.Day(year.Last)}";
        if (on.Weekend != WeekendRule.FridayBefore || due.DayOfWeek is not (DayOfWeek.Saturday or DayOfWeek.Sunday))
            return new(due, words);
        var friday = due.AddDays(due.DayOfWeek == DayOfWeek.Saturday ? -1 : -2);
        return new(friday, $"{words}; that is a {due.DayOfWeek}, so the Friday before, {_words.Day(friday)}");
    }

    private Reckoned After(AfterEvent after)
    {
        var count = DueWords.Count(after.Count, after.Unit);
        return From(
            after.Event,
            day => Counted(Ahead(day.On, after.Count, after.Unit), $"{count} after {_words.Since(day)}"),
            $"{count} after {DueWords.Present(after.Event)}");
    }

    private Reckoned Before(BeforeEvent before)
    {
        var count = DueWords.Count(before.Count, before.Unit);
        // Whole days must lie between: the day of the paper and the day of the event are none of them.
        var between = before.Unit is DueUnit.BusinessDays or DueUnit.SchoolDays ? string.Create(CultureInfo.InvariantCulture, $", with {before.Count} whole {(before.Count == 1 ? "one" : "ones")} between") : "";
        return From(
            before.Event,
            day => Counted(Back(day.On, before.Count, before.Unit), $"{count} before {_words.Until(day)}{between}"),
            $"{count} before {DueWords.Present(before.Event)}");
    }

    private Reckoned From(LegalEvent legal, Func<EventDay, Reckoned> known, string unknown) => one(legal) is { } day
        ? known(day) with { TellsBirthDate = day.For == StandsFor.TheAges }
        : new(null, unknown, legal);

    private static Reckoned Counted(DateOnly? date, string words) =>
        date is null ? new(null, $"{words}; the school year does not have so many teaching days there") : new(date, words);

    private DateOnly? Ahead(DateOnly from, int count, DueUnit unit) => unit switch
    {
        DueUnit.Days => from.AddDays(count),
        DueUnit.BusinessDays => BusinessDays.After(from, count),
        DueUnit.Weeks => from.AddDays(7 * count),
        DueUnit.Months => from.AddMonths(count),
        _ => year.Calendar.TeachingDays().Where(d => d > from).Skip(count - 1).Cast<DateOnly?>().FirstOrDefault(),
    };

    private DateOnly? Back(DateOnly from, int count, DueUnit unit) => unit switch
    {
        DueUnit.Days => from.AddDays(-count),
        DueUnit.BusinessDays => BusinessDays.Before(from, count),
        DueUnit.Weeks => from.AddDays(-7 * count),
        DueUnit.Months => from.AddMonths(-count),
        _ => year.Calendar.TeachingDays().Where(d => d < from).Reverse().Skip(count).Cast<DateOnly?>().FirstOrDefault(),
    };

    private Reckoned Several(IReadOnlyList<DueRule> rules, string which, Func<IEnumerable<DateOnly>, DateOnly> choose)
    {
        var parts = rules.Select(rule => (Rule: rule, Reckoned: Of(rule))).ToList();
        var words = string.Join(" or ", parts.Select(p =>
            p.Rule is not OnDate && p.Reckoned.Date is { } date ? $"{p.Reckoned.Words} ({_words.Day(date)})" : p.Reckoned.Words));
        words += $", whichever is {which}";
        var tells = parts.Exists(p => p.Reckoned.TellsBirthDate);
        return parts.TrueForAll(p => p.Reckoned.Date is not null)
            ? new(choose(parts.Select(p => p.Reckoned.Date!.Value)), words, TellsBirthDate: tells)
            : new(null, words, parts.Select(p => p.Reckoned.Missing).FirstOrDefault(m => m is not null), TellsBirthDate: tells);
    }

    private Reckoned With(WithDuty with)
    {
        var rows = others(with.Duty);
        var what = span.Pathway.Duties.FirstOrDefault(d => d.Id == with.Duty)?.What ?? with.Duty;
        if (rows.Where(r => r.Due is not null).MaxBy(r => r.Due) is { } last && rows.All(r => r.Missing is null))
        {
            var number = last.Of > 1 ? string.Create(CultureInfo.InvariantCulture, $" (number {last.Number} of {last.Of})") : "";
            var origin = last.Origin == DueOrigin.Proposed ? DueOrigin.Proposed : DueOrigin.Computed;
            return new(last.Due, $"together with “{what}”{number} on {_words.Day(last.Due!.Value)}", Origin: origin, TellsBirthDate: last.TellsBirthDate);
        }

        return new(null, $"together with “{what}”, which has no date", rows.Select(r => r.Missing).FirstOrDefault(m => m is not null));
    }

    private Reckoned Term(int number, int count)
    {
        var parts = year.Calendar.Year.EvenParts(count);
        var end = parts[Math.Min(number, parts.Count) - 1].Last;
        return new(
            end,
            string.Create(CultureInfo.InvariantCulture, $"the end of part {number} of {count} even parts of the school year, proposed until you set your own date"),
            Origin: DueOrigin.Proposed);
    }
}
