using System.Globalization;
using CoopLessons.Core.Coop;
using CoopLessons.Data.Coops.Days;
using CoopLessons.Data.Coops.Turns;
using Microsoft.EntityFrameworkCore;

namespace CoopLessons.Data.Coops.Off;

/// <summary>A day on which a lost meeting could be made up for.</summary>
/// <param name="Against">Sentences, one for each thing that stands against it and not against another day.</param>
public sealed record MakeUpDay(DateOnly On, bool SameWeekday, IReadOnlyList<string> Against);

/// <summary>What is known of a co-op when a day is looked for, instead of one that fell through.</summary>
/// <param name="Classes">All that the co-op has; those held on the lost day are to be made up for.</param>
/// <param name="Families">Names by id.</param>
public sealed record MakeUpDays(
    CoopMeeting Lost, IReadOnlyList<CoopMeeting> Meetings, IReadOnlyList<CoopClass> Classes, IReadOnlyList<CoopPeriod> Periods,
    IReadOnlyList<CoopRoom> Rooms, IReadOnlyList<CoopAdult> Adults, IReadOnlyDictionary<Guid, string> Families, IReadOnlyList<ShownLearner> Shown)
{
    /// <summary>How far ahead is looked, in days from the day after today.</summary>
    public const int Ahead = 42;

    private readonly CoverRules _rules = OfTheDay(CoverRules.Usual);

    /// <summary>The co-op's figures for adults in rooms; what is a class's own matter and not the day's is left out.</summary>
    public CoverRules Rules
    {
        get => _rules;
        init => _rules = OfTheDay(value);
    }

    /// <summary>Who said that they are away on which day, by the id of the adult.</summary>
    public IReadOnlySet<(Guid Adult, DateOnly On)> Away { get; init; } = new HashSet<(Guid, DateOnly)>();

    /// <summary>Turns of the lost day, which go with it to the other.</summary>
    public IReadOnlyList<CoopTurn> Turns { get; init; } = [];

    /// <summary>
    /// Who takes which class; null where that is not known. Then the children whom the families show stand for them, by
    /// their ages and as many as the class holds.
    /// </summary>
    public ILookup<Guid, RoomChild>? Takers { get; init; }

    private static CoverRules OfTheDay(CoverRules rules) => rules with { MostChildren = null, MostYearsApart = null, HeedsAllergies = false };

    private IReadOnlyList<CoopClass> LostClasses => [.. Classes.Where(c => c.IsHeldOn(Lost.On)).OrderBy(c => c.Title, StringComparer.OrdinalIgnoreCase)];

    public static async Task<MakeUpDays> ReadAsync(AppDb db, CoopMeeting lost, CancellationToken ct)
    {
        var coop = lost.CoopId;
        var table = await Timetable.LoadAsync(db, coop, ct);
        var away = await db.AdultsAway.AsNoTracking().Where(a => a.CoopId == coop)
            .Join(db.CoopMeetings, a => new { a.CoopId, Id = a.MeetingId }, m => new { m.CoopId, m.Id }, (a, m) => new { a.AdultId, m.On }).ToListAsync(ct);
        return new MakeUpDays(
            lost,
            await db.CoopMeetings.AsNoTracking().Where(m => m.CoopId == coop).OrderBy(m => m.On).ToListAsync(ct),
            await db.CoopClasses.AsNoTracking().Where(c => c.CoopId == coop).ToListAsync(ct),
            await db.CoopPeriods.AsNoTracking().Where(p => p.CoopId == coop).ToListAsync(ct),
            await db.CoopRooms.AsNoTracking().Where(r => r.CoopId == coop).ToListAsync(ct),
            await db.CoopAdults.AsNoTracking().Where(a => a.CoopId == coop).ToListAsync(ct),
            await db.CoopFamilies.AsNoTracking().Where(f => f.CoopId == coop).ToDictionaryAsync(f => f.FamilyId, f => f.Name, ct),
            await db.ShownLearners.AsNoTracking().Where(l => l.CoopId == coop).ToListAsync(ct))
        {
            Rules = table.Rules,
            Away = away.Select(a => (a.AdultId, a.On)).ToHashSet(),
            Turns = await db.CoopTurns.AsNoTracking().Where(t => t.CoopId == coop && t.MeetingId == lost.Id).ToListAsync(ct),
            Takers = table.Lines.Count == 0 ? null : table.Classes.SelectMany(c => table.Roll(c).Places.Select(p => (c.Id, Child: Timetable.ToCore(table.Children[p.Child], c.FromAge)))).ToLookup(t => t.Id, t => t.Child),
        };
    }

    /// <summary>Whether a day can be taken at all: it lies ahead, after the lost one, and the co-op has no meeting on it.</summary>
    public bool IsFree(DateOnly on, DateOnly today) => on > today && on > Lost.On && Meetings.All(m => m.On != on);

    /// <summary>The days ahead with the least against them; of equals the same weekday first, then the sooner.</summary>
    public IReadOnlyList<MakeUpDay> Propose(DateOnly today, int most) =>
        [.. Enumerable.Range(1, Ahead).Select((today > Lost.On ? today : Lost.On).AddDays).Where(d => IsFree(d, today)).Select(Look)
            .OrderBy(d => d.Against.Count).ThenBy(d => d.SameWeekday ? 0 : 1).ThenBy(d => d.On).Take(most)];

    public MakeUpDay Look(DateOnly on) => new(on, on.DayOfWeek == Lost.On.DayOfWeek, [.. Against(on)]);

    /// <summary>What is wrong with these classes on any day: cover and rooms as they stand, and adults who are no longer there.</summary>
    public IReadOnlyList<string> OnAnyDay() =>
        [.. Gone(), .. GoneFromTurns(), .. SharedRooms(LostClasses, LostClasses), .. Faults(null).Select(f => f.Sentence)];

    private IEnumerable<string> Against(DateOnly on)
    {
        var lost = LostClasses;
        foreach (var near in Meetings.Where(m => m.Stands && Math.Abs(m.On.DayNumber - on.DayNumber) == 1))
            yield return $"The co-op meets on {DayOff.Say(near.On)}, too.";
        foreach (var ended in lost.Where(c => !c.IsHeldOn(on)))
            yield return on > ended.Last ? $"“{ended.Title}” ends on {DayOff.Say(ended.Last)}: its last day has to be moved." : $"“{ended.Title}” begins on {DayOff.Say(ended.First)}.";
        foreach (var both in SharedRooms(lost, [.. Classes.Where(c => c.IsHeldOn(on) && !lost.Contains(c))]))
            yield return both;
        foreach (var away in Adults.Where(a => !a.Gone && Away.Contains((a.Id, on))))
            foreach (var held in lost.Where(c => c.Details.Teachers.Contains(away.Id) || c.Details.Helpers.Contains(away.Id)))
                yield return $"{NameOf(away)}, who {(held.Details.Teachers.Contains(away.Id) ? "teaches" : "helps in")} “{held.Title}”, is away.";
        var always = Faults(null).Select(f => f.Sentence).ToHashSet(StringComparer.Ordinal);
        foreach (var fault in Faults(on).Where(f => !always.Contains(f.Sentence)))
            yield return fault.Sentence;
    }

    private IEnumerable<string> Gone() =>
        from held in LostClasses
        from adult in Adults
        where adult.Gone && (held.Details.Teachers.Contains(adult.Id) || held.Details.Helpers.Contains(adult.Id))
        select $"{NameOf(adult)}, named for “{held.Title}”, is no longer there.";

    private IEnumerable<string> GoneFromTurns() =>
        Turns.Where(t => Adults.All(a => a.Id != t.AdultId || a.Gone)).Select(t => $"{t.Adult} {t.Family} has “{t.Role}” that day and is no longer there.").Distinct();

    // Each pair once, also where both lists are one.
    private IEnumerable<string> SharedRooms(IReadOnlyList<CoopClass> some, IReadOnlyList<CoopClass> others) =>
        from one in some
        from other in others
        where one.RoomId == other.RoomId && one.Id != other.Id && (!some.Contains(other) || one.Id.CompareTo(other.Id) < 0)
        let first = PeriodOf(one)
        let second = PeriodOf(other)
        where first is not null && second is not null && first.Meets(second)
        select $"“{one.Title}” and “{other.Title}” are both in {RoomOf(one)} at {Time(first)}.";

    /// <param name="on">Null for a day on which nobody is away.</param>
    private IReadOnlyList<CoverFault> Faults(DateOnly? on) => Cover.Faults([.. LostClasses.Select(c => Room(c, on))], Rules);

    private CoverRoom Room(CoopClass held, DateOnly? on)
    {
        var there = Adults.Where(a => !a.Gone && (held.Details.Teachers.Contains(a.Id) || held.Details.Helpers.Contains(a.Id)) && !(on is { } day && Away.Contains((a.Id, day))));
        return new CoverRoom(held.RoomId, RoomOf(held), PeriodOf(held) is { } period ? Time(period) : "any time",
            [.. there.Select(a => new RoomAdult(a.Id, a.Name, a.FamilyId, Families.GetValueOrDefault(a.FamilyId, "")) { Household = a.Household, Guest = a.Guest })],
            [.. ChildrenOf(held)])
        { OffSite = held.OffSite };
    }

    private IEnumerable<RoomChild> ChildrenOf(CoopClass held)
    {
        if (Takers is { } takers)
            return takers[held.Id];
        var likely = Shown.Where(l => l.Age is { } age && held.FromAge <= age && age <= held.ToAge).OrderBy(l => l.Age).ThenBy(l => l.LearnerId).Take(held.Size)
            .Select(l => new RoomChild(Stand(held, l.LearnerId), l.Name, l.FamilyId, l.Age!.Value, [])).ToList();
        // Where nobody's age is known, somebody may come.
        return likely.Count > 0 ? likely : [new RoomChild(held.Id, "", Guid.Empty, held.FromAge, [])];
    }

    // A child may be of an age for two classes at once; it is not for this to say which it takes.
    private static Guid Stand(CoopClass held, Guid learner)
    {
        var (one, other) = (held.Id.ToByteArray(), learner.ToByteArray());
        return new Guid([.. one.Zip(other, (a, b) => (byte)(a ^ b))]);
    }

    private CoopPeriod? PeriodOf(CoopClass held) => Periods.FirstOrDefault(p => p.Id == held.PeriodId);

    private string RoomOf(CoopClass held) => Rooms.FirstOrDefault(r => r.Id == held.RoomId)?.Name ?? "a room that is no longer there";

    private string NameOf(CoopAdult adult) => Families.GetValueOrDefault(adult.FamilyId) is { Length: > 0 } family ? $"{adult.Name} {family}" : adult.Name;

    private static string Time(CoopPeriod period) => period.From.ToString("H:mm", CultureInfo.InvariantCulture);
}
