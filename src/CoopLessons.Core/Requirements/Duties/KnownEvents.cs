namespace CoopLessons.Core.Requirements.Duties;

/// <summary>The days of events for one span and one school year: those that the span and the calendar show, and those that the family told.</summary>
internal sealed class KnownEvents
{
    private readonly PathwaySpan _span;
    private readonly DutyYear _year;
    private readonly List<RecordedEvent> _told;
    private readonly List<RecordedEvent> _toldToAnyone;

    public KnownEvents(PathwaySpan span, IReadOnlyList<PathwaySpan> spans, DutyYear year, IReadOnlyList<RecordedEvent> told)
    {
        (_span, _year) = (span, year);
        _toldToAnyone = [.. told.OrderBy(e => e.On)];
        _told = [.. _toldToAnyone.Where(e => ReferenceEquals(SpanOf(e, spans), span))];
    }

    /// <summary>Every day in this year on which the event happened, in order; without stand-ins.</summary>
    public IReadOnlyList<EventDay> All(LegalEvent legal)
    {
        var days = _told.Where(e => e.Event == legal && _year.Reach.Contains(e.On)).Select(e => e.On);
        days = legal switch
        {
            LegalEvent.YearStart => [_year.First],
            LegalEvent.YearEnd => [_year.Last],
            LegalEvent.Begin when _span.Because == SpanReason.Begins && _year.Opens(_span.From) => days.DefaultIfEmpty(_span.From),
            LegalEvent.Move when _span.Because == SpanReason.Moves && _year.Opens(_span.From) => days.Prepend(_span.From),
            _ => days,
        };
        return [.. days.Distinct().Order().Select(on => new EventDay(legal, on))];
    }

    /// <summary>The day from which a duty of every year, or of the beginning, is counted; null where the family must tell it.</summary>
    public EventDay? One(LegalEvent legal, BoundAges ages) => legal switch
    {
        LegalEvent.Begin => Beginning(ages) is var begin && _year.Opens(begin.On)
            ? begin
            : new(LegalEvent.Begin, _year.First, StandsFor.AnEarlierBeginning),
        LegalEvent.FirstApproval or LegalEvent.FirstFiling => First(legal),
        _ => All(legal) is [.., var last] ? last : null,
    };

    /// <summary>When home instruction began under the pathway, or, if that is later, when the law's ages began: in whatever year.</summary>
    public EventDay Beginning(BoundAges ages)
    {
        var told = _told.LastOrDefault(e => e.Event == LegalEvent.Begin && e.On <= _year.Reach.Last);
        var begin = told is not null
            ? new EventDay(LegalEvent.Begin, told.On)
            : new EventDay(LegalEvent.Begin, _span.From, _span.Because == SpanReason.Begins ? StandsFor.TheEvent : StandsFor.ComingUnderThePathway);
        if (ages.From is not { } opens || opens <= begin.On || !_year.Opens(opens))
            return begin;
        // A child who is of age by summer is first taught under the law when the school year begins.
        var taught = opens > _year.First || begin.On > _year.First ? opens : _year.First;
        return taught > begin.On ? new(LegalEvent.Begin, taught, StandsFor.TheAges) : begin;
    }

    // A first approval may lie years back, and some weeks before the span to which it belongs.
    private EventDay? First(LegalEvent legal)
    {
        var days = _toldToAnyone.Where(e => e.Event == legal && e.On <= _year.Reach.Last).Select(e => e.On).ToList();
        return days.Count == 0
            ? null
            : new(legal, days.Exists(d => d >= _span.From) ? days.First(d => d >= _span.From) : days[^1]);
    }

    /// <summary>
    /// The span during which the event happened. Between spans an ending belongs to the one before, and everything
    /// else to the one after: a child leaves school, and a form comes, before instruction begins.
    /// </summary>
    private static PathwaySpan? SpanOf(RecordedEvent told, IReadOnlyList<PathwaySpan> spans)
    {
        if (spans.LastOrDefault(s => s.Holds(told.On)) is { } holding)
            return holding;
        var before = spans.LastOrDefault(s => s.From <= told.On);
        var after = spans.FirstOrDefault(s => s.From > told.On);
        return told.Event == LegalEvent.End ? before ?? after : after ?? before;
    }
}
