using CoopLessons.Data;
using CoopLessons.Data.Coops;
using CoopLessons.Data.Tenancy;
using CoopLessons.Web.Tests.App;
using Microsoft.EntityFrameworkCore;
using Npgsql;

namespace CoopLessons.Web.Tests.Coops;

/// <summary>Rows of a co-op are there for its families alone, and what one family shows is written by no other.</summary>
[Collection(SharedServer.Name)]
public sealed class Two_coops_in_one_database(TestServer server)
{
    [Fact]
    public async Task Neither_sees_a_row_of_the_other()
    {
        var (mine, other) = await TwoAsync();
        Assert.All(await CoopsSeenAsync(mine, filtered: true), id => Assert.Equal(mine.Id, id));
        Assert.NotEmpty(await CoopsSeenAsync(other, filtered: true));
        // A family that belongs to none sees none.
        var stranger = await server.FamilyAsync("Dogwood");
        Assert.Empty(await stranger.FromDbAsync(db => db.CoopFamilies.ToListAsync()));
    }

    [PostgresFact]
    public async Task With_the_filter_off_PostgreSQL_still_shows_no_row_of_the_other()
    {
        var (mine, _) = await TwoAsync();
        var seen = await CoopsSeenAsync(mine, filtered: false);
        Assert.NotEmpty(seen);
        Assert.All(seen, id => Assert.Equal(mine.Id, id));
    }

    [PostgresFact]
    public async Task What_another_family_shows_is_not_written_even_without_the_guard()
    {
        var (mine, _) = await TwoAsync();
        var birch = await mine.JoinAsync("Birch");
        var fault = await Assert.ThrowsAsync<PostgresException>(() => mine.Leader.WithDbAsync(async db =>
        {
            db.Current.Enter(mine.Id);
            await db.Database.ExecuteSqlAsync($"INSERT INTO \"ShownContacts\" (\"CoopId\", \"FamilyId\", \"Name\", \"Telephone\", \"Version\") VALUES ({mine.Id}, {birch.Id}, 'Olive', '', 0)");
        }));
        Assert.Equal(PostgresErrorCodes.InsufficientPrivilege, fault.SqlState);
    }

    [Fact]
    public async Task A_row_of_the_others_coop_or_of_another_familys_showing_is_not_saved()
    {
        var (mine, other) = await TwoAsync();
        await Assert.ThrowsAsync<ForeignFamilyException>(() => mine.Leader.WithDbAsync(async db =>
        {
            db.Current.Enter(mine.Id);
            db.Add(new CoopFamily(other.Id, mine.Leader.Id, "Alder", CoopPart.Leader, TestServer.Start.UtcDateTime));
            await db.SaveChangesAsync();
        }));
        await Assert.ThrowsAsync<ForeignFamilyException>(() => mine.Leader.WithDbAsync(async db =>
        {
            db.Current.Enter(mine.Id);
            db.Add(new ShownContact(mine.Id, other.Leader.Id));
            await db.SaveChangesAsync();
        }));
    }

    private async Task<(CoopOfTest Mine, CoopOfTest Other)> TwoAsync() => (await CoopOfTest.FoundAsync(server), await CoopOfTest.FoundAsync(server, "Cedar"));

    private static Task<List<Guid>> CoopsSeenAsync(CoopOfTest coop, bool filtered) => coop.Leader.FromDbAsync(async db =>
    {
        db.Current.Enter(coop.Id);
        var parts = filtered ? db.CoopFamilies : db.CoopFamilies.IgnoreQueryFilters([AppDb.CoopFilter]);
        var invitations = filtered ? db.CoopInvitations : db.CoopInvitations.IgnoreQueryFilters([AppDb.CoopFilter]);
        var coops = filtered ? db.Coops : db.Coops.IgnoreQueryFilters([AppDb.CoopFilter]);
        return (await parts.Select(f => f.CoopId).ToListAsync()).Concat(await invitations.Select(i => i.CoopId).ToListAsync()).Concat(await coops.Select(c => c.Id).ToListAsync()).ToList();
    });
}
