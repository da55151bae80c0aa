using CoopLessons.Core.Coop;
using CoopLessons.Data.Coops.Days;
using CoopLessons.Data.Coops.Turns;
using RotaWords = CoopLessons.Core.Coop.CoopWords;

namespace CoopLessons.Web.Pages.Coops;

/// <summary>One who has a turn, as a table shows it.</summary>
/// <param name="IsMine">Whether it is one of the family that looks.</param>
/// <param name="IsAway">Said to be away, and still in the rota.</param>
public sealed record TurnName(string Adult, string Family, bool IsMine, bool IsAway, string Why);

/// <summary>A meeting with who has which role, in the order of the table's roles.</summary>
/// <param name="MeetingId">Where one reads more of it; null in a proposal.</param>
/// <param name="CalledOff">Why it does not stand; null where it does.</param>
public sealed record TurnRow(DateOnly On, Guid? MeetingId, string? CalledOff, IReadOnlyList<IReadOnlyList<TurnName>> Cells);

/// <summary>Turns as a table: meetings down, roles across.</summary>
public sealed record TurnTable(string Title, IReadOnlyList<string> Roles, IReadOnlyList<TurnRow> Rows)
{
    public static TurnTable Of(string title, RotaProblem problem, Rota rota, Guid family) => new(title, [.. problem.Roles.Select(r => r.Name)],
        [.. problem.Meetings.Select(day => new TurnRow(day, null, null, [.. problem.Roles.Select(role => (IReadOnlyList<TurnName>)[.. rota.Assignments.Where(a => a.Turn.Meeting == day && a.Turn.Role == role.Id).Select(a => Name(problem, a, family))])]))]);

    /// <summary>Turns that are kept. A role that was since ended or renamed stands under the name that it has now, or had.</summary>
    public static TurnTable Of(string title, IReadOnlyList<CoopMeeting> meetings, IReadOnlyList<TurnRole> roles, IReadOnlyList<CoopTurn> turns, IReadOnlyList<AdultAway> away, Guid family)
    {
        var columns = roles.Where(r => !r.Ended || turns.Any(t => t.RoleId == r.Id)).Select(r => (r.Id, r.Name)).ToList();
        columns.AddRange(turns.Where(t => columns.All(c => c.Id != t.RoleId)).DistinctBy(t => t.RoleId).Select(t => (t.RoleId, t.Role)));
        return new(title, [.. columns.Select(c => c.Name)],
            [.. meetings.Select(m => new TurnRow(m.On, m.Id, m.Stands ? null : m.CalledOffFor, [.. columns.Select(c => (IReadOnlyList<TurnName>)[.. turns.Where(t => t.MeetingId == m.Id && t.RoleId == c.Id).OrderBy(t => t.Adult, StringComparer.OrdinalIgnoreCase).Select(t => new TurnName(t.Adult, t.Family, t.FamilyId == family, away.Any(a => a.MeetingId == m.Id && a.AdultId == t.AdultId), t.Why))])]))]);
    }

    private static TurnName Name(RotaProblem problem, RotaAssignment a, Guid family)
    {
        var adult = problem.Adults.Single(x => x.Id == a.Turn.Adult);
        return new TurnName(adult.Name, problem.Families.Single(f => f.Id == adult.Family).Name, adult.Family == family, false, RotaWords.Turn(problem, a));
    }
}
