using System.Net;
using CoopLessons.Data.Coops;
using CoopLessons.Data.Coops.Days;
using CoopLessons.Data.Coops.News;
using CoopLessons.Web.Tests.App;
using CoopLessons.Web.Tests.Tenancy;
using Microsoft.AspNetCore.Mvc.RazorPages;
using Microsoft.AspNetCore.Routing;
using Microsoft.EntityFrameworkCore;
using Microsoft.Extensions.DependencyInjection;

namespace CoopLessons.Web.Tests.Coops;

/// <summary>Two web programs on one database. What the first one does holds for the very next request to the second.</summary>
public sealed class A_family_taken_out_on_one_of_two_nodes
{
    private const string OnlyHere = "Bring boots for the meadow";

    [Fact]
    public async Task Finds_every_page_of_the_coop_shut_on_the_other_and_reads_nothing()
    {
        await using var first = new TestServer();
        var coop = await CoopOfTest.FoundAsync(first);
        var birch = await coop.JoinAsync("Birch");
        await coop.PartAsync(birch, CoopPart.Leader);
        var (meeting, notice) = await FurnishAsync(coop);
        await using var second = new SecondNode(first);
        var there = second.AsSeenBy(birch.Guardian);
        var paths = Pages(first).Select(t => RouteFilling.Fill(t, name => name.ToLowerInvariant() switch
        {
            "coopid" => coop.Id.ToString(),
            "meetingid" => meeting.ToString(),
            "noticeid" => notice.ToString(),
            // Whatever else a page asks for, the co-op is looked at first.
            _ => Guid.CreateVersion7().ToString(),
        })).ToList();
        Assert.Contains($"{coop.Home}/news/{notice}", paths);
        Assert.True(paths.Count > 7, $"Only {paths.Count} pages were found.");
        // Before, each of them says something that nothing says afterwards.
        foreach (var (path, says) in new[] { (coop.Home, "Millrace"), (coop.Home + "/news", OnlyHere), ($"{coop.Home}/news/{notice}", OnlyHere), ($"{coop.Home}/families", "Alder") })
            Assert.Contains(says, (await there.GetAsync(path)).Source.Text, StringComparison.Ordinal);

        var (form, shown) = (await there.GetAsync(coop.Home + "/news"), await there.GetAsync(coop.Home + "/shown"));
        using var taken = await coop.Leader.Guardian.PostAsync(coop.Home + "/families?handler=TakeOut", [new("memberId", birch.Id.ToString()), new("__RequestVerificationToken", await coop.Leader.Guardian.TokenAsync())]);
        Assert.Equal(HttpStatusCode.Redirect, taken.StatusCode);

        foreach (var path in paths)
        {
            using var shut = await there.OpenAsync(path);
            Assert.True(shut.StatusCode is HttpStatusCode.NotFound or HttpStatusCode.Forbidden, $"{path} answered {(int)shut.StatusCode}");
            await SaysNothingAsync(shut);
        }

        // Pages that were open before: what is sent from them finds nothing and writes nothing.
        foreach (var page in new[] { form, shown })
        {
            using var sent = await there.SubmitAsync(page, page == form ? new() { ["Input.Title"] = "Still here" } : new() { ["Input.GoBy"] = "Still here" });
            Assert.Equal(HttpStatusCode.NotFound, sent.StatusCode);
            await SaysNothingAsync(sent);
        }

        Assert.DoesNotContain("Millrace", (await there.GetAsync("/coop")).QuerySelector("main")!.TextContent, StringComparison.Ordinal);
        await coop.WithDbAsync(async db =>
        {
            Assert.Equal(OnlyHere, Assert.Single(await db.CoopNotices.ToListAsync()).Title);
            Assert.Equal("Birch", (await db.CoopFamilies.SingleAsync(f => f.FamilyId == birch.Id)).Name);
        });
    }

    [Fact]
    public async Task Is_in_again_on_both_with_a_new_link()
    {
        await using var first = new TestServer();
        var coop = await CoopOfTest.FoundAsync(first);
        var birch = await coop.JoinAsync("Birch");
        await using var second = new SecondNode(first);
        var there = second.AsSeenBy(birch.Guardian);
        using var left = await there.PostAsync(coop.Home + "?handler=Leave", [new("__RequestVerificationToken", await there.TokenAsync())]);
        Assert.Equal(HttpStatusCode.Redirect, left.StatusCode);
        using var shut = await birch.Guardian.OpenAsync(coop.Home);
        Assert.Equal(HttpStatusCode.NotFound, shut.StatusCode);
        using var back = await birch.Guardian.SubmitAsync(await birch.Guardian.GetAsync(await coop.LinkAsync("Birch")));
        Assert.Contains("2 families", (await there.GetAsync(coop.Home)).QuerySelector("main")!.TextContent, StringComparison.Ordinal);
    }

    private static async Task SaysNothingAsync(HttpResponseMessage answer)
    {
        var text = await answer.Content.ReadAsStringAsync();
        foreach (var word in new[] { "Millrace", OnlyHere, "mill house", "Alder" })
            Assert.DoesNotContain(word, text, StringComparison.Ordinal);
    }

    private static async Task<(Guid Meeting, Guid Notice)> FurnishAsync(CoopOfTest coop)
    {
        var (meeting, notice) = (Guid.CreateVersion7(), Guid.CreateVersion7());
        await coop.WithDbAsync(async db =>
        {
            var leader = await db.CoopFamilies.SingleAsync(f => f.FamilyId == coop.Leader.Id);
            db.CoopMeetings.Add(new CoopMeeting(coop.Id, meeting, TestServer.Today, "the mill house"));
            db.CoopNotices.Add(new CoopNotice(coop.Id, notice, leader, OnlyHere, "It is wet.", TestServer.Start.UtcDateTime, meetingId: meeting));
            await db.SaveChangesAsync();
        });
        return (meeting, notice);
    }

    /// <summary>Routes of all pages of one co-op, from the program itself.</summary>
    private static List<string> Pages(TestServer server) =>
        [.. server.Services.GetRequiredService<EndpointDataSource>().Endpoints.Select(e => e.Metadata.GetMetadata<PageActionDescriptor>()?.AttributeRouteInfo?.Template)
            .OfType<string>().Where(t => t.StartsWith("coop/{coopId", StringComparison.OrdinalIgnoreCase)).Distinct().Order(StringComparer.Ordinal)];
}
