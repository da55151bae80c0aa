using System.Net;
using System.Text.RegularExpressions;
using AngleSharp.Html.Dom;
using CoopLessons.Data.Families;
using CoopLessons.Data.Requirements;
using CoopLessons.Web.Tests.App;
using Microsoft.EntityFrameworkCore;

namespace CoopLessons.Web.Tests.Records;

/// <summary>The secret address of a family under New York's rule, and what a calendar program reads there (RFC 5545).</summary>
[Collection(SharedServer.Name)]
public sealed partial class Due_dates_in_a_calendar_program(TestServer server)
{
    [Fact]
    public async Task Have_no_address_until_the_family_makes_one_which_is_shown_once()
    {
        var log = await NewYorkAsync();
        var before = await log.Guardian.GetAsync("/records/calendar");
        Assert.Null(before.QuerySelector("#link"));
        Assert.Contains("Make the address", before.Texts("main button"));
        Assert.DoesNotContain("End it", before.Texts("main button"));
        Assert.Equal(0, await log.Family.FromDbAsync(db => db.CalendarAddresses.CountAsync()));

        var address = await MakeAsync(log);
        Assert.Matches("^http://localhost/calendar/[A-Za-z0-9_-]{20,}\\.ics$", address);
        var after = await log.Guardian.GetAsync("/records/calendar");
        Assert.Null(after.QuerySelector("#link"));
        Assert.DoesNotContain(SecretOf(address), after.Source.Text, StringComparison.Ordinal);
        // 15:00 UTC is 10:00 in Chicago.
        Assert.Contains("made on 12 March 2026, 10:00, titles with initials only", after.QuerySelector("main")!.Plain(), StringComparison.Ordinal);
    }

    [Fact]
    public async Task Are_answered_to_a_program_that_is_signed_in_nowhere()
    {
        var log = await NewYorkAsync();
        var answer = await server.Visitor().OpenAsync(await MakeAsync(log));
        Assert.Equal(HttpStatusCode.OK, answer.StatusCode);
        Assert.Equal("text/calendar; charset=utf-8", answer.Content.Headers.ContentType!.ToString());
        var events = await EventsAsync(answer);
        Assert.Equal("20250701", events["notice of intention to instruct at home (L.)"]);
        Assert.Equal("20260331", events.Single(e => e.Key.EndsWith(", 3 of 4 (L.)", StringComparison.Ordinal)).Value);
        Assert.Equal("20260630", events.Single(e => e.Key.StartsWith("yearly assessment", StringComparison.Ordinal)).Value);
    }

    [Fact]
    public async Task Name_the_children_only_where_the_family_chose_so()
    {
        var log = await NewYorkAsync();
        var by = await TextAsync(await MakeAsync(log));
        Assert.Contains("(L.)", by, StringComparison.Ordinal);
        Assert.DoesNotContain("Linnet", by, StringComparison.Ordinal);
        Assert.DoesNotContain("Alder", by, StringComparison.Ordinal);
        var named = await TextAsync(await MakeAsync(log, withNames: true));
        Assert.Contains("(Linnet)", named, StringComparison.Ordinal);
        Assert.DoesNotContain("(L.)", named, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Move_to_a_new_address_when_it_is_renewed_and_to_none_when_it_is_ended()
    {
        var log = await NewYorkAsync();
        var first = await MakeAsync(log);
        var second = await MakeAsync(log);
        Assert.Equal(HttpStatusCode.Gone, await StatusAsync(first));
        Assert.Equal(HttpStatusCode.OK, await StatusAsync(second));

        var ended = await log.Guardian.SubmitAsync(await log.Guardian.GetAsync("/records/calendar"), within: "form[action*='handler=End']");
        Assert.Equal(HttpStatusCode.Redirect, ended.StatusCode);
        Assert.Equal(HttpStatusCode.Gone, await StatusAsync(second));
        var after = await log.Guardian.GetAsync("/records/calendar");
        Assert.Equal("The address no longer answers.", after.QuerySelector("[role=status]")!.Plain());
        Assert.DoesNotContain("VCALENDAR", await TextAsync(second), StringComparison.Ordinal);
    }

    [Fact]
    public async Task End_at_both_addresses_where_two_were_made_at_the_same_moment()
    {
        var log = await NewYorkAsync();
        var secrets = new[] { Invitation.NewSecret(), Invitation.NewSecret() };
        await log.AddAsync([.. secrets.Select(s => (object)new CalendarAddress(Guid.CreateVersion7(), s, false, TestServer.Start.UtcDateTime))]);
        Assert.All(await Task.WhenAll(secrets.Select(s => StatusAsync($"/calendar/{s}.ics"))), s => Assert.Equal(HttpStatusCode.OK, s));
        await log.Guardian.SubmitAsync(await log.Guardian.GetAsync("/records/calendar"), within: "form[action*='handler=End']");
        Assert.All(await Task.WhenAll(secrets.Select(s => StatusAsync($"/calendar/{s}.ics"))), s => Assert.Equal(HttpStatusCode.Gone, s));
    }

    [Fact]
    public async Task Have_no_address_left_after_two_taps_at_once_and_an_end()
    {
        var log = await NewYorkAsync();
        var page = await log.Guardian.GetAsync("/records/calendar");
        var windows = Enumerable.Range(0, 2).Select(_ => server.Visitor()).ToList();
        windows.ForEach(w => log.Guardian.Cookies.ToList().ForEach(c => w.SetCookie(c.Key, c.Value)));
        var answers = await Task.WhenAll(windows.Select(w => w.SubmitAsync(page, within: "form[action*='handler=Make']")));
        Assert.All(answers, a => Assert.Contains(a.StatusCode, new[] { HttpStatusCode.OK, HttpStatusCode.Conflict }));
        await log.Guardian.SubmitAsync(await log.Guardian.GetAsync("/records/calendar"), within: "form[action*='handler=End']");
        Assert.Equal(0, await log.Family.FromDbAsync(db => db.CalendarAddresses.CountAsync(a => a.EndedAt == null)));
    }

    [Theory]
    [InlineData("/calendar/nothing.ics")]
    [InlineData("/calendar/%01%7f.ics")]
    [InlineData("/calendar/..%2f..%2fetc.ics")]
    [InlineData("/calendar/'%20or%201=1--.ics")]
    [InlineData("/calendar/.ics")]
    [InlineData("/calendar/nothing")]
    public async Task Stand_at_no_address_that_somebody_guesses(string address) => Assert.Equal(HttpStatusCode.NotFound, await StatusAsync(address));

    [Fact]
    public async Task Stand_at_no_very_long_address() => Assert.Equal(HttpStatusCode.NotFound, await StatusAsync($"/calendar/{new string('s', 10_000)}.ics"));

    [Fact]
    public async Task Are_the_addresss_family_alone_even_to_a_guardian_of_another()
    {
        var (theirs, mine) = (await NewYorkAsync(), await KeptLog.OfAsync(server, "Wren"));
        await mine.StandAsync("US-NY", "home-instruction", LogUnderLaw.July, learner: "Wren");
        var address = await MakeAsync(theirs, withNames: true);
        var own = await TextAsync(await MakeAsync(mine, withNames: true));
        Assert.Contains("(Wren)", own, StringComparison.Ordinal);
        Assert.DoesNotContain("Linnet", own, StringComparison.Ordinal);

        var text = await (await mine.Guardian.OpenAsync(address)).Content.ReadAsStringAsync();
        Assert.Contains("(Linnet)", text, StringComparison.Ordinal);
        Assert.DoesNotContain("Wren", text, StringComparison.Ordinal);
        // The guardian is who they were afterwards.
        Assert.Contains("Wren", (await mine.Guardian.GetAsync("/records")).QuerySelector("h1")!.Plain(), StringComparison.Ordinal);
    }

    [Fact]
    public async Task Leave_out_what_is_done_and_move_with_the_familys_own_date()
    {
        var log = await NewYorkAsync();
        var (notice, report) = (new DutyMark(log.Linnet, log.YearId, "US-NY/home-instruction/notice/1"), new DutyMark(log.Linnet, log.YearId, "US-NY/home-instruction/quarterly-reports/3"));
        notice.Done(new(2025, 6, 30));
        report.DueOn(new(2026, 4, 2));
        await log.AddAsync(notice, report);
        var events = await EventsAsync(await server.Visitor().OpenAsync(await MakeAsync(log)));
        Assert.DoesNotContain(events.Keys, e => e.StartsWith("notice of intention to instruct", StringComparison.Ordinal));
        Assert.Equal("20260402", events.Single(e => e.Key.EndsWith(", 3 of 4 (L.)", StringComparison.Ordinal)).Value);
    }

    [Fact]
    public async Task Tell_no_birth_date_no_note_and_nothing_of_the_log()
    {
        var log = await NewYorkAsync();
        await log.Family.WithDbAsync(async db =>
        {
            (await db.Learners.SingleAsync()).Describe("Linnet", new(2016, 2, 24), [], "");
            await db.SaveChangesAsync();
        });
        var mark = new DutyMark(log.Linnet, log.YearId, "US-NY/home-instruction/quarterly-reports/3");
        mark.Remark("receipt in the blue folder");
        await log.AddAsync(mark);
        await log.WriteAsync(new(2026, 3, 2), 47, [("science", 1)], "Watched the geese", note: "private");
        var text = await TextAsync(await MakeAsync(log));
        foreach (var secret in new[] { "blue folder", "2016", "24 February", "0224", "geese", "private", "0:47", log.Linnet.ToString(), log.Linnet.ToString("N"), log.Family.Id.ToString() })
            Assert.DoesNotContain(secret, text, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Of_a_child_whose_birthday_begins_the_duty_do_not_say_so()
    {
        // Ohio's duty begins with the sixth birthday, 9 March 2026: the date of the notice is reckoned from it.
        var log = await KeptLog.OfAsync(server, "Linnet").StandsAsync("US-OH", "home-education");
        await log.Family.WithDbAsync(async db =>
        {
            (await db.Learners.SingleAsync()).Describe("Linnet", new(2020, 3, 9), [], "");
            await db.SaveChangesAsync();
        });
        var text = await TextAsync(await MakeAsync(log));
        Assert.Contains("BEGIN:VEVENT", text, StringComparison.Ordinal);
        Assert.DoesNotContain("9 March", text, StringComparison.Ordinal);
        Assert.DoesNotContain("ages began", text, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Reach_over_the_years_at_hand_and_leave_older_ones_behind()
    {
        var log = await NewYorkAsync();
        foreach (var first in new[] { 2022, 2024, 2026 })
            await log.AddAsync(new SchoolYear(Guid.CreateVersion7(), $"{first}–{first - 1999}", new(new DateOnly(first, 7, 1), new DateOnly(first + 1, 6, 30)), Core.Calendar.Weekdays.MondayToFriday));
        await log.Family.WithDbAsync(async db =>
        {
            (await db.LearnerPathways.SingleAsync()).Move(new(2022, 7, 1), null);
            await db.SaveChangesAsync();
        });
        var text = await TextAsync(await MakeAsync(log));
        var starts = Starts().Matches(text).Select(m => m.Groups[1].Value).ToList();
        Assert.Contains("20240701", starts);
        Assert.Contains("20250701", starts);
        Assert.Contains("20260701", starts);
        Assert.DoesNotContain(starts, s => string.CompareOrdinal(s, "20240701") < 0);
        Assert.Equal(starts.Count, Uids().Matches(text).Select(m => m.Value).Distinct().Count());
    }

    [Fact]
    public async Task Are_a_calendar_without_events_where_no_pathway_is_chosen()
    {
        var text = await TextAsync(await MakeAsync(await KeptLog.OfAsync(server, "Linnet")));
        Assert.StartsWith("BEGIN:VCALENDAR", text, StringComparison.Ordinal);
        Assert.DoesNotContain("VEVENT", text, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Are_read_and_never_written()
    {
        var log = await NewYorkAsync();
        var address = new Uri(await MakeAsync(log)).PathAndQuery;
        var before = await log.Family.RowsAsync();
        var stranger = server.Visitor();
        var token = (await stranger.GetAsync("/sign-in")).QuerySelector("input[name=__RequestVerificationToken]")!.GetAttribute("value")!;
        var statuses = new List<HttpStatusCode>
        {
            (await stranger.PostAsync(address, [])).StatusCode,
            (await stranger.PostAsync(address, [new("__RequestVerificationToken", token)])).StatusCode,
            (await log.Guardian.PostAsync(address, [new("__RequestVerificationToken", await log.Guardian.TokenAsync())])).StatusCode,
        };
        foreach (var method in new[] { HttpMethod.Put, HttpMethod.Delete, HttpMethod.Patch })
            statuses.Add((await stranger.SendAsync(new HttpRequestMessage(method, address))).StatusCode);
        Assert.All(statuses, s => Assert.Contains(s, new[] { HttpStatusCode.BadRequest, HttpStatusCode.NotFound, HttpStatusCode.MethodNotAllowed }));
        Assert.Equal(HttpStatusCode.OK, (await stranger.SendAsync(new HttpRequestMessage(HttpMethod.Head, address))).StatusCode);
        Assert.Equal(before, await log.Family.RowsAsync());
    }

    [Fact]
    public async Task Get_no_address_without_the_pages_own_token()
    {
        var log = await NewYorkAsync();
        foreach (var handler in new[] { "Make", "End" })
            Assert.Equal(HttpStatusCode.BadRequest, (await log.Guardian.PostAsync($"/records/calendar?handler={handler}", [new("withNames", "true")])).StatusCode);
        Assert.Equal(0, await log.Family.FromDbAsync(db => db.CalendarAddresses.CountAsync()));
    }

    [Theory]
    [InlineData("")]
    [InlineData("perhaps")]
    [InlineData("<script>")]
    public async Task Name_nobody_where_the_choice_is_not_understood(string choice)
    {
        var log = await NewYorkAsync();
        var answer = await log.Guardian.SubmitAsync(await log.Guardian.GetAsync("/records/calendar"), new() { ["withNames"] = choice }, "form[action*='handler=Make']");
        Assert.Equal(HttpStatusCode.OK, answer.StatusCode);
        Assert.False(await log.Family.FromDbAsync(db => db.CalendarAddresses.Select(a => a.WithNames).SingleAsync()));
    }

    private async Task<KeptLog> NewYorkAsync()
    {
        var log = await KeptLog.OfAsync(server, "Linnet").StandsAsync("US-NY", "home-instruction");
        await log.GradeAsync(4);
        return log;
    }

    private static async Task<string> MakeAsync(KeptLog log, bool withNames = false)
    {
        var page = await log.Guardian.GetAsync("/records/calendar");
        var answer = await log.Guardian.SubmitAsync(page, new() { ["withNames"] = withNames ? "true" : "false" }, "form[action*='handler=Make']");
        Assert.Equal(HttpStatusCode.OK, answer.StatusCode);
        return ((IHtmlInputElement)(await Visitor.ParseAsync(answer)).QuerySelector("#link")!).Value;
    }

    private static string SecretOf(string address) => address[(address.LastIndexOf('/') + 1)..^".ics".Length];

    private async Task<HttpStatusCode> StatusAsync(string address) => (await server.Visitor().OpenAsync(address)).StatusCode;

    private async Task<string> TextAsync(string address) => Unfolded(await (await server.Visitor().OpenAsync(address)).Content.ReadAsStringAsync());

    private static async Task<Dictionary<string, string>> EventsAsync(HttpResponseMessage answer) =>
        Unfolded(await answer.Content.ReadAsStringAsync()).Split("BEGIN:VEVENT").Skip(1)
            .ToDictionary(e => Titles().Match(e).Groups[1].Value.Replace("\\,", ",", StringComparison.Ordinal).Replace("\\;", ";", StringComparison.Ordinal), e => Starts().Match(e).Groups[1].Value);

    private static string Unfolded(string text) => text.Replace("\r\n ", "", StringComparison.Ordinal);

    [GeneratedRegex("\nSUMMARY:(.*?)\r")]
    private static partial Regex Titles();

    [GeneratedRegex("\nDTSTART;VALUE=DATE:([0-9]{8})\r")]
    private static partial Regex Starts();

    [GeneratedRegex("\nUID:(.*?)\r")]
    private static partial Regex Uids();
}
