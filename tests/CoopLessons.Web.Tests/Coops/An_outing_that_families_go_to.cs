using System.Net;
using CoopLessons.Core.Families;
using CoopLessons.Web.Tests.App;

namespace CoopLessons.Web.Tests.Coops;

/// <summary>Who comes, what it costs, how many adults it needs, and the card for the day.</summary>
[Collection(SharedServer.Name)]
public sealed class An_outing_that_families_go_to(TestServer server)
{
    [Fact]
    public async Task Counts_heads_adults_and_money_and_asks_for_a_second_family()
    {
        var (days, outing) = await MakeAsync("2026-03-26");
        var wren = await days.ChildAsync(days.Cedar, "Wren", new(2018, 2, 1));
        await days.AdultAsync(days.Cedar, "Hazel");
        await ComeAsync(days, days.Cedar, outing);
        var seen = await days.ReadAsync(days.Alder, outing);
        Assert.Contains("1 child and 1 adult", seen, StringComparison.Ordinal);
        var facts = (await days.Alder.Guardian.GetAsync(days.Home + outing)).QuerySelectorAll("main dd").Select(d => d.TextContent).ToList();
        Assert.Contains("2", facts);
        Assert.Contains("Monday 23 March; later it is paid for all the same", facts);
        Assert.Contains("Hazel Cedar is the only adult", seen, StringComparison.Ordinal);
        Assert.Contains("Wren and Hazel 12.50", seen, StringComparison.Ordinal);

        await days.ChildAsync(days.Birch, "Linnet", new(2018, 5, 1));
        await days.AdultAsync(days.Birch, "Olive");
        await ComeAsync(days, days.Birch, outing);
        seen = await days.ReadAsync(days.Alder, outing);
        Assert.Contains("2 children and 2 adults", seen, StringComparison.Ordinal);
        Assert.DoesNotContain("Not yet covered", seen, StringComparison.Ordinal);
        Assert.Contains("In all 25.00.", seen, StringComparison.Ordinal);
        Assert.NotEqual(Guid.Empty, wren);
    }

    [Fact]
    public async Task Costs_nothing_until_its_day_for_saying_no_and_the_whole_after_it()
    {
        var (days, early) = await MakeAsync("2026-03-26");
        var late = await AddAsync(days, "2026-03-13");
        await days.ChildAsync(days.Cedar, "Wren", new(2018, 2, 1));
        foreach (var (outing, due) in new[] { (early, "In all 0.00."), (late, "In all 5.00.") })
        {
            await ComeAsync(days, days.Cedar, outing);
            await days.SendAsync(days.Cedar, outing, [], "form[action*=Cancel] button");
            var seen = await days.ReadAsync(days.Alder, outing);
            Assert.Contains(due, seen, StringComparison.Ordinal);
            Assert.Contains("0 children and 0 adults", seen, StringComparison.Ordinal);
        }
    }

    [Fact]
    public async Task Has_a_card_that_names_allergies_to_those_who_need_to_know()
    {
        var (days, outing) = await MakeAsync("2026-03-13");
        await days.ChildAsync(days.Cedar, "Wren", new(2018, 2, 1), Allergen.Wheat);
        await days.AdultAsync(days.Birch, "Olive");
        await days.SendAsync(days.Birch, "/shown", new() { ["Input.Contact"] = "Olive", ["Input.Telephone"] = "555 0142" });
        await ComeAsync(days, days.Cedar, outing);
        await ComeAsync(days, days.Birch, outing);
        var (comes, home) = (await days.ReadAsync(days.Birch, outing + "/card"), await days.ReadAsync(days.Alder, outing + "/card"));
        Assert.Contains("Wren, 8 wheat", comes, StringComparison.Ordinal);
        Assert.Contains("555 0142", comes, StringComparison.Ordinal);
        Assert.Contains("9:00 at the mill house", comes, StringComparison.Ordinal);
        Assert.Contains("Stay at home with a fever", comes, StringComparison.Ordinal);
        Assert.DoesNotContain("wheat", home, StringComparison.Ordinal);
        Assert.Contains("Somebody who comes has an allergy.", home, StringComparison.Ordinal);
        using var pages = await days.Birch.Guardian.OpenAsync("/phone/pages");
        Assert.Contains(days.Home + outing + "/card", await pages.Content.ReadAsStringAsync(), StringComparison.Ordinal);
    }

    [Fact]
    public async Task Takes_only_a_familys_own_and_lets_a_family_that_leaves_go()
    {
        var (days, outing) = await MakeAsync("2026-03-26");
        var wren = await days.ChildAsync(days.Cedar, "Wren", new(2018, 2, 1));
        await days.ChildAsync(days.Birch, "Linnet", new(2018, 5, 1));
        using var foreign = await days.TryAsync(days.Birch, outing, [], "#answer form", [new("Input.Children", wren.ToString())]);
        Assert.Equal(HttpStatusCode.NotFound, foreign.StatusCode);
        using var nobody = await days.TryAsync(days.Birch, outing, [], "#answer form");
        Assert.Equal(HttpStatusCode.UnprocessableEntity, nobody.StatusCode);
        await ComeAsync(days, days.Cedar, outing);
        using var left = await days.Cedar.Guardian.PostAsync(days.Home + "?handler=Leave", [new("__RequestVerificationToken", await days.Cedar.Guardian.TokenAsync())]);
        Assert.Equal(HttpStatusCode.Redirect, left.StatusCode);
        Assert.Contains("0 children and 0 adults", await days.ReadAsync(days.Alder, outing), StringComparison.Ordinal);
    }

    [Fact]
    public async Task Is_added_by_who_teaches_with_messages_beside_what_cannot_be()
    {
        var (days, outing) = await MakeAsync("2026-03-26");
        using var member = await days.Cedar.Guardian.OpenAsync(days.Home + outing + "/edit");
        Assert.Equal(HttpStatusCode.Forbidden, member.StatusCode);
        using var odd = await days.TryAsync(days.Alder, outing + "/edit", new() { ["Input.Child"] = "four", ["Input.Back"] = "08:00", ["Input.On"] = "2020-01-01" });
        Assert.Equal(HttpStatusCode.UnprocessableEntity, odd.StatusCode);
        var said = await ClassDaysOfTest.WordsAsync(odd);
        Assert.Contains("Give an amount such as 4.50", said, StringComparison.Ordinal);
        Assert.Contains("It is over after it begins.", said, StringComparison.Ordinal);
        Assert.Contains("Choose a day that is still to come.", said, StringComparison.Ordinal);
    }

    private async Task<(ClassDaysOfTest Days, string Outing)> MakeAsync(string day)
    {
        var days = await ClassDaysOfTest.MakeAsync(server);
        return (days, await AddAsync(days, day));
    }

    private static async Task<string> AddAsync(ClassDaysOfTest days, string day) => (await days.SendAsync(days.Alder, "/outings/new", new()
    {
        ["Input.Name"] = "The glass works",
        ["Input.Where"] = "the glass works below the weir",
        ["Input.On"] = day,
        ["Input.From"] = "09:00",
        ["Input.Back"] = "12:00",
        ["Input.MeetAt"] = "the mill house",
        ["Input.Child"] = "5",
        ["Input.Adult"] = "7.50",
    }))[days.Home.Length..];

    /// <summary>Everybody of the family comes.</summary>
    private static async Task ComeAsync(ClassDaysOfTest days, TestFamily family, string outing)
    {
        var page = await family.Guardian.GetAsync(days.Home + outing);
        var all = page.QuerySelectorAll("#answer input[type=checkbox]").Select(b => new KeyValuePair<string, string>(b.GetAttribute("name")!, b.GetAttribute("value")!));
        using var come = await family.Guardian.SubmitAsync(page, [], "#answer form", more: all);
        Assert.Equal(HttpStatusCode.Redirect, come.StatusCode);
    }
}
