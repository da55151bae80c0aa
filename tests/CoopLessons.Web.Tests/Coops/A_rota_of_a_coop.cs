using System.Net;
using CoopLessons.Data.Coops.Days;
using CoopLessons.Data.Coops.Turns;
using CoopLessons.Web.Tests.App;
using Microsoft.EntityFrameworkCore;

namespace CoopLessons.Web.Tests.Coops;

/// <summary>Turns over a term, asked for, taken and healed by the pages themselves.</summary>
[Collection(SharedServer.Name)]
public sealed class A_rota_of_a_coop(TestServer server)
{
    private static readonly string[] Roles = ["Teaching", "Hosting", "Minding", "Helping"];

    // Derived: 12 meetings of 4 roles are 48 turns, 48/4 = 12 for each family, 12/4 = 3 of each role.
    [Fact]
    public async Task Gives_four_families_twelve_turns_each_over_twelve_meetings_and_every_role_three_times()
    {
        var term = await TermAsync(4, 12);
        var proposal = await term.AskAsync();
        Assert.Contains("No rota is better under these rules and wishes.", Text(proposal), StringComparison.Ordinal);
        Assert.Empty(await term.KeptAsync());
        await term.TakeAsync(proposal);
        await term.TakeAsync(proposal);
        var kept = await term.KeptAsync();
        Assert.Equal(48, kept.Count);
        Assert.All(kept.GroupBy(t => t.FamilyId), f => Assert.Equal(12, f.Count()));
        Assert.Equal(4, kept.Select(t => t.FamilyId).Distinct().Count());
        Assert.All(kept.GroupBy(t => (t.FamilyId, t.Role)), f => Assert.Equal(3, f.Count()));

        var seen = Text(await term.Families[1].Guardian.GetAsync(term.Turns));
        foreach (var name in new[] { "Alder", "Birch", "Cedar", "Dogwood" })
            Assert.Contains($"{name}: 12 turns that count 12; a fair share is 12.00, so it is even.", seen, StringComparison.Ordinal);
        Assert.Contains(kept[0].Why, seen, StringComparison.Ordinal);
        Assert.Contains("Your next turns", seen, StringComparison.Ordinal);

        // Two fall ill for one meeting: others stand in, as few as can be, and the days after that stay.
        var ill = term.Meetings[4];
        var two = kept.Where(t => t.MeetingId == ill.Id).Take(2).ToList();
        await AwayAsync(term, term.Coop.Leader, ill, [.. two.Select(t => t.AdultId)]);
        var healed = await term.HealAsync(ill);
        Assert.Contains("it is proven that fewer would not do", Text(healed), StringComparison.Ordinal);
        Assert.Contains($"for {two[0].Adult}, who is away", Text(healed), StringComparison.Ordinal);
        Assert.Contains("2 changes", Text(healed), StringComparison.Ordinal);
        await term.TakeAsync(healed);
        var now = await term.KeptAsync();
        Assert.Equal(48, now.Count);
        Assert.DoesNotContain(now, t => t.MeetingId == ill.Id && two.Any(i => i.AdultId == t.AdultId));
        Assert.Equal(2, now.Count(t => !kept.Any(k => (k.MeetingId, k.RoleId, k.AdultId) == (t.MeetingId, t.RoleId, t.AdultId))));
    }

    [Fact]
    public async Task Leaves_a_room_shut_in_which_a_couple_would_be_alone_and_says_so()
    {
        var term = await TurnsOfTest.MakeAsync(server, 2, 2);
        var barn = Guid.CreateVersion7();
        await term.AsAsync(term.Coop.Leader, db => db.CoopRooms.Add(new CoopRoom(term.Coop.Id, barn, "the barn", null)));
        await term.AddRoleAsync("Teaching", barn);
        await term.AddRoleAsync("Helping", barn);
        await AwayAsync(term, term.Families[1], term.Meetings[0], [term.Adults["Olive"], term.Adults["Linden"]]);
        var proposal = await term.AskAsync();
        Assert.Contains("The barn stays shut on Thursday 19 March: two unrelated adults are needed, and of those who may be in it only", Text(proposal), StringComparison.Ordinal);
        Assert.Contains("If Olive came after all, that would fill every place.", Text(proposal), StringComparison.Ordinal);
        await term.TakeAsync(proposal);
        var kept = await term.KeptAsync();
        Assert.Equal(2, kept.Count);
        Assert.Equal(2, kept.Select(t => t.FamilyId).Distinct().Count());
        Assert.Contains("The barn stays shut", Text(await term.Families[1].Guardian.GetAsync(term.Turns)), StringComparison.Ordinal);
    }

    [Fact]
    public async Task Is_made_by_leaders_and_each_family_speaks_for_its_own_adults()
    {
        var term = await TermAsync(2, 3);
        var birch = term.Families[1];
        foreach (var path in new[] { "/new", "/roles", "/cover" })
        {
            using var shut = await birch.Guardian.OpenAsync(term.Turns + path);
            Assert.Equal(HttpStatusCode.Forbidden, shut.StatusCode);
        }

        var meeting = $"{term.Turns}/meeting/{term.Meetings[0].Id}";
        var page = await birch.Guardian.GetAsync(meeting);
        Assert.DoesNotContain(page.QuerySelectorAll("input[name=away]"), box => box.GetAttribute("value") == term.Adults["Iris"].ToString());
        using var foreign = await birch.Guardian.SubmitAsync(page, new() { ["away"] = term.Adults["Iris"].ToString() }, "form[action*='Away'] input");
        Assert.Equal(HttpStatusCode.NotFound, foreign.StatusCode);
        await AwayAsync(term, birch, term.Meetings[0], [term.Adults["Olive"]]);
        Assert.Contains("said by Birch", Text(await term.Coop.Leader.Guardian.GetAsync(meeting)), StringComparison.Ordinal);

        using var asked = await birch.Guardian.PostAsync(meeting + "?handler=Ask", [new("__RequestVerificationToken", await birch.Guardian.TokenAsync())]);
        Assert.Equal(HttpStatusCode.Forbidden, asked.StatusCode);
    }

    [Fact]
    public async Task Heeds_what_a_family_wishes_and_forgets_it_when_the_family_leaves_while_its_turns_stay()
    {
        var term = await TermAsync(2, 2);
        var birch = term.Families[1];
        var wishes = await birch.Guardian.GetAsync(term.Turns + "/wishes");
        using var saved = await birch.Guardian.SubmitAsync(wishes, new() { ["Input.Wishes[0].Says"] = "Liked", ["Input.Away"] = $"{term.Adults["Olive"]:N}|{term.Meetings[1].Id:N}" });
        Assert.Equal(HttpStatusCode.Redirect, saved.StatusCode);
        await term.TakeAsync(await term.AskAsync());
        var kept = await term.KeptAsync();
        Assert.DoesNotContain(kept, t => t.MeetingId == term.Meetings[1].Id && t.Adult == "Olive");
        Assert.True(kept.Count(t => t.Family == "Birch") > 1);

        using var left = await birch.Guardian.PostAsync(term.Coop.Home + "?handler=Leave", [new("__RequestVerificationToken", await birch.Guardian.TokenAsync())]);
        Assert.Equal(HttpStatusCode.Redirect, left.StatusCode);
        Assert.Equal(kept.Count, (await term.KeptAsync()).Count);
        Assert.Equal(0, await term.ReadAsync(async db => await db.TurnWishes.CountAsync(w => w.CoopId == term.Coop.Id) + await db.AdultsAway.CountAsync(a => a.CoopId == term.Coop.Id)));
        Assert.Contains("Birch", Text(await term.Coop.Leader.Guardian.GetAsync(term.Turns)), StringComparison.Ordinal);
        var healed = await term.HealAsync(term.Meetings[0]);
        Assert.Contains("who is away", Text(healed), StringComparison.Ordinal);
    }

    // Derived: one family did two turns that count 3 each, the other none; 600 hundredths are 300 each, so 300 above and below.
    [Fact]
    public async Task Brings_along_what_was_done_above_and_below_a_share_before_but_nothing_of_a_day_that_fell_through()
    {
        var term = await TurnsOfTest.MakeAsync(server, 2, 2);
        var (alder, birch) = (term.Families[0].Id, term.Families[1].Id);
        await term.AsAsync(term.Coop.Leader, db =>
        {
            var past = new TurnTerm(term.Coop.Id, Guid.CreateVersion7(), TestServer.Today.AddDays(-30), TestServer.Today.AddDays(-1), "Alder", TestServer.Start.UtcDateTime);
            past.Know("", [new TermFamily(alder, "Alder"), new TermFamily(birch, "Birch")], []);
            db.TurnTerms.Add(past);
            foreach (var (days, off) in new[] { (-21, false), (-14, false), (-7, true) })
            {
                var meeting = new CoopMeeting(term.Coop.Id, Guid.CreateVersion7(), TestServer.Today.AddDays(days), "");
                if (off)
                    meeting.CallOff("snow", TestServer.Start.UtcDateTime);
                db.CoopMeetings.Add(meeting);
                db.CoopTurns.Add(new CoopTurn(past, meeting.Id, Guid.CreateVersion7(), "Teaching", 3, new TurnTaker(term.Adults["Iris"], "Iris", alder, "Alder"), ""));
            }
        });
        var hand = await term.ReadAsync(db => RotaAtHand.LoadAsync(db, term.Coop.Id, TurnsOfTest.First, TurnsOfTest.First.AddDays(7), withKept: false, default));
        Assert.Equal([("Alder", 300), ("Birch", -300)], hand.Problem.Families.Select(f => (f.Name, f.PastHundredths)));
    }

    private async Task<TurnsOfTest> TermAsync(int families, int meetings)
    {
        var term = await TurnsOfTest.MakeAsync(server, families, meetings);
        foreach (var role in Roles.Take(families == 2 ? 2 : 4))
            await term.AddRoleAsync(role);
        return term;
    }

    private static async Task AwayAsync(TurnsOfTest term, TestFamily by, CoopMeeting meeting, Guid[] adults)
    {
        var page = await by.Guardian.GetAsync($"{term.Turns}/meeting/{meeting.Id}");
        using var said = await by.Guardian.SubmitAsync(page, within: "form[action*='Away'] input", more: adults.Select(a => new KeyValuePair<string, string>("away", a.ToString())));
        Assert.Equal(HttpStatusCode.Redirect, said.StatusCode);
    }

    private static string Text(AngleSharp.Html.Dom.IHtmlDocument page) => string.Join(' ', page.QuerySelector("main")!.TextContent.Split((char[]?)null, StringSplitOptions.RemoveEmptyEntries));
}
