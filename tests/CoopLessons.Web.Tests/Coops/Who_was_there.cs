using System.Net;
using CoopLessons.Core.Hours;
using CoopLessons.Data.Log;
using CoopLessons.Web.Pages.Coops;
using CoopLessons.Web.Phone;
using CoopLessons.Web.Tests.App;
using Microsoft.EntityFrameworkCore;

namespace CoopLessons.Web.Tests.Coops;

/// <summary>Attendance taken by whoever teaches, and what it becomes in each family's log: nothing without a parent's word.</summary>
[Collection(SharedServer.Name)]
public sealed class Who_was_there(TestServer server)
{
    [Fact]
    public async Task Becomes_a_proposal_in_each_family_and_an_entry_once_by_a_parents_word()
    {
        var (days, bread, wren, linnet) = await BakingAsync();
        await TakeAsync(days, wren);
        Assert.Contains("Nothing waits for your word.", await days.ReadAsync(days.Birch, "/been"), StringComparison.Ordinal);
        var page = await days.Cedar.Guardian.GetAsync(days.Home + "/been");
        var said = ClassDaysOfTest.Words(page);
        Assert.Contains("Bread Thursday 12 March · 50 min", said, StringComparison.Ordinal);
        Assert.Contains("None of your subjects is called “Baking”", said, StringComparison.Ordinal);
        Assert.Contains("Counts as: Science", said, StringComparison.Ordinal);
        Assert.DoesNotContain("Linnet", said, StringComparison.Ordinal);
        Assert.Empty(await EntriesAsync(days.Cedar));

        for (var i = 0; i < 2; i++)
        {
            using var logged = await days.Cedar.Guardian.SubmitAsync(page);
            Assert.Equal(HttpStatusCode.Redirect, logged.StatusCode);
        }

        var entry = Assert.Single(await EntriesAsync(days.Cedar));
        Assert.Equal(("Bread", Place.Coop, TestServer.Today), (entry.What, entry.Place, entry.Date));
        Assert.Equal((wren, 50), (Assert.Single(entry.Times).LearnerId, entry.Times[0].Minutes.Value));
        Assert.Equal("Science", await days.Cedar.FromDbAsync(db => db.Subjects.Where(s => s.Id == entry.Split[0].SubjectId).Select(s => s.Name).SingleAsync()));
        Assert.Contains("in the log", await days.ReadAsync(days.Cedar, "/been"), StringComparison.Ordinal);
        Assert.DoesNotContain("Log it", await days.ReadAsync(days.Cedar, "/been"), StringComparison.Ordinal);
        Assert.NotEqual(wren, linnet);
        Assert.NotEmpty(bread);
    }

    [Fact]
    public async Task Is_changed_or_declined_as_the_parent_says()
    {
        var (days, _, wren, linnet) = await BakingAsync();
        await TakeAsync(days, wren, linnet);
        await days.SendAsync(days.Cedar, "/been", new() { ["Input.Minutes"] = "35" });
        Assert.Equal(35, Assert.Single(await EntriesAsync(days.Cedar)).Times[0].Minutes.Value);

        var page = await days.Birch.Guardian.GetAsync(days.Home + "/been");
        using var odd = await days.Birch.Guardian.SubmitAsync(page, new() { ["Input.Minutes"] = "0" });
        Assert.Equal(HttpStatusCode.UnprocessableEntity, odd.StatusCode);
        Assert.Contains("Give whole minutes from 1 to 1440.", await ClassDaysOfTest.WordsAsync(odd), StringComparison.Ordinal);
        var fields = Visitor.FieldsOf(page.QuerySelector("main form")!).ToList();
        using var declined = await days.Birch.Guardian.PostAsync(days.Home + "/been?handler=Decline", fields);
        Assert.Equal(HttpStatusCode.Redirect, declined.StatusCode);
        Assert.Empty(await EntriesAsync(days.Birch));
        var said = await days.ReadAsync(days.Birch, "/been");
        Assert.Contains("not for the log", said, StringComparison.Ordinal);
        Assert.Contains("Nothing waits for your word.", said, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Is_taken_once_by_what_a_phone_kept_and_the_last_that_was_taken_holds()
    {
        var (days, _, wren, linnet) = await BakingAsync();
        var day = await days.DayAsync();
        var page = await days.Alder.Guardian.GetAsync(days.Home + day + "/attendance");
        var item = Guid.CreateVersion7();
        var fields = Visitor.FieldsOf(page.QuerySelector("main form")!).Where(f => f.Key != "Input.NewId")
            .Append(new("Input.NewId", item.ToString())).Append(new("Input.There", wren.ToString())).ToList();
        for (var i = 0; i < 2; i++)
        {
            using var request = new HttpRequestMessage(HttpMethod.Post, days.Home + day + "/attendance?handler=Take") { Content = new FormUrlEncodedContent(fields) };
            request.Headers.Add(KeptItem.Header, item.ToString());
            using var kept = await days.Alder.Guardian.SendAsync(request);
            Assert.Contains("\"saved\":true", await kept.Content.ReadAsStringAsync(), StringComparison.Ordinal);
        }

        Assert.Contains("1 there, 1 away; taken by Alder", await days.ReadAsync(days.Alder, day + "/attendance"), StringComparison.Ordinal);
        await TakeAsync(days, wren, linnet);
        Assert.Contains("2 there, 0 away", await days.ReadAsync(days.Alder, day + "/attendance"), StringComparison.Ordinal);
    }

    [Fact]
    public async Task Is_taken_by_who_teaches_on_the_day_and_a_day_with_it_stays()
    {
        var (days, _, wren, _) = await BakingAsync();
        using var member = await days.Cedar.Guardian.OpenAsync(days.Home + await days.DayAsync() + "/attendance");
        Assert.Equal(HttpStatusCode.Forbidden, member.StatusCode);
        var later = (await days.Alder.Guardian.GetAsync(days.Home + "/days")).QuerySelectorAll("main .rows a.row-link")[1].GetAttribute("href")![days.Home.Length..];
        using var early = await days.TryAsync(days.Alder, later + "/attendance", []);
        Assert.Equal(HttpStatusCode.UnprocessableEntity, early.StatusCode);
        Assert.Contains("This is taken on the day, Thursday 19 March, or after it.", await ClassDaysOfTest.WordsAsync(early), StringComparison.Ordinal);

        var day = await days.DayAsync();
        await TakeAsync(days, wren);
        using var stays = await days.TryAsync(days.Alder, day, [], "form[action*=Remove] button");
        Assert.Equal(HttpStatusCode.UnprocessableEntity, stays.StatusCode);
        using var goes = await days.TryAsync(days.Alder, later, [], "form[action*=Remove] button");
        Assert.Equal(HttpStatusCode.Redirect, goes.StatusCode);
    }

    [Fact]
    public async Task Stays_as_a_number_when_a_family_leaves_which_keeps_its_own_log()
    {
        var (days, _, wren, linnet) = await BakingAsync();
        await TakeAsync(days, wren, linnet);
        await days.SendAsync(days.Cedar, "/been", []);
        using var left = await days.Cedar.Guardian.PostAsync(days.Home + "?handler=Leave", [new("__RequestVerificationToken", await days.Cedar.Guardian.TokenAsync())]);
        Assert.Equal(HttpStatusCode.Redirect, left.StatusCode);
        var seen = await days.ReadAsync(days.Alder, await days.DayAsync() + "/attendance");
        Assert.Contains("2 there, 0 away", seen, StringComparison.Ordinal);
        Assert.DoesNotContain("Wren", seen, StringComparison.Ordinal);
        Assert.Single(await EntriesAsync(days.Cedar));
    }

    [Fact]
    public async Task Is_kept_on_the_phone_of_who_teaches_for_its_day()
    {
        var (days, _, _, _) = await BakingAsync();
        async Task<string> PagesAsync(TestFamily family) => await (await family.Guardian.OpenAsync("/phone/pages")).Content.ReadAsStringAsync();
        var path = days.Home + await days.DayAsync() + "/attendance";
        Assert.Contains(path, await PagesAsync(days.Alder), StringComparison.Ordinal);
        Assert.DoesNotContain("/attendance", await PagesAsync(days.Cedar), StringComparison.Ordinal);
    }

    private async Task<(ClassDaysOfTest Days, string Bread, Guid Wren, Guid Linnet)> BakingAsync()
    {
        var days = await ClassDaysOfTest.MakeAsync(server);
        await days.AdultAsync(days.Alder, "Iris");
        await days.AdultAsync(days.Birch, "Olive");
        await days.SendAsync(days.Alder, "/days", new() { ["Input.On"] = "2026-03-12" });
        var bread = await days.ClassAsync("Bread", "the kitchen", new() { ["Iris Alder"] = ClassForm.Teaches, ["Olive Birch"] = ClassForm.Helps }, new() { ["Input.Subjects"] = "science\nBaking" });
        var (wren, linnet) = (await days.ChildAsync(days.Cedar, "Wren", new(2018, 2, 1)), await days.ChildAsync(days.Birch, "Linnet", new(2018, 5, 1)));
        await days.SignUpAsync(days.Cedar, bread, wren);
        await days.SignUpAsync(days.Birch, bread, linnet);
        return (days, bread, wren, linnet);
    }

    private static async Task TakeAsync(ClassDaysOfTest days, params Guid[] there)
    {
        var page = await days.Alder.Guardian.GetAsync(days.Home + await days.DayAsync() + "/attendance");
        var fields = Visitor.FieldsOf(page.QuerySelector("main form")!).Where(f => f.Key != "Input.There").Concat(there.Select(t => new KeyValuePair<string, string>("Input.There", t.ToString())));
        using var taken = await days.Alder.Guardian.PostAsync(page.QuerySelector("main form")!.GetAttribute("action")!, fields);
        Assert.Equal(HttpStatusCode.Redirect, taken.StatusCode);
    }

    private static Task<List<EntryFacts>> EntriesAsync(TestFamily family) =>
        family.FromDbAsync(async db => (await db.LogRevisions.Include(r => r.Times).Include(r => r.Subjects).AsNoTracking().ToListAsync()).Select(r => r.Facts).ToList());
}
