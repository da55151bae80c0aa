using CoopLessons.Core.Calendar;

namespace CoopLessons.Core.Requirements.Standing;

/// <summary>
/// The days over which a pathway is measured for one learner and school year: the law's twelve months, cut by the
/// span under the pathway and by the ages of the duty.
/// </summary>
/// <param name="Year">The law's twelve months, or the family's school year where the law fixes none.</param>
/// <param name="Asked">The part of them for which something is asked of this child; null for none.</param>
/// <param name="Counted">The part whose log counts: <paramref name="Asked"/>, or less where nothing counts before a paper is in.</param>
/// <param name="Why">Why only a part is asked, or nothing: clauses without a full stop.</param>
public sealed record LegalWindow(DayRange Year, DayRange? Asked, DayRange? Counted, IReadOnlyList<string> Why)
{
    // A family that begins within a month of its own year's first day has taught the whole year; one that begins more
    // than a quarter into the law's year has not, whatever its own calendar says (common practice, no source).
    private const int AMonth = 31;
    private const int AQuarter = 92;

    // The law's year in which today lies is taken when it shares at least so many days with the school year: a family
    // that teaches from September to August keeps the year begun in July until its own is over.
    private const int EnoughOfAYear = 90;

    public bool IsPartial => Asked != Year;

    /// <summary>A year's figure cut down to the days asked, rounded up to the next whole unit: arithmetic, not law.</summary>
    public int ProRated(int figure) => Asked is { } asked ? (int)(((long)figure * asked.Count + Year.Count - 1) / Year.Count) : 0;

    public static LegalWindow Of(LearnerFacts learner, PathwaySpan span, TeachingCalendar school, DateOnly asOf)
    {
        var year = YearOf(span.Pathway, school.Year, asOf);
        var why = new List<string>();
        var asked = BySpan(span, school.Year, year, why);
        asked = ByAge(learner, span.Pathway.Ages, year, asked, why);
        var counted = asked;
        if (asked is { } days && span.CountsFrom is { } from && from > days.First)
        {
            why.Add($"nothing counts before {from.Plain()}");
            counted = from > days.Last ? null : new DayRange(from, days.Last);
        }

        return new LegalWindow(year, asked, counted, why);
    }

    /// <summary>Every day that may count for any span of the school year, for reading the log once.</summary>
    public static DayRange Reach(IEnumerable<PathwaySpan> spans, DayRange school)
    {
        var all = spans.SelectMany(s => s.Pathway.Year is { } law ? LawYears(law, school) : []).Append(school).ToList();
        return new DayRange(all.Min(y => y.First), all.Max(y => y.Last));
    }

    /// <summary>The window cut to the ages of one requirement; null where it asks nothing of the child.</summary>
    public LegalWindow ForAges(LearnerFacts learner, int? fromAge, int? underAge)
    {
        var why = new List<string>(Why);
        return this with
        {
            Asked = Cut(learner, Asked, fromAge, underAge, why),
            Counted = Cut(learner, Counted, fromAge, underAge, []),
            Why = why,
        };
    }

    private static DayRange YearOf(Pathway pathway, DayRange school, DateOnly asOf)
    {
        if (pathway.Year is not { } law)
            return school;
        var years = LawYears(law, school);
        var now = years.Where(y => y.Contains(asOf) && Shared(y, school) >= EnoughOfAYear).ToList();
        return now.Count > 0 && school.Contains(asOf) ? now[0] : years.MaxBy(y => Shared(y, school));
    }

    private static List<DayRange> LawYears(LegalYear law, DayRange school)
    {
        var years = new List<DayRange>();
        var first = law.Begins.In(school.First.Year);
        if (first > school.First)
            first = law.Begins.In(school.First.Year - 1);
        for (; first <= school.Last; first = law.Begins.In(first.Year + 1))
            years.Add(new DayRange(first, law.Begins.In(first.Year + 1).AddDays(-1)));
        return years;
    }

    private static int Shared(DayRange a, DayRange b) => a.Overlaps(b)
        ? Math.Min(a.Last.DayNumber, b.Last.DayNumber) - Math.Max(a.First.DayNumber, b.First.DayNumber) + 1
        : 0;

    private static DayRange? BySpan(PathwaySpan span, DayRange school, DayRange year, List<string> why)
    {
        var first = year.First;
        var grace = span.Because == SpanReason.Begins ? AMonth : 0;
        if (span.From > year.First && (span.From > school.First.AddDays(grace) || span.From > year.First.AddDays(AQuarter)))
        {
            first = span.From;
            why.Add(span.Because switch
            {
                SpanReason.Begins => $"home instruction began on {span.From.Plain()}",
                SpanReason.Moves => $"the family moved to {span.Place} on {span.From.Plain()}",
                _ => $"this pathway began on {span.From.Plain()}",
            });
        }

        var last = year.Last;
        if (span.Until is { } until && until < school.Last && until < year.Last)
        {
            last = until;
            why.Add($"this pathway ended on {until.Plain()}");
        }

        return last < first ? null : new DayRange(first, last);
    }

    private static DayRange? ByAge(LearnerFacts learner, DutyAges ages, DayRange year, DayRange? days, List<string> why)
    {
        var from = ages.From;
        if (ages is { From: { } age, By: { } by })
        {
            // A date in summer decides the year that begins after it, one in late June the year that ends with it.
            var decides = by.OnOrAfter(new DateOnly(year.First.Year, 7, 1));
            if (learner.Birthday(age) > decides)
            {
                why.Add($"{learner.Name} was not {age} by {decides.Plain()}, so the duty begins with the next year");
                return null;
            }

            from = null;
        }

        var to = ages.To;
        if (ages is { Ends: DutyEnd.Year, To: { } end } && learner.Birthday(end) >= year.First)
            to = null;
        return Cut(learner, days, from, to, why);
    }

    private static DayRange? Cut(LearnerFacts learner, DayRange? days, int? fromAge, int? underAge, List<string> why)
    {
        if (days is not { } range)
            return null;
        var (first, last) = (range.First, range.Last);
        if (fromAge is { } from && learner.Birthday(from) > first)
        {
            first = learner.Birthday(from);
            why.Add($"the duty begins with {learner.Name}'s {Ordinal(from)} birthday, {first.Plain()}");
        }

        if (underAge is { } under && learner.Birthday(under) <= last)
        {
            last = learner.Birthday(under).AddDays(-1);
            why.Add($"the duty ends with {learner.Name}'s {Ordinal(under)} birthday, {learner.Birthday(under).Plain()}");
        }

        return last < first ? null : new DayRange(first, last);
    }

    private static string Ordinal(int age) => age + (age is >= 11 and <= 13 ? "th" : (age % 10) switch { 1 => "st", 2 => "nd", 3 => "rd", _ => "th" });
}
