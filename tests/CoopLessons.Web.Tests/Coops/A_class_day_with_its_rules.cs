using System.Net;
using CoopLessons.Core.Families;
using CoopLessons.Web.Pages.Coops;
using CoopLessons.Web.Tests.App;

namespace CoopLessons.Web.Tests.Coops;

/// <summary>A couple alone in a room, a wheat allergy in the baking class, a class over its size, an age outside the span.</summary>
[Collection(SharedServer.Name)]
public sealed class A_class_day_with_its_rules(TestServer server)
{
    private static readonly Dictionary<string, string> TwoFamilies = new() { ["Iris Alder"] = ClassForm.Teaches, ["Olive Birch"] = ClassForm.Helps };

    [Fact]
    public async Task A_couple_alone_is_not_saved_but_as_not_yet_covered_and_the_room_does_not_open()
    {
        var days = await ClassDaysOfTest.MakeAsync(server);
        await days.AdultAsync(days.Alder, "Iris");
        await days.AdultAsync(days.Alder, "Basil");
        var couple = new Dictionary<string, string> { ["Iris Alder"] = "teaches", ["Basil Alder"] = "helps" };
        const string sentence = "Basil and Iris Alder are one household: a second adult of another family is needed in the barn.";
        using var refused = await days.TryClassAsync("Ropes", "the barn", couple);
        Assert.Equal(HttpStatusCode.UnprocessableEntity, refused.StatusCode);
        var said = await ClassDaysOfTest.WordsAsync(refused);
        Assert.True(said.Contains(sentence, StringComparison.Ordinal) || said.Contains(sentence.Replace("Basil and Iris", "Iris and Basil", StringComparison.Ordinal), StringComparison.Ordinal), said);
        Assert.DoesNotContain("Ropes", await days.ReadAsync(days.Alder, "/classes"), StringComparison.Ordinal);

        var ropes = await days.ClassAsync("Ropes", "the barn", couple, new() { ["Input.NotYetCovered"] = "true" });
        Assert.DoesNotContain("does not open", await days.ReadAsync(days.Birch, await days.DayAsync()), StringComparison.Ordinal);
        await days.SignUpAsync(days.Birch, ropes, await days.ChildAsync(days.Birch, "Linnet", new(2018, 5, 1)));
        var day = await days.ReadAsync(days.Birch, await days.DayAsync());
        Assert.Contains("The room does not open.", day, StringComparison.Ordinal);
        Assert.Contains("are one household: a second adult of another family is needed in the barn.", day, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_couple_over_two_families_counts_as_one_too()
    {
        var days = await ClassDaysOfTest.MakeAsync(server);
        await days.AdultAsync(days.Alder, "Iris");
        await days.AdultAsync(days.Birch, "Olive", livesWith: days.Alder);
        using var refused = await days.TryClassAsync("Ropes", "the barn", TwoFamilies);
        Assert.Equal(HttpStatusCode.UnprocessableEntity, refused.StatusCode);
        Assert.Contains("are one household: a second adult of another family is needed in the barn.", await ClassDaysOfTest.WordsAsync(refused), StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_wheat_allergy_stops_the_sign_up_until_something_would_do_instead()
    {
        var days = await BakingAsync();
        var (wren, linnet) = (await days.ChildAsync(days.Cedar, "Wren", new(2018, 2, 1), Allergen.Wheat), await days.ChildAsync(days.Birch, "Linnet", new(2018, 5, 1)));
        var bread = await BreadAsync(days);
        await days.SignUpAsync(days.Birch, bread, linnet);
        using var refused = await days.TrySignUpAsync(days.Cedar, bread, wren);
        Assert.Equal(HttpStatusCode.UnprocessableEntity, refused.StatusCode);
        Assert.Contains("Flour holds wheat, and Wren is allergic: leave it out in the kitchen at 10:00.", await ClassDaysOfTest.WordsAsync(refused), StringComparison.Ordinal);
        Assert.DoesNotContain("Wren Cedar", await days.ReadAsync(days.Cedar, bread), StringComparison.Ordinal);

        using var swapped = await days.TryClassAsync("Bread", "the kitchen", TwoFamilies, new() { ["Input.Uses[0].Swap"] = "oat flour" }, bread + "/edit");
        Assert.True(swapped.StatusCode == HttpStatusCode.Redirect, await ClassDaysOfTest.WordsAsync(swapped));
        await days.SignUpAsync(days.Cedar, bread, wren);
    }

    [Fact]
    public async Task Which_child_is_allergic_is_told_to_those_who_need_to_know()
    {
        var days = await BakingAsync();
        var dogwood = await days.Coop.JoinAsync("Dogwood");
        var bread = await BreadAsync(days, "oat flour");
        await days.SignUpAsync(days.Cedar, bread, await days.ChildAsync(days.Cedar, "Wren", new(2018, 2, 1), Allergen.Wheat));
        var day = await days.DayAsync();
        const string named = "Flour holds wheat, and Wren is allergic: use oat flour instead in the kitchen at 10:00.";
        foreach (var needs in new[] { days.Alder, days.Birch, days.Cedar })
        {
            Assert.Contains(named, await days.ReadAsync(needs, day), StringComparison.Ordinal);
            Assert.Contains(named, await days.ReadAsync(needs, bread), StringComparison.Ordinal);
        }

        foreach (var seen in new[] { await days.ReadAsync(dogwood, day), await days.ReadAsync(dogwood, bread) })
        {
            Assert.Contains("Flour is left out of the kitchen at 10:00; oat flour is used instead.", seen, StringComparison.Ordinal);
            Assert.DoesNotContain("allergic", seen, StringComparison.Ordinal);
        }

        Assert.DoesNotContain("Wren Cedar, 8 wheat", await days.ReadAsync(dogwood, bread), StringComparison.Ordinal);
    }

    [Fact]
    public async Task Flour_that_comes_into_a_class_with_such_a_child_is_asked_about()
    {
        var days = await BakingAsync();
        var bread = await days.ClassAsync("Bread", "the kitchen", TwoFamilies);
        await days.SignUpAsync(days.Cedar, bread, await days.ChildAsync(days.Cedar, "Wren", new(2018, 2, 1), Allergen.Wheat));
        using var refused = await days.TryClassAsync("Bread", "the kitchen", TwoFamilies, new() { ["Input.Uses[0].Name"] = "Flour" }, bread + "/edit", [new("Input.Uses[0].Allergens", "Wheat")]);
        Assert.Equal(HttpStatusCode.UnprocessableEntity, refused.StatusCode);
        Assert.Contains("Flour holds wheat, and Wren is allergic: leave it out in the kitchen at 10:00.", await ClassDaysOfTest.WordsAsync(refused), StringComparison.Ordinal);
    }

    [Fact]
    public async Task The_child_after_the_last_place_waits_and_comes_up_when_one_is_free()
    {
        var days = await BakingAsync();
        var bread = await days.ClassAsync("Bread", "the kitchen", TwoFamilies, new() { ["Input.Size"] = "1" });
        var (wren, linnet) = (await days.ChildAsync(days.Cedar, "Wren", new(2018, 2, 1)), await days.ChildAsync(days.Birch, "Linnet", new(2018, 5, 1)));
        await days.SignUpAsync(days.Cedar, bread, wren);
        await days.SignUpAsync(days.Birch, bread, linnet);
        var seen = await days.ReadAsync(days.Birch, bread);
        Assert.Contains("“Bread” has 1 place and all are taken: Linnet waits as number 1.", seen, StringComparison.Ordinal);
        Assert.Contains("Waiting 1 Linnet Birch", seen, StringComparison.Ordinal);

        await days.SendAsync(days.Cedar, bread, [], $"input[name=learnerId][value='{wren}']");
        seen = await days.ReadAsync(days.Birch, bread);
        Assert.DoesNotContain("Waiting", seen, StringComparison.Ordinal);
        Assert.Contains("Linnet Birch, 7", seen, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_class_that_was_made_smaller_says_that_it_is_over_its_size_and_takes_a_place_from_nobody()
    {
        var days = await BakingAsync();
        var bread = await days.ClassAsync("Bread", "the kitchen", TwoFamilies);
        await days.SignUpAsync(days.Cedar, bread, await days.ChildAsync(days.Cedar, "Wren", new(2018, 2, 1)), await days.ChildAsync(days.Cedar, "Robin", new(2018, 6, 1)));
        using var smaller = await days.TryClassAsync("Bread", "the kitchen", TwoFamilies, new() { ["Input.Size"] = "1" }, bread + "/edit");
        Assert.Equal(HttpStatusCode.Redirect, smaller.StatusCode);
        Assert.Contains("two children are in the kitchen at 10:00; a class has at most 1.", await days.ReadAsync(days.Cedar, await days.DayAsync()), StringComparison.Ordinal);
    }

    [Fact]
    public async Task An_age_outside_the_span_two_rooms_at_once_and_a_child_who_is_not_shown_are_refused()
    {
        var days = await BakingAsync();
        await days.AdultAsync(days.Cedar, "Hazel");
        await days.AdultAsync(days.Birch, "Reed");
        var bread = await days.ClassAsync("Bread", "the kitchen", TwoFamilies);
        var ropes = await days.ClassAsync("Ropes", "the barn", new() { ["Hazel Cedar"] = "teaches", ["Reed Birch"] = "helps" });
        var (wren, heron) = (await days.ChildAsync(days.Cedar, "Wren", new(2018, 2, 1)), await days.ChildAsync(days.Cedar, "Heron", new(2013, 2, 1)));
        using var old = await days.TrySignUpAsync(days.Cedar, bread, heron);
        Assert.Equal(HttpStatusCode.UnprocessableEntity, old.StatusCode);
        Assert.Contains("Heron is 13; “Bread” is for 6 to 9 years.", await ClassDaysOfTest.WordsAsync(old), StringComparison.Ordinal);

        await days.SignUpAsync(days.Cedar, bread, wren);
        using var twice = await days.TrySignUpAsync(days.Cedar, ropes, wren);
        Assert.Equal(HttpStatusCode.UnprocessableEntity, twice.StatusCode);
        Assert.Contains("at 10:00 at once.", await ClassDaysOfTest.WordsAsync(twice), StringComparison.Ordinal);

        var hidden = await CoopOfTest.ChildAsync(days.Cedar, "Robin", new(2018, 2, 1));
        Assert.Contains("Robin is not shown to the co-op.", await days.ReadAsync(days.Cedar, ropes), StringComparison.Ordinal);
        using var unseen = await days.TrySignUpAsync(days.Cedar, ropes, hidden);
        Assert.Equal(HttpStatusCode.UnprocessableEntity, unseen.StatusCode);
        await days.ChildAsync(days.Birch, "Linnet", new(2018, 5, 1));
        using var foreign = await days.TrySignUpAsync(days.Birch, ropes, wren);
        Assert.Equal(HttpStatusCode.NotFound, foreign.StatusCode);
    }

    [Fact]
    public async Task A_sign_up_sent_twice_counts_once_and_a_member_changes_no_class()
    {
        var days = await BakingAsync();
        var bread = await days.ClassAsync("Bread", "the kitchen", TwoFamilies);
        var wren = await days.ChildAsync(days.Cedar, "Wren", new(2018, 2, 1));
        var form = await days.Cedar.Guardian.GetAsync(days.Home + bread);
        for (var i = 0; i < 2; i++)
        {
            using var sent = await days.Cedar.Guardian.SubmitAsync(form, [], "#sign-up form", more: [new("Input.Children", wren.ToString())]);
            Assert.Equal(HttpStatusCode.Redirect, sent.StatusCode);
        }

        Assert.Contains("1 of 6 places", await days.ReadAsync(days.Cedar, bread), StringComparison.Ordinal);
        using var edit = await days.Cedar.Guardian.OpenAsync(days.Home + bread + "/edit");
        using var made = await days.Cedar.Guardian.OpenAsync(days.Home + "/classes/new");
        Assert.Equal((HttpStatusCode.Forbidden, HttpStatusCode.Forbidden), (Refusal(edit), Refusal(made)));
    }

    [Fact]
    public async Task Who_leaves_or_shows_a_child_no_longer_gives_its_places_back_and_nobody_else_loses_one()
    {
        var days = await BakingAsync();
        var bread = await days.ClassAsync("Bread", "the kitchen", TwoFamilies, new() { ["Input.Size"] = "1" });
        var (wren, linnet) = (await days.ChildAsync(days.Cedar, "Wren", new(2018, 2, 1)), await days.ChildAsync(days.Birch, "Linnet", new(2018, 5, 1)));
        await days.SignUpAsync(days.Cedar, bread, wren);
        await days.SignUpAsync(days.Birch, bread, linnet);
        using var left = await days.Cedar.Guardian.PostAsync(days.Home + "?handler=Leave", [new("__RequestVerificationToken", await days.Cedar.Guardian.TokenAsync())]);
        Assert.Equal(HttpStatusCode.Redirect, left.StatusCode);
        var seen = await days.ReadAsync(days.Birch, bread);
        Assert.Contains("Linnet Birch, 7", seen, StringComparison.Ordinal);
        Assert.DoesNotContain("Wren", seen, StringComparison.Ordinal);

        await days.SendAsync(days.Birch, "/shown", new() { ["Input.Learners[0].Name"] = null, ["Input.Learners[0].Age"] = null, ["Input.Learners[0].Allergies"] = null });
        Assert.Contains("0 of 1 place", await days.ReadAsync(days.Alder, bread), StringComparison.Ordinal);
        await days.SendAsync(days.Birch, "/shown", new() { ["Input.Learners[0].Name"] = "true", ["Input.Learners[0].Age"] = "true" });
        Assert.Contains("0 of 1 place", await days.ReadAsync(days.Alder, bread), StringComparison.Ordinal);
    }

    private static HttpStatusCode Refusal(HttpResponseMessage answer) => answer.StatusCode;

    private async Task<ClassDaysOfTest> BakingAsync()
    {
        var days = await ClassDaysOfTest.MakeAsync(server);
        await days.AdultAsync(days.Alder, "Iris");
        await days.AdultAsync(days.Birch, "Olive");
        return days;
    }

    private static Task<string> BreadAsync(ClassDaysOfTest days, string swap = "") =>
        days.ClassAsync("Bread", "the kitchen", TwoFamilies, new() { ["Input.Uses[0].Name"] = "Flour", ["Input.Uses[0].Swap"] = swap }, [new("Input.Uses[0].Allergens", "Wheat")]);
}
