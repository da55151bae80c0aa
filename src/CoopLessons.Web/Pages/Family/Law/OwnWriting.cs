using CoopLessons.Core.Calendar;
using CoopLessons.Core.Hours;
using CoopLessons.Core.Requirements;
using CoopLessons.Data.Families;

namespace CoopLessons.Web.Pages.Families.Law;

/// <summary>A family's own pathway between its form and the shape of the catalog.</summary>
public static class OwnWriting
{
    private const string DaysId = "days";
    private const string HoursId = "hours";
    private const string EitherId = "days-or-hours";
    private const string CoreId = "core-hours";
    private const string HomeId = "core-hours-home";

    /// <param name="known">The pathway as it stands, so that papers and records keep their ids; null for a new one.</param>
    /// <param name="today">The date of every source: the family's word of that day.</param>
    public static Pathway Write(OwnInput input, IReadOnlyList<FamilySubject> subjects, Pathway? known, DateOnly today)
    {
        var ours = new Source("your own", Basis.Family, today);
        var core = subjects.Where(s => input.CoreSubjects.Contains(s.Id)).ToList();
        var named = subjects.Where(s => input.RequiredSubjects.Contains(s.Id) || core.Contains(s))
            .Select(s => new StatuteSubject(s.Code, s.Name, input.RequiredSubjects.Contains(s.Id), [s.Code], ours));
        return new Pathway(
            "", input.Name, "Written by the family.", ours, new DutyAges(ours), [.. named], Requirements(input, [.. core.Select(s => s.Code)], ours),
            Papers(input, known, ours), Records(input, known, ours), [],
            MonthDay.TryParse(input.YearBegins, out var begins) ? new LegalYear(begins, ours) : null);
    }

    public static OwnInput Read(Pathway pathway, IReadOnlyList<FamilySubject> subjects)
    {
        var all = pathway.AllRequirements.ToList();
        var (days, hours) = (all.OfType<DaysRequirement>().FirstOrDefault(), all.OfType<HoursRequirement>().ToDictionary(h => h.Id));
        var core = (hours.GetValueOrDefault(CoreId) ?? hours.GetValueOrDefault(HomeId))?.Subjects ?? [];
        var required = pathway.Subjects.Where(s => s.Required).Select(s => s.Id).ToList();
        return new OwnInput
        {
            Name = pathway.Name,
            YearBegins = pathway.Year?.Begins.ToString(),
            Days = days?.Days,
            MinutesADay = days?.MinutesADay,
            Hours = hours.GetValueOrDefault(HoursId)?.Hours,
            EitherIsEnough = all.OfType<AnyOf>().Any(),
            CoreHours = hours.GetValueOrDefault(CoreId)?.Hours,
            CoreSubjects = [.. subjects.Where(s => core.Contains(s.Code)).Select(s => s.Id)],
            CoreHoursAtHome = hours.GetValueOrDefault(HomeId)?.Hours,
            RequiredSubjects = [.. subjects.Where(s => required.Contains(s.Code)).Select(s => s.Id)],
            Papers = [.. pathway.Duties.Select(d => new OwnInput.PaperInput { Id = d.Id, What = d.What, To = d.To, By = (d.Due as OnDate)?.Date.ToString() })],
            Records = [.. pathway.Records.Select(r => new OwnInput.RecordInput { Id = r.Id, What = r.What, Years = r.KeepYears })],
        };
    }

    private static List<Requirement> Requirements(OwnInput input, string[] core, Source ours)
    {
        List<Requirement> amounts = [];
        if (input.Days is { } days)
            amounts.Add(new DaysRequirement { Id = DaysId, Name = "school days", Status = FigureStatus.Required, Source = ours, Days = days, MinutesADay = input.MinutesADay });
        if (input.Hours is { } hours)
            amounts.Add(new HoursRequirement { Id = HoursId, Name = "hours of instruction", Status = FigureStatus.Required, Source = ours, Hours = hours });
        List<Requirement> asked = input.EitherIsEnough
            ? [new AnyOf { Id = EitherId, Name = "days or hours", Status = FigureStatus.Required, Source = ours, Of = amounts }]
            : amounts;
        if (input.CoreHours is { } coreHours)
            asked.Add(new HoursRequirement { Id = CoreId, Name = "hours in core subjects", Status = FigureStatus.Required, Source = ours, Hours = coreHours, Subjects = core });
        if (input.CoreHoursAtHome is { } home)
            asked.Add(new HoursRequirement { Id = HomeId, Name = "hours in core subjects at home", Status = FigureStatus.Required, Source = ours, Hours = home, Subjects = core, Place = Place.Home });
        return asked;
    }

    private static List<Duty> Papers(OwnInput input, Pathway? known, Source ours)
    {
        var (written, ids) = (input.Papers.Where(p => p.What is not null).ToList(), known?.Duties.Select(d => d.Id).ToList() ?? []);
        var named = Ids("paper", [.. written.Select(p => p.Id)], ids);
        return [.. written.Select((paper, i) => MonthDay.TryParse(paper.By, out var by)
            ? new Duty(named[i], DutyKind.Other, paper.What!, $"by {by.Words} each school year", new OnDate(by), Repeats.Yearly, FigureStatus.Required, ours, paper.To)
            : new Duty(named[i], DutyKind.Other, paper.What!, "once in the school year", new InYear(), Repeats.Yearly, FigureStatus.Required, ours, paper.To))];
    }

    private static List<RecordToKeep> Records(OwnInput input, Pathway? known, Source ours)
    {
        var (written, ids) = (input.Records.Where(r => r.What is not null).ToList(), known?.Records.Select(r => r.Id).ToList() ?? []);
        var named = Ids("record", [.. written.Select(r => r.Id)], ids);
        return [.. written.Select((record, i) => new RecordToKeep(named[i], record.What!, FigureStatus.Required, ours, record.Years))];
    }

    /// <summary>Rows keep the ids that the pathway gave them; new ones get numbers that no row has or had a moment ago.</summary>
    private static List<string> Ids(string word, IReadOnlyList<string?> sent, List<string> known)
    {
        var (kept, next) = (new HashSet<string>(), 0);
        return [.. sent.Select(id =>
        {
            if (id is not null && known.Contains(id) && kept.Add(id))
                return id;
            do
                next++;
            while (known.Contains($"{word}-{next}"));
            return $"{word}-{next}";
        })];
    }
}
