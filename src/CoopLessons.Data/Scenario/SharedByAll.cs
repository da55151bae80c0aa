using CoopLessons.Data.Coops;
using CoopLessons.Data.Tenancy;
using Microsoft.EntityFrameworkCore;
using Microsoft.Extensions.DependencyInjection;

namespace CoopLessons.Data.Scenario;

/// <summary>The co-op that the families of the scenario share: the first leads, the second teaches, and all show their children.</summary>
internal static class SharedByAll
{
    private const string Agreement = "We meet on Thursdays at nine. Whoever cannot come says so the evening before. Dues are twenty dollars a family and term; a family that leaves gets back the weeks that are left.";

    /// <summary>Written as each family in turn, which alone may show what is its own.</summary>
    public static async Task FoundAsync(IServiceProvider services, string name, CoopMeeting day, TimeZoneInfo zone, IReadOnlyList<LoadedFamily> families, DateOnly today, CancellationToken ct)
    {
        // A year ago, so that what was told since then is news.
        var (id, now, news) = (Guid.CreateVersion7(), DateTime.SpecifyKind(today.AddYears(-1).ToDateTime(new TimeOnly(12, 0)), DateTimeKind.Utc), CoopNews.Read());
        for (var i = 0; i < families.Count; i++)
        {
            await using var scope = services.CreateAsyncScope();
            var db = scope.ServiceProvider.GetRequiredService<AppDb>();
            db.Current.ActForProgram(families[i].FamilyId);
            db.Current.Enter(id);
            if (i == 0)
            {
                var coop = new Coops.Coop(id, name, now);
                coop.Describe(name, Coops.Coop.UsualSickRule, Agreement);
                db.Coops.Add(coop);
            }

            var part = i switch { 0 => CoopPart.Leader, 1 => CoopPart.Teacher, _ => CoopPart.Member };
            var mine = new Coops.CoopFamily(id, families[i].FamilyId, families[i].Name, part, now);
            db.CoopFamilies.Add(mine);
            news.Add(db, mine, zone, today);
            foreach (var learner in await db.Learners.AsNoTracking().ToListAsync(ct))
            {
                var shown = new ShownLearner(id, families[i].FamilyId, learner.Id);
                shown.Show(learner, age: true, allergies: true, today);
                db.ShownLearners.Add(shown);
            }

            var contact = new ShownContact(id, families[i].FamilyId);
            contact.Be(families[i].Adults[0].Name, $"555 01{10 + i}");
            db.ShownContacts.Add(contact);
            await db.SaveChangesAsync(ct);
        }

        await new SharedUnitOfCoop(services, id, families, now).WriteAsync(ct);
        await new ClassDaysOfCoop(services, id, CoopClassDays.Read(), day, families, today).WriteAsync(ct);
    }
}
