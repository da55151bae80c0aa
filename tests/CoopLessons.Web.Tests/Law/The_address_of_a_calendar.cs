using CoopLessons.Data;
using CoopLessons.Data.Families;
using CoopLessons.Data.Requirements;
using CoopLessons.Web.Tests.App;
using Microsoft.EntityFrameworkCore;

namespace CoopLessons.Web.Tests.Law;

[Collection(SharedServer.Name)]
public sealed class The_address_of_a_calendar(TestServer server)
{
    [Fact]
    public async Task Is_kept_as_a_hash_and_ends_once()
    {
        var (family, secret) = await MadeAsync();
        await family.WithDbAsync(async db =>
        {
            var address = await db.CalendarAddresses.SingleAsync();
            Assert.Equal(Invitation.Hash(secret), address.SecretHash);
            address.End(TestServer.Start.UtcDateTime);
            address.End(TestServer.Start.UtcDateTime.AddDays(1));
            await db.SaveChangesAsync();
        });
        Assert.Equal(TestServer.Start.UtcDateTime, await family.FromDbAsync(db => db.CalendarAddresses.Select(a => a.EndedAt).SingleAsync()));
    }

    [PostgresFact]
    public async Task Opens_its_own_row_alone_to_whoever_holds_it()
    {
        var (_, secret) = await MadeAsync();
        await MadeAsync();
        await server.WithDbAsync(null, async db =>
        {
            Assert.Empty(await db.CalendarAddresses.IgnoreQueryFilters([AppDb.FamilyFilter]).ToListAsync());
            db.Current.Hold(Invitation.Hash(secret));
            var seen = await db.CalendarAddresses.IgnoreQueryFilters([AppDb.FamilyFilter]).ToListAsync();
            Assert.Equal(Invitation.Hash(secret), Assert.Single(seen).SecretHash);
        });
    }

    private async Task<(TestFamily Family, string Secret)> MadeAsync()
    {
        var family = await server.FamilyAsync();
        var secret = Invitation.NewSecret();
        await family.WithDbAsync(async db =>
        {
            db.Add(new CalendarAddress(Guid.CreateVersion7(), secret, withNames: true, TestServer.Start.UtcDateTime));
            await db.SaveChangesAsync();
        });
        return (family, secret);
    }
}
