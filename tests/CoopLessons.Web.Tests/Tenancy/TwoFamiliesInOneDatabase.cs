using System.Reflection;
using CoopLessons.Core.Hours;
using CoopLessons.Data;
using CoopLessons.Data.Families;
using CoopLessons.Data.Log;
using CoopLessons.Data.Tenancy;
using CoopLessons.Web.Tests.App;
using Microsoft.EntityFrameworkCore;
using Npgsql;

namespace CoopLessons.Web.Tests.Tenancy;

[Collection(SharedServer.Name)]
public sealed class TwoFamiliesInOneDatabase(TestServer server)
{
    [Fact]
    public async Task Neither_sees_a_row_of_the_other()
    {
        var (mine, other) = await TwoAsync();
        foreach (var type in FamilyOwned())
            Assert.All(await OwnersAsync(mine.Id, type, filtered: true), owner => Assert.Equal(mine.Id, owner));
        Assert.NotEmpty(await OwnersAsync(other.Id, typeof(LogTime), filtered: true));
    }

    [PostgresFact]
    public async Task With_the_filter_off_PostgreSQL_still_shows_no_row_of_the_other()
    {
        var (mine, _) = await TwoAsync();
        foreach (var type in FamilyOwned())
        {
            var owners = await OwnersAsync(mine.Id, type, filtered: false);
            Assert.All(owners, owner => Assert.Equal(mine.Id, owner));
        }

        Assert.NotEmpty(await OwnersAsync(mine.Id, typeof(LogTime), filtered: false));
    }

    [PostgresFact]
    public async Task With_the_filter_off_and_no_family_at_hand_PostgreSQL_shows_nothing()
    {
        await TwoAsync();
        foreach (var type in FamilyOwned())
            Assert.Empty(await OwnersAsync(null, type, filtered: false));
    }

    [PostgresFact]
    public async Task A_row_for_the_other_family_is_refused_by_PostgreSQL_itself()
    {
        var (mine, other) = await TwoAsync();
        var fault = await Assert.ThrowsAsync<PostgresException>(() => mine.WithDbAsync(db =>
            db.Database.ExecuteSqlAsync($"INSERT INTO \"Learners\" (\"FamilyId\", \"Id\", \"Name\", \"BirthDate\", \"Order\", \"Allergies\", \"AllergyNote\", \"SetAside\", \"Version\") VALUES ({other.Id}, {Guid.CreateVersion7()}, 'Rook', '2015-01-01', 0, '[]', '', false, 0)")));
        Assert.Equal(PostgresErrorCodes.InsufficientPrivilege, fault.SqlState);
    }

    [PostgresFact]
    public async Task Two_families_on_the_same_pooled_connections_stay_apart()
    {
        var (mine, other) = await TwoAsync();
        await Parallel.ForEachAsync(Enumerable.Range(0, 200), new ParallelOptions { MaxDegreeOfParallelism = 16 }, async (i, _) =>
        {
            var family = i % 2 == 0 ? mine : other;
            var owners = await OwnersAsync(family.Id, typeof(LogRevision), filtered: false);
            Assert.NotEmpty(owners);
            Assert.All(owners, owner => Assert.Equal(family.Id, owner));
        });
    }

    [Fact]
    public async Task A_row_with_the_others_id_is_not_saved()
    {
        var (mine, other) = await TwoAsync();
        await Assert.ThrowsAsync<ForeignFamilyException>(() => mine.WithDbAsync(async db =>
        {
            var learner = new Learner(Guid.CreateVersion7(), "Rook", new DateOnly(2015, 1, 1), 0);
            var entry = db.Add(learner);
            entry.Property(nameof(Learner.FamilyId)).CurrentValue = other.Id;
            await db.SaveChangesAsync();
        }));
    }

    [Fact]
    public async Task Without_a_family_at_hand_nothing_can_be_added()
    {
        await Assert.ThrowsAsync<ForeignFamilyException>(() => server.WithDbAsync(null, async db =>
        {
            db.Add(new Learner(Guid.CreateVersion7(), "Rook", new DateOnly(2015, 1, 1), 0));
            await db.SaveChangesAsync();
        }));
    }

    [Fact]
    public async Task A_written_revision_is_neither_changed_nor_removed()
    {
        var (mine, _) = await TwoAsync();
        await Assert.ThrowsAsync<InvalidOperationException>(() => mine.WithDbAsync(async db =>
        {
            var revision = await db.LogRevisions.FirstAsync();
            db.Entry(revision).Property(nameof(LogRevision.What)).CurrentValue = "something else";
            await db.SaveChangesAsync();
        }));
        await Assert.ThrowsAsync<InvalidOperationException>(() => mine.WithDbAsync(async db =>
        {
            db.Remove(await db.Set<LogTime>().FirstAsync());
            await db.SaveChangesAsync();
        }));
    }

    [Fact]
    public async Task The_same_entry_id_in_two_families_is_two_entries()
    {
        var (mine, other) = await TwoAsync();
        var id = Guid.CreateVersion7();
        await WriteAsync(mine, id, "Bread");
        await WriteAsync(other, id, "Boats");
        Assert.Equal("Bread", await mine.FromDbAsync(db => db.Standing().Where(r => r.EntryId == id).Select(r => r.What).SingleAsync()));
        Assert.Equal("Boats", await other.FromDbAsync(db => db.Standing().Where(r => r.EntryId == id).Select(r => r.What).SingleAsync()));
    }

    private async Task<(TestFamily Mine, TestFamily Other)> TwoAsync()
    {
        var mine = await server.FamilyAsync("Alder");
        var other = await server.FamilyAsync("Birch");
        await WriteAsync(mine, Guid.CreateVersion7(), "Bread");
        await WriteAsync(other, Guid.CreateVersion7(), "Boats");
        return (mine, other);
    }

    private static Task WriteAsync(TestFamily family, Guid entryId, string what) => family.WithDbAsync(async db =>
    {
        var learner = await db.Learners.FirstOrDefaultAsync();
        if (learner is null)
            db.Add(learner = new Learner(Guid.CreateVersion7(), "Wren", new DateOnly(2017, 5, 1), 0));
        var subject = await db.Subjects.OrderBy(s => s.Order).FirstAsync();
        var facts = new EntryFacts(TestServer.Today, null, what, Place.Home, "", [new LearnerTime(learner.Id, new Minutes(40))], [new SubjectWeight(subject.Id, 1)], []);
        db.Add(LogEntry.Write(entryId, facts, new Author(family.GuardianId, "Iris"), TestServer.Start.UtcDateTime));
        await db.SaveChangesAsync();
    });

    private static IEnumerable<Type> FamilyOwned() =>
        typeof(AppDb).Assembly.GetTypes().Where(t => t is { IsClass: true, IsAbstract: false } && t.IsAssignableTo(typeof(IFamilyOwned)));

    private async Task<List<Guid>> OwnersAsync(Guid? familyId, Type type, bool filtered) => await server.FromDbAsync(familyId, db =>
        (Task<List<Guid>>)typeof(TwoFamiliesInOneDatabase).GetMethod(nameof(ReadAsync), BindingFlags.Static | BindingFlags.NonPublic)!
            .MakeGenericMethod(type).Invoke(null, [db, filtered])!);

    private static async Task<List<Guid>> ReadAsync<T>(AppDb db, bool filtered)
        where T : class, IFamilyOwned
    {
        var rows = await (filtered ? db.Set<T>() : db.Set<T>().IgnoreQueryFilters()).AsNoTracking().ToListAsync();
        return [.. rows.Select(r => r.FamilyId)];
    }
}
