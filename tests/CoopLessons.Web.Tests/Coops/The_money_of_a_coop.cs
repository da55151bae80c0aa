using System.Net;
using CoopLessons.Data.Coops.Days;
using CoopLessons.Data.Coops.Money;
using CoopLessons.Web.Tests.App;
using CoopLessons.Web.Tests.Evidence;
using Microsoft.EntityFrameworkCore;

namespace CoopLessons.Web.Tests.Coops;

/// <summary>What is bought for all, who bears it, who pays whom.</summary>
[Collection(SharedServer.Name)]
public sealed class The_money_of_a_coop(TestServer server)
{
    // Derived: 4137 cents over 7 children are 591 each, so 1182, 1182, 1182 and 591.
    [Fact]
    public async Task Divides_a_cost_over_seven_children_of_four_families_to_the_cent_and_settles_it_with_three_payments()
    {
        var (coop, families) = await FourAsync();
        var address = await BuyAsync(coop, families[1], "41.37", [2, 2, 2, 1]);
        var expense = await ExpenseAsync(coop);
        Assert.Equal(4137, expense.Shares.Sum(s => s.Cents));
        Assert.Equal([("Alder", 1182), ("Birch", 1182), ("Cedar", 1182), ("Dogwood", 591)], expense.Shares.Select(s => (s.Family, s.Cents)));
        Assert.Contains("$41.37 divided over 7 children of 4 families", Text(await families[3].Guardian.GetAsync(address)), StringComparison.Ordinal);

        var money = Text(await families[3].Guardian.GetAsync(coop.Home + "/money"));
        Assert.Contains("3 payments make all even; fewer do not.", money, StringComparison.Ordinal);
        Assert.Contains("Dogwood pays Birch $5.91", money, StringComparison.Ordinal);
        Assert.Contains("Birch is owed $29.55", money, StringComparison.Ordinal);
        Assert.Contains("Nothing is charged here, and nothing leaves this server.", money, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Counts_a_payment_once_it_is_said_that_it_came_and_each_form_once()
    {
        var (coop, families) = await FourAsync();
        await BuyAsync(coop, families[1], "41.37", [2, 2, 2, 1]);
        var page = await families[3].Guardian.GetAsync(coop.Home + "/money");
        for (var i = 0; i < 2; i++)
        {
            using var paid = await families[3].Guardian.SubmitAsync(page, within: "form[action*='Paid'] input");
            Assert.Equal(HttpStatusCode.Redirect, paid.StatusCode);
        }

        var said = await families[3].Guardian.GetAsync(coop.Home + "/money");
        Assert.Contains("Dogwood you owes $5.91", Text(said), StringComparison.Ordinal);
        Assert.Null(said.QuerySelector("form[action*='Came']"));
        var payment = await ReadAsync(coop, db => db.CoopPayments.SingleAsync(p => p.CoopId == coop.Id));
        using var notMine = await families[2].Guardian.PostAsync(coop.Home + "/money?handler=Came", [new("paymentId", payment.Id.ToString()), new("__RequestVerificationToken", await families[2].Guardian.TokenAsync())]);
        Assert.Equal(HttpStatusCode.Forbidden, notMine.StatusCode);
        using var came = await families[1].Guardian.SubmitAsync(await families[1].Guardian.GetAsync(coop.Home + "/money"), within: "form[action*='Came'] input");
        Assert.Equal(HttpStatusCode.Redirect, came.StatusCode);
        Assert.Contains("Dogwood you even", Text(await families[3].Guardian.GetAsync(coop.Home + "/money")), StringComparison.Ordinal);
        Assert.Contains("2 payments make all even", Text(await families[3].Guardian.GetAsync(coop.Home + "/money")), StringComparison.Ordinal);
    }

    [Fact]
    public async Task Keeps_what_is_struck_out_and_lets_only_who_paid_or_a_leader_strike_it()
    {
        var (coop, families) = await FourAsync();
        var address = await BuyAsync(coop, families[1], "10.00", [1, 1, 1, 1]);
        Assert.Null((await families[2].Guardian.GetAsync(address)).QuerySelector("form[action*='StrikeOut']"));
        using var refused = await families[2].Guardian.PostAsync(address + "?handler=StrikeOut", [new("why", "no"), new("__RequestVerificationToken", await families[2].Guardian.TokenAsync())]);
        Assert.Equal(HttpStatusCode.Forbidden, refused.StatusCode);
        using var silent = await families[1].Guardian.SubmitAsync(await families[1].Guardian.GetAsync(address));
        Assert.Equal(HttpStatusCode.UnprocessableEntity, silent.StatusCode);
        using var struck = await families[1].Guardian.SubmitAsync(await families[1].Guardian.GetAsync(address), new() { ["why"] = "The shop took it back" });
        Assert.Equal(HttpStatusCode.Redirect, struck.StatusCode);
        Assert.Contains("The shop took it back", Text(await families[2].Guardian.GetAsync(address)), StringComparison.Ordinal);
        Assert.Contains("All are even.", Text(await families[2].Guardian.GetAsync(coop.Home + "/money")), StringComparison.Ordinal);
    }

    [Fact]
    public async Task Shows_a_receipt_small_and_plain_to_the_families_of_the_coop_alone()
    {
        var (coop, families) = await FourAsync();
        var page = await families[1].Guardian.GetAsync(coop.Home + "/money/new");
        using var content = new MultipartFormDataContent { { new ByteArrayContent(SamplePhotos.Photo()), "receipt", "receipt.jpg" } };
        foreach (var (name, value) in Visitor.FieldsOf(page.QuerySelector("main form")!).Where(f => f.Key is not ("Input.What" or "Input.Cost" or "Input.By")).Append(new("Input.What", "Yeast")).Append(new("Input.Cost", "3")).Append(new("Input.By", "Family")))
            content.Add(new StringContent(value), name);
        using var bought = await families[1].Guardian.SendAsync(new HttpRequestMessage(HttpMethod.Post, coop.Home + "/money/new") { Content = content });
        Assert.Equal(HttpStatusCode.Redirect, bought.StatusCode);
        var address = bought.Headers.Location!.OriginalString;
        using var seen = await families[3].Guardian.OpenAsync(address + "/receipt");
        Assert.Equal("image/jpeg", seen.Content.Headers.ContentType!.MediaType);
        var bytes = await seen.Content.ReadAsByteArrayAsync();
        Assert.InRange(bytes.Length, 100, CoopReceipt.MostBytes);
        Assert.Equal(-1, bytes.AsSpan().IndexOf("Exif"u8));
        var stranger = await server.FamilyAsync("Elm");
        using var shut = await stranger.Guardian.OpenAsync(address + "/receipt");
        Assert.Equal(HttpStatusCode.NotFound, shut.StatusCode);
    }

    [Fact]
    public async Task Keeps_a_family_that_left_among_those_who_owe_until_it_is_said_to_have_paid()
    {
        var (coop, families) = await FourAsync();
        await BuyAsync(coop, families[1], "40", [1, 1, 1, 1]);
        using var left = await families[3].Guardian.PostAsync(coop.Home + "?handler=Leave", [new("__RequestVerificationToken", await families[3].Guardian.TokenAsync())]);
        Assert.Equal(HttpStatusCode.Redirect, left.StatusCode);
        var page = await families[1].Guardian.GetAsync(coop.Home + "/money");
        Assert.Contains("Dogwood left owes $10.00", Text(page), StringComparison.Ordinal);
        using var came = await families[1].Guardian.SubmitAsync(page, within: "form[action*='Received'] input");
        Assert.Equal(HttpStatusCode.Redirect, came.StatusCode);
        Assert.DoesNotContain("Dogwood left", Text(await families[1].Guardian.GetAsync(coop.Home + "/money")), StringComparison.Ordinal);
    }

    // Derived: 4 of 8 meetings are still to come after the fourth, so half of 20.00 + 2 × 5.00 = 30.00.
    [Fact]
    public async Task Figures_a_fee_for_each_family_and_gives_it_back_by_the_one_rule()
    {
        var (coop, families) = await FourAsync();
        await ReadAsync(coop, async db =>
        {
            for (var i = 0; i < 8; i++)
                db.CoopMeetings.Add(new CoopMeeting(coop.Id, Guid.CreateVersion7(), TestServer.Today.AddDays(7 * (i - 3)), "the mill house"));
            return await db.SaveChangesAsync();
        });
        var fill = new Dictionary<string, string?>
        {
            ["Input.Name"] = "Dues of the spring",
            ["Input.First"] = $"{TestServer.Today.AddDays(-21):yyyy-MM-dd}",
            ["Input.Last"] = $"{TestServer.Today.AddDays(40):yyyy-MM-dd}",
            ["Input.PerFamily"] = "20",
            ["Input.PerLearner"] = "5",
            ["Input.WholeBefore"] = $"{TestServer.Today.AddDays(-10):yyyy-MM-dd}",
            ["Input.Rows[1].Learners"] = "2",
        };
        using var set = await coop.Leader.Guardian.SubmitAsync(await coop.Leader.Guardian.GetAsync(coop.Home + "/money/fees"), fill);
        Assert.Equal(HttpStatusCode.Redirect, set.StatusCode);
        var address = set.Headers.Location!.OriginalString;
        Assert.Contains("Birch 2 children", Text(await families[1].Guardian.GetAsync(address)), StringComparison.Ordinal);
        Assert.Contains("Birch owes $30.00", Text(await coop.Leader.Guardian.GetAsync(coop.Home + "/money")), StringComparison.Ordinal);
        using var member = await families[1].Guardian.PostAsync(address + "?handler=GiveBack", [new("memberId", families[1].Id.ToString()), new("saidOn", "2026-03-12"), new("__RequestVerificationToken", await families[1].Guardian.TokenAsync())]);
        Assert.Equal(HttpStatusCode.Forbidden, member.StatusCode);
        using var back = await coop.Leader.Guardian.PostAsync(address + "?handler=GiveBack", [new("memberId", families[1].Id.ToString()), new("saidOn", "2026-03-12"), new("__RequestVerificationToken", await coop.Leader.Guardian.TokenAsync())]);
        Assert.Equal(HttpStatusCode.Redirect, back.StatusCode);
        Assert.Contains("4 meetings of 8 are still to come: 15.00 of 30.00 is given back.", Text(await families[1].Guardian.GetAsync(address)), StringComparison.Ordinal);
        Assert.Contains("Birch owes $15.00", Text(await coop.Leader.Guardian.GetAsync(coop.Home + "/money")), StringComparison.Ordinal);
    }

    [Fact]
    public async Task Says_beside_the_field_what_is_missing_and_lets_nobody_say_that_another_paid()
    {
        var (coop, families) = await FourAsync();
        var form = await families[1].Guardian.GetAsync(coop.Home + "/money/new");
        using var empty = await families[1].Guardian.SubmitAsync(form, new() { ["Input.What"] = "", ["Input.Cost"] = "1,50", ["Input.Rows[0].TakesPart"] = null, ["Input.Rows[1].TakesPart"] = null, ["Input.Rows[2].TakesPart"] = null, ["Input.Rows[3].TakesPart"] = null });
        Assert.Equal(HttpStatusCode.UnprocessableEntity, empty.StatusCode);
        var text = Text(await Visitor.ParseAsync(empty));
        foreach (var sentence in new[] { "Say what was bought.", "Write a price in dollars without a comma", "Choose at least one family that bears it." })
            Assert.Contains(sentence, text, StringComparison.Ordinal);
        using var other = await families[1].Guardian.SubmitAsync(form, new() { ["Input.What"] = "Flour", ["Input.Cost"] = "2", ["Input.PaidBy"] = families[2].Id.ToString() });
        Assert.Equal(HttpStatusCode.Forbidden, other.StatusCode);
    }

    private async Task<(CoopOfTest Coop, TestFamily[] Families)> FourAsync()
    {
        var coop = await CoopOfTest.FoundAsync(server);
        return (coop, [coop.Leader, await coop.JoinAsync("Birch"), await coop.JoinAsync("Cedar"), await coop.JoinAsync("Dogwood")]);
    }

    private static async Task<string> BuyAsync(CoopOfTest coop, TestFamily by, string cost, int[] learners)
    {
        var fill = new Dictionary<string, string?> { ["Input.What"] = "Flour and yeast", ["Input.Cost"] = cost };
        for (var i = 0; i < learners.Length; i++)
            fill[$"Input.Rows[{i}].Learners"] = $"{learners[i]}";
        var form = await by.Guardian.GetAsync(coop.Home + "/money/new");
        var address = "";
        for (var i = 0; i < 2; i++)
        {
            using var bought = await by.Guardian.SubmitAsync(form, fill);
            Assert.Equal(HttpStatusCode.Redirect, bought.StatusCode);
            address = bought.Headers.Location!.OriginalString;
        }

        return address;
    }

    private static Task<CoopExpense> ExpenseAsync(CoopOfTest coop) => ReadAsync(coop, db => db.CoopExpenses.SingleAsync(e => e.CoopId == coop.Id));

    private static Task<T> ReadAsync<T>(CoopOfTest coop, Func<CoopLessons.Data.AppDb, Task<T>> read) => coop.Server.FromDbAsync(coop.Leader.Id, db =>
    {
        db.Current.Enter(coop.Id);
        return read(db);
    });

    private static string Text(AngleSharp.Html.Dom.IHtmlDocument page) => string.Join(' ', page.QuerySelector("main")!.TextContent.Split((char[]?)null, StringSplitOptions.RemoveEmptyEntries));
}
