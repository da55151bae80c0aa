using System.Text.Json;
using CoopLessons.Core.Coop;
using CoopLessons.Data.Coops.Days;
using Microsoft.Extensions.DependencyInjection;
using Days = CoopLessons.Data.Coops.Days;

namespace CoopLessons.Data.Scenario;

/// <summary>Where and when the co-op's classes are, who is signed up, and where it goes, as <c>seed-scenario/classdays.json</c> tells it.</summary>
internal sealed record CoopClassDays(string Where, IReadOnlyList<ToldPeriod> Periods, IReadOnlyList<string> Rooms, IReadOnlyList<ToldClass> Classes, ToldOuting Outing)
{
    public static CoopClassDays Read() =>
        JsonSerializer.Deserialize<CoopClassDays>(ScenarioFiles.Bytes("scenario/classdays.json"), Coop.Json) ?? throw new InvalidDataException("classdays.json holds nothing.");
}

internal sealed record ToldPeriod(TimeOnly From, TimeOnly Until);

/// <param name="Period">Its place in the list of periods.</param>
/// <param name="Room">Likewise.</param>
/// <param name="Children">In the order in which they are signed up within each family.</param>
internal sealed record ToldClass(
    string Title, string Does, int Period, int Room, int From, int To, int Size, IReadOnlyList<string> Teaches, IReadOnlyList<string> Helps,
    IReadOnlyList<RoomIngredient> Uses, IReadOnlyList<string> Subjects, IReadOnlyList<HomeVersion> AtHome, IReadOnlyList<string> Spoils, IReadOnlyList<string> Children);

/// <param name="InDays">So many days from today.</param>
internal sealed record ToldOuting(
    string Name, int InDays, string Where, string MeetAt, TimeOnly From, TimeOnly Back, string Note, int ChildCents, int AdultCents, int? ChildrenPerFreeAdult,
    IReadOnlyList<string> Children, IReadOnlyList<string> Adults);

/// <summary>Writes the class days of the co-op, once its families are in it. Each family names and signs up its own.</summary>
internal sealed class ClassDaysOfCoop(IServiceProvider services, Guid coop, CoopClassDays told, CoopMeeting day, IReadOnlyList<LoadedFamily> families, DateOnly today)
{
    private const int DaysBack = 28;
    private const int DaysAhead = 150;

    private readonly DateTime _now = DateTime.SpecifyKind(today.ToDateTime(new TimeOnly(12, 0)), DateTimeKind.Utc);
    private readonly Dictionary<string, Guid> _adults = families.SelectMany(f => f.Adults).ToDictionary(a => a.Name, _ => Guid.CreateVersion7());

    public async Task WriteAsync(CancellationToken ct)
    {
        foreach (var family in families)
            await AsAsync(family, db =>
            {
                foreach (var adult in family.Adults)
                    db.CoopAdults.Add(new Days.CoopAdult(coop, family.FamilyId, _adults[adult.Name], adult.Name));
            }, ct);
        var (classes, outing) = await PlanAsync(ct);
        var next = classes.ToDictionary(c => c.Made.Id, _ => 2);
        foreach (var family in families)
            await AsAsync(family, db =>
            {
                foreach (var (one, made) in classes)
                    foreach (var child in one.Children.Select(name => family.Learners.FirstOrDefault(l => l.Name == name)).OfType<LoadedLearner>())
                        db.ClassListLines.Add(ClassListLine.SignUp(made, next[made.Id]++, family.FamilyId, Guid.CreateVersion7(), [child.Id], _now));
                var (children, adults) = (family.Learners.Where(l => told.Outing.Children.Contains(l.Name)).Select(l => l.Id).ToList(), family.Adults.Where(a => told.Outing.Adults.Contains(a.Name)).Select(a => _adults[a.Name]).ToList());
                if (children.Count + adults.Count == 0)
                    return;
                var answer = new OutingAnswer(coop, outing, family.FamilyId);
                answer.Come(children, adults);
                db.OutingAnswers.Add(answer);
            }, ct);
    }

    /// <summary>What the leading family sets: rooms, periods, days, classes and the outing.</summary>
    private async Task<(IReadOnlyList<(ToldClass Told, Days.CoopClass Made)> Classes, Guid Outing)> PlanAsync(CancellationToken ct)
    {
        var periods = told.Periods.Select(p => new CoopPeriod(coop, Guid.CreateVersion7(), p.From, p.Until)).ToList();
        var rooms = told.Rooms.Select(r => new CoopRoom(coop, Guid.CreateVersion7(), r, null)).ToList();
        var dates = Enumerable.Range(-DaysBack, DaysBack + DaysAhead).Select(today.AddDays).Where(day.IsHeldOn).ToList();
        var meetings = dates.Select(d => new Days.CoopMeeting(coop, Guid.CreateVersion7(), d, told.Where));
        var (first, last) = (dates.DefaultIfEmpty(today).First(), dates.DefaultIfEmpty(today.AddDays(DaysAhead)).Last());
        var classes = told.Classes.Select(c => (c, new Days.CoopClass(
            coop, Guid.CreateVersion7(), new ClassFacts(c.Title, c.Does, periods[c.Period].Id, rooms[c.Room].Id, c.From, c.To, c.Size, first, last, false),
            new ClassDetails([.. c.Teaches.Select(a => _adults[a])], [.. c.Helps.Select(a => _adults[a])], c.Uses, c.Subjects, c.AtHome, c.Spoils)))).ToList();
        var o = told.Outing;
        var outing = new Days.CoopOuting(coop, Guid.CreateVersion7(), new OutingFacts(o.Name, today.AddDays(o.InDays), o.Where, o.MeetAt, o.From, o.Back, o.Note, 3, o.ChildCents, o.AdultCents, o.ChildrenPerFreeAdult));
        await AsAsync(families[0], db =>
        {
            db.AddRange(periods);
            db.AddRange(rooms);
            db.AddRange(meetings);
            db.Add(outing);
            foreach (var (_, made) in classes)
                db.AddRange(made, ClassListLine.Resize(made, 1, families[0].FamilyId, _now));
        }, ct);
        return (classes, outing.Id);
    }

    private async Task AsAsync(LoadedFamily family, Action<AppDb> write, CancellationToken ct)
    {
        await using var scope = services.CreateAsyncScope();
        var db = scope.ServiceProvider.GetRequiredService<AppDb>();
        db.Current.ActForProgram(family.FamilyId);
        db.Current.Enter(coop);
        write(db);
        await db.SaveChangesAsync(ct);
    }
}
