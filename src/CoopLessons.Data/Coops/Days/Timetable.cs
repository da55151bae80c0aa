using CoopLessons.Core.Coop;
using Microsoft.EntityFrameworkCore;

namespace CoopLessons.Data.Coops.Days;

/// <summary>What is wrong with a class, as one family reads it.</summary>
/// <param name="KeepsShut">Too few adults: the room does not open.</param>
public sealed record ClassFault(string Sentence, bool KeepsShut);

/// <summary>
/// The classes of a co-op with their rooms, adults and lists, read together: a co-op has a few dozen of each, and every
/// question about a room needs all of them.
/// </summary>
public sealed class Timetable
{
    private readonly Dictionary<Guid, ClassList> _rolls = [];

    private Timetable() { }

    public CoverRules Rules { get; private init; } = CoverRules.Usual;
    public IReadOnlyList<CoopPeriod> Periods { get; private init; } = [];
    public IReadOnlyList<CoopRoom> Rooms { get; private init; } = [];
    public IReadOnlyList<CoopClass> Classes { get; private init; } = [];

    /// <summary>Those who are gone among them, since a class may still name them.</summary>
    public IReadOnlyDictionary<Guid, CoopAdult> Adults { get; private init; } = new Dictionary<Guid, CoopAdult>();
    public IReadOnlyDictionary<Guid, ShownLearner> Children { get; private init; } = new Dictionary<Guid, ShownLearner>();

    /// <summary>Those that left among them.</summary>
    public IReadOnlyDictionary<Guid, CoopFamily> Families { get; private init; } = new Dictionary<Guid, CoopFamily>();
    public ILookup<Guid, ClassListLine> Lines { get; private init; } = Array.Empty<ClassListLine>().ToLookup(l => l.ClassId);

    public static async Task<Timetable> LoadAsync(AppDb db, Guid coopId, CancellationToken ct) => new()
    {
        Rules = await Turns.CoverFigures.OfAsync(db, coopId, ct),
        Periods = [.. (await db.CoopPeriods.Where(p => p.CoopId == coopId).ToListAsync(ct)).OrderBy(p => p.From)],
        Rooms = [.. (await db.CoopRooms.Where(r => r.CoopId == coopId).ToListAsync(ct)).OrderBy(r => r.Name, StringComparer.OrdinalIgnoreCase)],
        Classes = [.. (await db.CoopClasses.Where(c => c.CoopId == coopId).ToListAsync(ct)).OrderBy(c => c.Title, StringComparer.OrdinalIgnoreCase)],
        Adults = await db.CoopAdults.Where(a => a.CoopId == coopId).ToDictionaryAsync(a => a.Id, ct),
        Children = await db.ShownLearners.AsNoTracking().Where(l => l.CoopId == coopId).ToDictionaryAsync(l => l.LearnerId, ct),
        Families = await db.CoopFamilies.Where(f => f.CoopId == coopId).ToDictionaryAsync(f => f.FamilyId, ct),
        Lines = (await db.ClassListLines.AsNoTracking().Where(l => l.CoopId == coopId).OrderBy(l => l.Number).ToListAsync(ct)).ToLookup(l => l.ClassId),
    };

    public CoopPeriod Period(CoopClass of) => Periods.Single(p => p.Id == of.PeriodId);

    public CoopRoom Room(CoopClass of) => Rooms.Single(r => r.Id == of.RoomId);

    /// <summary>“10:00”.</summary>
    public static string At(CoopPeriod period) => period.From.ToString("H:mm", System.Globalization.CultureInfo.InvariantCulture);

    public IEnumerable<CoopClass> On(DateOnly day) =>
        Classes.Where(c => c.IsHeldOn(day)).OrderBy(c => Period(c).From).ThenBy(c => Room(c).Name, StringComparer.OrdinalIgnoreCase);

    /// <summary>Who has a place and who waits. A child who is shown no longer has neither, whatever was written.</summary>
    public ClassList Roll(CoopClass of)
    {
        if (_rolls.TryGetValue(of.Id, out var known))
            return known;
        var events = Lines[of.Id].Select(l => l.ToCore()).ToList();
        var list = ClassList.Of(0, events);
        var gone = list.Places.Select(p => p.Child).Concat(list.Waiting.SelectMany(w => w.Children)).Where(c => !Children.ContainsKey(c)).ToList();
        return _rolls[of.Id] = gone.Count == 0 ? list : ClassList.Of(0, [.. events, .. gone.Select(c => new Withdrew(c))]);
    }

    /// <summary>The number that the next line of a class's list has.</summary>
    public int NextNumber(CoopClass of) => Lines[of.Id].Select(l => l.Number).DefaultIfEmpty(0).Max() + 1;

    /// <summary>Adults who teach or help, those of them that are still there.</summary>
    public IReadOnlyList<RoomAdult> AdultsOf(ClassDetails details) =>
        [.. details.Teachers.Concat(details.Helpers).Distinct().Select(id => Adults.GetValueOrDefault(id)).OfType<CoopAdult>().Where(a => !a.Gone).Select(ToCore)];

    public RoomAdult ToCore(CoopAdult adult) => new(adult.Id, adult.Name, adult.FamilyId, Families[adult.FamilyId].Name)
    {
        Household = adult.Household,
        Guest = adult.Guest,
    };

    /// <summary>A child whose age is not shown counts as the youngest whom the class takes.</summary>
    public static RoomChild ToCore(ShownLearner child, int ageWhereNotShown) => new(child.LearnerId, child.Name, child.FamilyId, child.Age ?? ageWhereNotShown, child.Allergies);

    public CoverRoom RoomOf(CoopClass of) => RoomOf(of, Room(of), Period(of), [.. Roll(of).Places.Select(p => Children[p.Child])]);

    public CoverRoom RoomOf(CoopClass of, CoopRoom room, CoopPeriod period, IReadOnlyList<ShownLearner> children) =>
        new(room.Id, room.Name, At(period), AdultsOf(of.Details), [.. children.Select(c => ToCore(c, of.FromAge))])
        {
            OffSite = of.OffSite,
            Activity = new RoomActivity(of.Title, of.Details.Uses),
        };

    /// <summary>The rules with the class's own size, which is told where more have a place than it takes.</summary>
    public CoverRules RulesOf(CoopClass of) => Rules with { MostChildren = of.Size };

    /// <summary>What a room breaks, and who would be in two rooms at once.</summary>
    /// <param name="day">Only what is held then counts for two rooms at once.</param>
    public IReadOnlyList<CoverFault> Faults(CoopClass of, DateOnly day)
    {
        var rooms = On(day).Select(RoomOf).ToList();
        var here = RoomOf(of);
        return [.. Cover.Faults(here, RulesOf(of)), .. Cover.Faults(rooms, Rules).Where(f => f.Kind == CoverFaultKind.InTwoRooms && f.Room == here.Id && f.Period == here.Period)];
    }

    /// <summary>
    /// The faults as a family may read them: which child is allergic is told to the child's own family and to those whose
    /// adults are in the room, and to nobody else.
    /// </summary>
    public IReadOnlyList<ClassFault> Read(IEnumerable<CoverFault> faults, Guid family) =>
        [.. faults.Select(f => new ClassFault(Sentence(f, family), KeepsShut(f))).Distinct()];

    public static bool KeepsShut(CoverFault fault) => fault.Kind is CoverFaultKind.TooFewUnrelated or CoverFaultKind.TooFewAdults;

    public string Sentence(CoverFault fault, Guid family) => fault is AllergenFault allergen && NeedsToKnow(allergen, family) ? allergen.ForThoseWhoNeed : fault.Sentence;

    public bool NeedsToKnow(AllergenFault fault, Guid family) =>
        fault.TellFamily == family || fault.TellAdults.Any(id => Adults.TryGetValue(id, out var adult) && adult.FamilyId == family);

    /// <summary>Whether the family has an adult in the room of a class.</summary>
    public bool IsInTheRoom(CoopClass of, Guid family) => AdultsOf(of.Details).Any(a => a.Family == family);
}
