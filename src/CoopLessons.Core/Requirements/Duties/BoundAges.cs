using CoopLessons.Core.Calendar;

namespace CoopLessons.Core.Requirements.Duties;

/// <summary>The days on which the law's ages hold for a learner.</summary>
/// <param name="From">The first; null where no age opens them.</param>
/// <param name="Past">The first day after them; null where no age ends them.</param>
internal readonly record struct BoundAges(DateOnly? From, DateOnly? Past)
{
    public static BoundAges Of(LearnerFacts learner, DutyAges ages, Duty duty, DutyYear year)
    {
        DateOnly? from = ages.From is { } begins ? Opening(learner.Birthday(begins), ages.By, year) : null;
        DateOnly? past = ages.To is { } ends ? Closing(learner.Birthday(ends), ages.Ends, year) : null;
        if (duty.FromAge is { } fromAge && learner.Birthday(fromAge) is var opens && (from is null || opens > from))
            from = opens;
        if (duty.UnderAge is { } underAge && learner.Birthday(underAge) is var closes && (past is null || closes < past))
            past = closes;
        return new(from, past);
    }

    public bool Meet(DayRange days) => (From is null || From <= days.Last) && (Past is null || Past > days.First) && (From is null || Past is null || From < Past);

    // Of that age by the date: bound for the whole year in which the date lies, however many years from this one.
    private static DateOnly Opening(DateOnly birthday, MonthDay? by, DutyYear year)
    {
        if (by is not { } date)
            return birthday;
        var ahead = date.OnOrAfter(birthday).Year - date.OnOrAfter(year.DatesFrom).Year;
        return ahead <= 0 ? year.Reach.First.AddYears(ahead) : year.Reach.Last.AddDays(1).AddYears(ahead - 1);
    }

    private static DateOnly Closing(DateOnly birthday, DutyEnd ends, DutyYear year) =>
        ends == DutyEnd.Year && year.Reach.Contains(birthday) ? year.Reach.Last.AddDays(1) : birthday;
}
