using System.Security.Cryptography;
using System.Text.Json;
using CoopLessons.Core.Coop;
using CoopLessons.Data.Coops.Days;
using Microsoft.EntityFrameworkCore;

namespace CoopLessons.Data.Coops.Turns;

/// <summary>The turns of some days as a problem, read from the database, with those that are kept already.</summary>
/// <param name="Kept">Turns that stand, those of a lost meeting at the one that makes up for it.</param>
/// <param name="Meetings">Those of the problem: what is called off is not among them.</param>
/// <param name="WithoutAdults">Families that name nobody, and so have no share of the turns.</param>
public sealed record RotaAtHand(
    RotaProblem Problem, IReadOnlyList<RotaTurn> Kept, IReadOnlyList<CoopMeeting> Meetings, IReadOnlyList<TurnRole> Roles, IReadOnlyList<string> WithoutAdults)
{
    /// <summary>The weight of one wish beside another; all count the same.</summary>
    private const int WishWeight = 1;

    /// <summary>Known again by this: what differs in it makes other turns.</summary>
    public string Print => Convert.ToHexString(SHA256.HashData(JsonSerializer.SerializeToUtf8Bytes((Problem, Kept), PrintOptions)));

    private static readonly JsonSerializerOptions PrintOptions = new() { IncludeFields = true };

    public Guid MeetingOn(DateOnly day) => Meetings.Single(m => m.On == day).Id;

    /// <summary>By the names that they have now, or had when their turn was given.</summary>
    public TurnTaker Taker(Guid adultId)
    {
        var adult = Problem.Adults.Single(a => a.Id == adultId);
        return new TurnTaker(adult.Id, adult.Name, adult.Family, Problem.Families.Single(f => f.Id == adult.Family).Name);
    }

    /// <param name="first">Inclusive.</param>
    /// <param name="last">Inclusive.</param>
    /// <param name="withKept">Whether those who have turns already and belong no longer are among the adults, away: for healing and for balances.</param>
    public static async Task<RotaAtHand> LoadAsync(AppDb db, Guid coopId, DateOnly first, DateOnly last, bool withKept, CancellationToken ct)
    {
        var meetings = await db.CoopMeetings.AsNoTracking().Where(m => m.CoopId == coopId && m.CalledOffAt == null && m.On >= first && m.On <= last).OrderBy(m => m.On).ToListAsync(ct);
        var kept = withKept ? await KeptAsync(db, coopId, meetings, ct) : [];
        var adults = (await db.CoopAdults.AsNoTracking().Where(a => a.CoopId == coopId && !a.Gone).ToListAsync(ct)).OrderBy(a => a.Id).ToList();
        var rules = await CoverFigures.OfAsync(db, coopId, ct);
        adults.RemoveAll(a => a.Guest && !rules.GuestsCount);
        var families = (await db.CoopFamilies.AsNoTracking().Where(f => f.CoopId == coopId && f.LeftAt == null).ToListAsync(ct)).OrderBy(f => f.Name, StringComparer.OrdinalIgnoreCase).ThenBy(f => f.FamilyId).ToList();
        adults.RemoveAll(a => families.All(f => f.FamilyId != a.FamilyId));
        var roles = (await db.TurnRoles.AsNoTracking().Where(r => r.CoopId == coopId).ToListAsync(ct)).OrderBy(r => r.Order).ThenBy(r => r.Id).ToList();
        var past = await PastTurns.OfAsync(db, coopId, first, ct);

        var left = kept.Where(k => adults.All(a => a.Id != k.Row.AdultId)).Select(k => k.Row).DistinctBy(t => t.AdultId).OrderBy(t => t.AdultId).ToList();
        List<RotaAdult> all =
        [
            .. adults.Select(a => new RotaAdult(a.Id, a.Name, a.FamilyId) { Household = a.Household }),
            .. left.Select(t => new RotaAdult(t.AdultId, t.Adult, t.FamilyId)),
        ];
        List<RotaFamily> who =
        [
            .. families.Where(f => all.Any(a => a.Family == f.FamilyId)).Select(f => new RotaFamily(f.FamilyId, f.Name)),
            .. left.Where(t => families.All(f => f.FamilyId != t.FamilyId)).DistinctBy(t => t.FamilyId).Select(t => new RotaFamily(t.FamilyId, t.Family)),
        ];
        var problem = new RotaProblem([.. meetings.Select(m => m.On)], [], [.. who.Select(f => f with { PastHundredths = past.GetValueOrDefault(f.Id) })], all)
        {
            Roles = [.. roles.Where(r => !r.Ended).Select(r => Role(r, all)), .. kept.Select(k => k.Row).Where(t => roles.All(r => r.Ended || r.Id != t.RoleId)).DistinctBy(t => t.RoleId).OrderBy(t => t.RoleId).Select(t => new RotaRole(t.RoleId, t.Role, t.Weight, 0))],
            Absences = [.. await AbsencesAsync(db, coopId, meetings, adults, ct), .. left.SelectMany(t => meetings.Select(m => new RotaAbsence(t.AdultId, m.On)))],
            Wishes = await WishesAsync(db, coopId, adults, roles, ct),
            Rooms = await RoomsAsync(db, coopId, roles, rules, ct),
        };
        return new RotaAtHand(problem, [.. kept.Select(k => new RotaTurn(k.On, k.Row.RoleId, k.Row.AdultId))], meetings, roles,
            [.. families.Where(f => all.All(a => a.Family != f.FamilyId)).Select(f => f.Name)]);
    }

    private static RotaRole Role(TurnRole role, List<RotaAdult> adults) => new(role.Id, role.Name, role.Weight, role.Places)
    {
        Only = role.ForAll ? null : [.. role.May.Where(id => adults.Any(a => a.Id == id)).Order()],
    };

    private static async Task<List<(CoopTurn Row, DateOnly On)>> KeptAsync(AppDb db, Guid coopId, List<CoopMeeting> meetings, CancellationToken ct)
    {
        var ids = meetings.Select(m => m.Id).Concat(meetings.Where(m => m.InsteadOf != null).Select(m => m.InsteadOf!.Value)).ToList();
        var turns = (await db.CoopTurns.AsNoTracking().Where(t => t.CoopId == coopId && ids.Contains(t.MeetingId)).ToListAsync(ct)).ToLookup(t => t.MeetingId);
        // Turns of a day that fell through go with their adults to the day that makes up for it, until it has its own.
        return [.. meetings.SelectMany(m => (turns[m.Id].Any() || m.InsteadOf is null ? turns[m.Id] : turns[m.InsteadOf.Value]).OrderBy(t => t.RoleId).ThenBy(t => t.AdultId).Select(t => (t, m.On)))];
    }

    private static async Task<IEnumerable<RotaAbsence>> AbsencesAsync(AppDb db, Guid coopId, List<CoopMeeting> meetings, List<CoopAdult> adults, CancellationToken ct) =>
        from away in await db.AdultsAway.AsNoTracking().Where(a => a.CoopId == coopId).ToListAsync(ct)
        join meeting in meetings on away.MeetingId equals meeting.Id
        where adults.Any(a => a.Id == away.AdultId)
        orderby meeting.On, away.AdultId
        select new RotaAbsence(away.AdultId, meeting.On);

    private static async Task<IReadOnlyList<RotaWish>> WishesAsync(AppDb db, Guid coopId, List<CoopAdult> adults, List<TurnRole> roles, CancellationToken ct) =>
        [.. (await db.TurnWishes.AsNoTracking().Where(w => w.CoopId == coopId).ToListAsync(ct))
            .Where(w => adults.Any(a => a.Id == w.AdultId) && roles.Any(r => !r.Ended && r.Id == w.RoleId)).OrderBy(w => w.AdultId).ThenBy(w => w.RoleId)
            .Select(w => new RotaWish(w.AdultId, w.Liked ? WishWeight : -WishWeight, w.RoleId))];

    private static async Task<IReadOnlyList<RotaRoom>> RoomsAsync(AppDb db, Guid coopId, List<TurnRole> roles, CoverRules rules, CancellationToken ct)
    {
        var children = await db.RoomChildren.AsNoTracking().Where(r => r.CoopId == coopId).ToDictionaryAsync(r => r.RoomId, ct);
        var rooms = (await db.CoopRooms.AsNoTracking().Where(r => r.CoopId == coopId).ToListAsync(ct)).OrderBy(r => r.Id);
        return [.. rooms.Select(room => (Room: room, Roles: roles.Where(r => !r.Ended && r.RoomId == room.Id).Select(r => r.Id).ToList())).Where(r => r.Roles.Count > 0).Select(r =>
        {
            var needed = children.GetValueOrDefault(r.Room.Id)?.AdultsNeeded(rules) ?? 0;
            // Where relatives count each by themselves, so many adults will do, whoever they are.
            return rules.HouseholdCountsAsOne
                ? new RotaRoom(r.Room.Id, r.Room.Name, r.Roles) { LeastUnrelated = rules.LeastUnrelated, LeastAdults = needed }
                : new RotaRoom(r.Room.Id, r.Room.Name, r.Roles) { LeastUnrelated = 0, LeastAdults = Math.Max(needed, rules.LeastUnrelated) };
        })];
    }
}
