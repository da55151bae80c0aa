using System.Net;
using System.Xml.Linq;
using CoopLessons.Data.Coops.Days;
using CoopLessons.Data.Coops.News;
using CoopLessons.Web.Tests.App;
using Ical.Net;
using Microsoft.EntityFrameworkCore;

namespace CoopLessons.Web.Tests.Coops;

/// <summary>What a program reads at a family's secret address: meetings (RFC 5545) and notices (RFC 4287).</summary>
[Collection(SharedServer.Name)]
public sealed class A_coop_in_a_calendar_program_and_a_feed_reader(TestServer server)
{
    private static readonly XNamespace Atom = "http://www.w3.org/2005/Atom";

    [Fact]
    public async Task Shows_a_meeting_and_the_same_one_called_off_under_the_same_name_with_a_greater_number()
    {
        var day = await SnowDay.MakeAsync(server);
        var (calendar, _) = await AddressesAsync(day.Birch, withCoops: true);
        var before = Assert.Single((await ReadAsync(calendar)).Events);
        Assert.Equal(("Millrace", "the mill house", "CONFIRMED"), (before.Summary, before.Location, before.Status));
        // The hours of the periods, by the clock on the wall: RFC 5545 § 3.3.5, form 1.
        Assert.Contains("DTSTART:20260312T090000\r\n", await TextAsync(calendar), StringComparison.Ordinal);
        Assert.Equal(new DateTime(2026, 3, 12, 10, 30, 0), before.End!.Value);
        Assert.Null(before.Start!.TzId);

        using var off = await day.Coop.Leader.Guardian.SubmitAsync(await day.Coop.Leader.Guardian.GetAsync(day.Path + "/off"), new() { ["Input.Why"] = "snow" });
        var after = Assert.Single((await ReadAsync(calendar)).Events);
        Assert.Equal((before.Uid, "CANCELLED", "Called off: snow"), (after.Uid, after.Status, after.Description));
        // RFC 5545 § 3.8.7.4: a change raises it.
        Assert.True(after.Sequence > before.Sequence, $"{after.Sequence} after {before.Sequence}");

        using var taken = await day.Coop.Leader.Guardian.SubmitAsync(await day.Coop.Leader.Guardian.GetAsync(day.Path + "/again"));
        var both = (await ReadAsync(calendar)).Events.OrderBy(e => e.Start!.Value).ToList();
        Assert.Equal(["CANCELLED", "CONFIRMED"], both.Select(e => e.Status));
        Assert.Equal("Instead of Thursday, 12 March.", both[1].Description);
        Assert.NotEqual(both[0].Uid, both[1].Uid);
    }

    [Fact]
    public async Task Shows_nothing_of_the_coop_where_the_family_did_not_choose_so()
    {
        var day = await SnowDay.MakeAsync(server);
        var (calendar, feed) = await AddressesAsync(day.Birch, withCoops: false);
        Assert.Null(feed);
        Assert.DoesNotContain("VEVENT", await TextAsync(calendar), StringComparison.Ordinal);
        using var none = await server.Visitor().OpenAsync(calendar.Replace(".ics", ".atom", StringComparison.Ordinal));
        Assert.Equal(HttpStatusCode.NotFound, none.StatusCode);
    }

    [Fact]
    public async Task Shows_nothing_more_once_the_family_is_taken_out_or_the_address_is_ended()
    {
        var day = await SnowDay.MakeAsync(server);
        var (calendar, feed) = await AddressesAsync(day.Birch, withCoops: true);
        await TellAsync(day.Coop, "Bring boots");
        Assert.Contains("Bring boots", await TextAsync(feed!), StringComparison.Ordinal);
        using var taken = await day.Coop.Leader.Guardian.PostAsync(day.Coop.Home + "/families?handler=TakeOut",
            [new("memberId", day.Birch.Id.ToString()), new("__RequestVerificationToken", await day.Coop.Leader.Guardian.TokenAsync())]);
        Assert.DoesNotContain("VEVENT", await TextAsync(calendar), StringComparison.Ordinal);
        Assert.DoesNotContain("Millrace", await TextAsync(feed!), StringComparison.Ordinal);
        using var ended = await day.Birch.Guardian.SubmitAsync(await day.Birch.Guardian.GetAsync("/records/calendar"), within: "form[action*='handler=End']");
        using var gone = await server.Visitor().OpenAsync(feed!);
        Assert.Equal(HttpStatusCode.Gone, gone.StatusCode);
    }

    [Fact]
    public async Task Has_in_its_feed_what_every_reader_asks_for()
    {
        var day = await SnowDay.MakeAsync(server);
        var (_, address) = await AddressesAsync(day.Birch, withCoops: true);
        const string title = "Σήμερα <b>δεν</b> & \u0007 không";
        await day.Coop.WithDbAsync(async db =>
        {
            var leader = await db.CoopFamilies.SingleAsync(f => f.FamilyId == day.Coop.Leader.Id);
            db.CoopNotices.Add(new CoopNotice(day.Coop.Id, Guid.CreateVersion7(), leader, title, "One\u0001\nTwo", TestServer.Start.UtcDateTime.AddHours(1)));
            var wrong = new CoopNotice(day.Coop.Id, Guid.CreateVersion7(), leader, "Wrong day", "Wrong", TestServer.Start.UtcDateTime);
            wrong.Withdraw(TestServer.Start.UtcDateTime.AddHours(2));
            db.CoopNotices.Add(wrong);
            await db.SaveChangesAsync();
        });
        using var answer = await server.Visitor().OpenAsync(address!);
        Assert.Equal("application/atom+xml; charset=utf-8", answer.Content.Headers.ContentType!.ToString());
        var feed = XDocument.Parse(await answer.Content.ReadAsStringAsync()).Root!;
        // RFC 4287 § 4.1.1: exactly one id, title and updated; an author in each entry where the feed has none.
        Assert.Equal(Atom + "feed", feed.Name);
        foreach (var one in new[] { feed }.Concat(feed.Elements(Atom + "entry")))
        {
            Assert.StartsWith("urn:uuid:", Assert.Single(one.Elements(Atom + "id")).Value, StringComparison.Ordinal);
            Assert.NotEqual("", Assert.Single(one.Elements(Atom + "title")).Value);
            Assert.Matches("^[0-9]{4}-[0-9]{2}-[0-9]{2}T[0-9]{2}:[0-9]{2}:[0-9]{2}Z$", Assert.Single(one.Elements(Atom + "updated")).Value);
            Assert.NotNull(Assert.Single(one.Elements(Atom + "link"), l => l.Attribute("rel")!.Value == "alternate").Attribute("href"));
        }

        var entries = feed.Elements(Atom + "entry").ToList();
        Assert.Equal(["Millrace: withdrawn", "Millrace: Σήμερα <b>δεν</b> &  không"], entries.Select(e => e.Element(Atom + "title")!.Value));
        Assert.All(entries, e => Assert.Equal("Alder", e.Element(Atom + "author")!.Element(Atom + "name")!.Value));
        Assert.Equal("One\nTwo", entries[1].Element(Atom + "content")!.Value);
        Assert.Equal("2026-03-12T17:00:00Z", feed.Element(Atom + "updated")!.Value);
        Assert.DoesNotContain("Wrong", feed.ToString(), StringComparison.Ordinal);
    }

    private static async Task TellAsync(CoopOfTest coop, string title)
    {
        using var told = await coop.Leader.Guardian.SubmitAsync(await coop.Leader.Guardian.GetAsync(coop.Home + "/news"), new() { ["Input.Title"] = title });
        Assert.Equal(HttpStatusCode.Redirect, told.StatusCode);
    }

    private static async Task<(string Calendar, string? Feed)> AddressesAsync(TestFamily family, bool withCoops)
    {
        using var made = await family.Guardian.SubmitAsync(await family.Guardian.GetAsync("/records/calendar"), new() { ["withCoops"] = withCoops ? "true" : null }, "form[action*='handler=Make']");
        var page = await Visitor.ParseAsync(made);
        return (page.QuerySelector("#link")!.GetAttribute("value")!, page.QuerySelector("#feed-link")?.GetAttribute("value"));
    }

    private async Task<string> TextAsync(string address)
    {
        using var answer = await server.Visitor().OpenAsync(address);
        Assert.Equal(HttpStatusCode.OK, answer.StatusCode);
        return await answer.Content.ReadAsStringAsync();
    }

    private async Task<Calendar> ReadAsync(string address) => Calendar.Load(await TextAsync(address))!;
}
