using System.Globalization;
using CoopLessons.Core.Calendar;

namespace CoopLessons.Core.Requirements.Duties;

/// <summary>
/// One learner's papers, tests and evaluations in one school year, with their dates. Law as data: what stands here is
/// no advice, and the source of each duty stands beside it.
/// </summary>
/// <remarks>
/// The year reaches from 1 July of the calendar year in which the school year begins over twelve months at least, so
/// that notices of the summer before are there; a school year that begins in April, May or June reaches from its own
/// first day but looks for dates of every year from 1 July; one that begins in January, February or March is its own
/// twelve months. A beginning in the June before counts for the year.
/// <para>
/// Left out are dates after the stay under a pathway has ended (save those counted from the end of home instruction),
/// and fixed dates of every year before it began in mid-year. An event between two stays belongs to the later one, an ending to the
/// earlier one.
/// </para>
/// </remarks>
public static class DutyList
{
    /// <param name="spans">The learner's, in any order, of other years too; they do not overlap.</param>
    /// <param name="year">The family's school year.</param>
    /// <returns>By due date, those without one last; where dates are equal or absent, in the order of spans and of the catalog.</returns>
    public static IReadOnlyList<DatedDuty> Of(LearnerFacts learner, IReadOnlyList<PathwaySpan> spans, TeachingCalendar year, DutyDates dates)
    {
        var dutyYear = new DutyYear(year);
        var inOrder = spans.OrderBy(s => s.From).ToList();
        var stays = new HashSet<(string Code, string Pathway)>();
        var rows = new List<DatedDuty>();
        foreach (var span in inOrder.Where(s => s.In(dutyYear.Reach) is not null))
        {
            var again = !stays.Add((span.Code, span.Pathway.Id));
            var keyEnd = again ? string.Create(CultureInfo.InvariantCulture, $"/{span.From:yyyy-MM-dd}") : "";
            var events = new KnownEvents(span, inOrder, dutyYear, dates.Events);
            rows.AddRange(new SpanDuties(learner, span, dutyYear, events, dates.SetByFamily, keyEnd).All());
        }

        // A stable sort: equal dates keep the catalog's order.
        return [.. rows.OrderBy(r => r.Due ?? DateOnly.MaxValue)];
    }
}
