using System.Text.Json;
using CoopLessons.Data.OwnLists;
using CoopLessons.Data.Schedule;
using Microsoft.EntityFrameworkCore;

namespace CoopLessons.Data.Scenario;

/// <summary>Which children of the co-op have a list of their own, and what they said, as <c>seed-scenario/lists.json</c> tells it.</summary>
internal sealed record CoopLists(IReadOnlyDictionary<string, CoopFamilyLists> Families)
{
    public static CoopLists Read() =>
        JsonSerializer.Deserialize<CoopLists>(ScenarioFiles.Bytes("scenario/lists.json"), Coop.Json) ?? throw new InvalidDataException("lists.json holds nothing.");
}

/// <param name="Lists">How each child's list reads, by the child's name. No PIN is set: a guardian sets one.</param>
internal sealed record CoopFamilyLists(IReadOnlyDictionary<string, ReadingLevel> Lists, IReadOnlyList<CoopSaid> Said);

/// <param name="What">Said where nothing is planned for the child on the day.</param>
/// <param name="With">Who was there, where something in it can hurt.</param>
internal sealed record CoopSaid(string Child, string What, string Words, string With);

/// <summary>Writes the lists of a family of the scenario. Ids come from no stream, so that the log's stay what they are.</summary>
internal sealed class ListsOfFamily(AppDb db, Household house, CoopFamilyLists told, DateOnly today)
{
    private const int Morning = 8 * 60;
    private readonly Dictionary<string, Guid> _learners = house.Children.ToDictionary(c => c.Child.Name, c => c.Id);

    /// <summary>Adds everything to the unit of work, once the plan is written. Nothing is saved here.</summary>
    public async Task AddAsync(CancellationToken ct)
    {
        foreach (var (name, reading) in told.Lists)
        {
            var list = new OwnList(_learners[name]);
            list.Describe(shown: true, reading);
            db.OwnLists.Add(list);
        }

        foreach (var said in told.Said)
        {
            var child = _learners[said.Child];
            var planned = (await db.WorkAsync(db.PlannedSessions.AsNoTracking().Where(s => s.Date == today && s.State == SessionState.Planned), ct, today))
                .FirstOrDefault(w => w.Session.Learners.Contains(child));
            db.ChildrenSaid.Add(new ChildSaid(
                Guid.CreateVersion7(), new SaidFacts(child, planned?.Session.Id, planned?.Title ?? said.What, today, null, planned is null ? said.Words : "", planned?.Doing.Details.Hazards.Count > 0 ? said.With : "", []), house.Utc(today, Morning)));
        }
    }
}
