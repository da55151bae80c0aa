using CoopLessons.Core.Calendar;
using CoopLessons.Core.Hours;
using CoopLessons.Core.Requirements.Forecasts;

namespace CoopLessons.Core.Requirements.Standing;

/// <summary>Holds the figures of one pathway against one learner's log.</summary>
internal sealed class Evaluation(StandingQuestion asked, PathwaySpan span, LegalWindow window)
{
    public RequirementStanding Of(Requirement requirement, bool? counts = null)
    {
        var weighs = counts ?? (requirement.Binds || span.Choices.Goals.Contains(requirement.Id));
        var own = window.ForAges(asked.Learner, requirement.FromAge, requirement.UnderAge);
        if (own.Asked is null)
            return NotAsked(requirement, weighs, own, StandingWords.NothingAsked(asked.Learner, own));
        if (requirement.Grades is { } grades)
        {
            if (asked.Learner.Grade is not { } grade)
                return Open(requirement, weighs, own, $"It depends on the grade, and none is set for {asked.Learner.Name}.");
            if (!grades.Hold(grade))
                return NotAsked(requirement, weighs, own, $"It is asked in other grades ({grades}).");
        }

        return requirement switch
        {
            DaysRequirement days => Days(days, weighs, own),
            HoursRequirement hours => Hours(hours, weighs, own),
            AverageRequirement average => Average(average, weighs, own),
            MonthsRequirement months => Months(months, weighs, own),
            TermsRequirement terms => Terms(terms, weighs, own),
            AnyOf any => Group(any, any.Of, weighs, own, Verdicts.Best),
            AllOf all => Group(all, all.Of, weighs, own, Verdicts.Worst),
            JudgedRequirement judged => Open(judged, weighs, own, judged.Text),
            _ => throw new ArgumentException($"There is no rule for a {requirement.GetType().Name}.", nameof(requirement)),
        };
    }

    private RequirementStanding Days(DaysRequirement days, bool weighs, LegalWindow own)
    {
        var amounts = Measuring.Days(asked, days.MinutesADay);
        var figure = span.Choices.Figures.TryGetValue(days.Id, out var local) ? (int)local : days.Days;
        return days.Per == Per.Year
            ? UnderTheDay(Total(days, weighs, own, amounts, Measure.Days, figure), days, amounts)
            : InParts(days, weighs, own, amounts, Measure.Days, Parts(days.Per), figure);
    }

    // Why a long total may still be too few days: the days that were logged and do not count.
    private RequirementStanding UnderTheDay(RequirementStanding standing, DaysRequirement days, IReadOnlyDictionary<DateOnly, int> counted)
    {
        var minimum = days.MinutesADay ?? asked.FamilyMinimum.Value;
        var under = asked.Ledger.ByDate().Keys.Count(d => standing.Window.Counted?.Contains(d) == true && !counted.ContainsKey(d) && !asked.Marks.ContainsKey(d));
        var marked = asked.Marks.Count(m => m.Value && counted.ContainsKey(m.Key) && standing.Window.Counted?.Contains(m.Key) == true);
        return standing with { Why = standing.Why + StandingWords.UnderTheDay(under, minimum) + StandingWords.Marked(marked) };
    }

    private RequirementStanding Hours(HoursRequirement hours, bool weighs, LegalWindow own)
    {
        if (hours.Subjects is { } pool && !pool.Any(s => span.Choices.SubjectsFor(s).Count > 0))
            return Open(hours, weighs, own, "None of your subjects is matched to the subjects that count here: match them first.");
        var amounts = Measuring.Minutes(asked, span.Choices, hours.Subjects, hours.Place);
        var figure = span.Choices.Figures.TryGetValue(hours.Id, out var local) ? local : hours.Hours;
        int? target = figure is { } f ? Quantity.OfHours(f).Value : null;
        return hours.Per == Per.Year
            ? Total(hours, weighs, own, amounts, Measure.Minutes, target)
            : InParts(hours, weighs, own, amounts, Measure.Minutes, Parts(hours.Per), target);
    }

    private RequirementStanding Average(AverageRequirement average, bool weighs, LegalWindow own)
    {
        var amounts = Measuring.Minutes(asked, span.Choices, null, null);
        var total = Total(average, weighs, own, amounts, Measure.Minutes, average.MinutesADay * average.OverDays);
        var days = amounts.Count(a => own.Counted?.Contains(a.Key) == true);
        return total with { Why = $"{total.Why} {StandingWords.Average(total.Measured!.Value.Value, days, average.MinutesADay)}" };
    }

    private RequirementStanding Months(MonthsRequirement months, bool weighs, LegalWindow own)
    {
        // A month counts on its first school day.
        var firsts = Measuring.Days(asked, null).Keys.Where(d => own.Counted?.Contains(d) == true)
            .GroupBy(Month.Of).ToDictionary(m => m.Min(), _ => 1);
        var total = Total(months, weighs, own, firsts, Measure.Months, months.Months);
        // Months to come cannot be drawn from weeks that lie behind.
        var left = own.Counted is { } counted && asked.AsOf < counted.Last
            ? Month.Through(new DayRange(asked.AsOf > counted.First ? asked.AsOf : counted.First, counted.Last)).Count(m => !firsts.Keys.Any(m.Contains))
            : 0;
        if (total.Verdict is not (Verdict.OnPace or Verdict.Behind or Verdict.CannotTellYet))
            return total with { Forecast = null };
        var verdict = total.Measured!.Value.Value + left >= months.Months ? Verdict.OnPace : Verdict.Behind;
        return total with { Verdict = verdict, Forecast = null, Why = StandingWords.Months(months, verdict, total.Measured.Value, left) };
    }

    private RequirementStanding Terms(TermsRequirement terms, bool weighs, LegalWindow own)
    {
        var amounts = Measuring.Minutes(asked, span.Choices, null, null);
        int? guide = terms.Hours is { } hours ? Quantity.OfHours(hours).Value : null;
        return InParts(terms, weighs, own, amounts, Measure.Minutes, terms.Terms, guide);
    }

    private RequirementStanding Group(Requirement group, IReadOnlyList<Requirement> of, bool weighs, LegalWindow own, Func<IEnumerable<Verdict>, Verdict> sum)
    {
        // An alternative under a condition stands open only to a family that said it holds.
        var parts = of.Where(r => r.When is null || span.Choices.Goals.Contains(r.Id)).Select(r => Of(r, weighs)).ToList();
        var verdict = sum(parts.Select(p => p.Verdict));
        return new RequirementStanding(group, weighs, own, verdict, null, null, null, StandingWords.Group(group, verdict, parts), parts, null);
    }

    private RequirementStanding Total(Requirement of, bool weighs, LegalWindow own, IReadOnlyDictionary<DateOnly, int> amounts, Measure measure, int? target)
    {
        var measured = new Quantity(amounts.In(own.Counted), measure);
        if (target is not { } figure)
            return Open(of, weighs, own, $"{measured} so far. The figure is set locally: ask your office, and enter it here.") with { Measured = measured };
        var full = new Quantity(figure, measure);
        Quantity? part = own.IsPartial ? full with { Value = own.ProRated(figure) } : null;
        var forecast = own.Counted is { } counted && IsRunning(own) ? Forecast.Of(amounts, counted, asked.School, asked.AsOf, figure) : null;
        var verdict = Judge(measured, full, own, forecast);
        var why = StandingWords.Total(of, verdict, measured, full, part, own, forecast);
        return new RequirementStanding(of, weighs, own, verdict, measured, full, part, why, [], forecast) { Amounts = amounts };
    }

    private static Verdict Judge(Quantity measured, Quantity full, LegalWindow own, Forecast? forecast)
    {
        if (measured.Value >= full.Value)
            return Verdict.Met;
        if (own.IsPartial)
            return Verdict.ForYouToJudge;
        if (forecast is null)
            return Verdict.NotMet;
        if (forecast.TeachingDaysLeft == 0)
            return Verdict.Behind;
        return forecast.Outlook is not { } outlook ? Verdict.CannotTellYet
            : outlook.YearEnd.P50 >= full.Value ? Verdict.OnPace
            : Verdict.Behind;
    }

    private RequirementStanding InParts(Requirement of, bool weighs, LegalWindow own, IReadOnlyDictionary<DateOnly, int> amounts, Measure measure, int count, int? target)
    {
        var parts = (span.Pathway.Year is null ? asked.School.Year : own.Year).EvenParts(count).Select((days, i) =>
        {
            var within = own.Counted is { } c && c.Overlaps(days) ? new DayRange(c.First > days.First ? c.First : days.First, c.Last < days.Last ? c.Last : days.Last) : (DayRange?)null;
            var measured = new Quantity(amounts.In(within), measure);
            Quantity? full = target is { } t ? new Quantity(t, measure) : null;
            var verdict = full is not { } figure ? Verdict.ForYouToJudge
                : measured.Value >= figure.Value ? Verdict.Met
                : within != days ? Verdict.ForYouToJudge
                : asked.AsOf <= days.Last ? Verdict.CannotTellYet
                : Verdict.NotMet;
            return new RequirementStanding(of, weighs, own, verdict, measured, full, null, StandingWords.Part(i + 1, days, measured, full), [], null) { Part = days };
        }).ToList();
        var worst = parts.Select(p => p.Verdict).Worst();
        return new RequirementStanding(of, weighs, own, worst, null, null, null, StandingWords.Parts(of, parts), parts, null);
    }

    // The law's year runs on after the family's last teaching day: until its end something can still be logged.
    private bool IsRunning(LegalWindow own) => own.Counted is { } counted && asked.AsOf <= counted.Last;

    private static int Parts(Per per) => per == Per.Quarter ? 4 : 2;

    private static RequirementStanding Open(Requirement of, bool weighs, LegalWindow own, string why) =>
        new(of, weighs, own, Verdict.ForYouToJudge, null, null, null, why, [], null);

    private static RequirementStanding NotAsked(Requirement of, bool weighs, LegalWindow own, string why) =>
        new(of, weighs, own, Verdict.NotAsked, null, null, null, why, [], null);
}
