using System.Net;
using System.Text.RegularExpressions;
using AngleSharp.Html.Dom;
using CoopLessons.Web.Tests.App;

namespace CoopLessons.Web.Tests.Records;

/// <summary>
/// Four hours on each of the 138 weekdays from 1 September to 11 March, and 79 weekdays to come: 552 hours, leading to
/// 868. Missouri asks 1,000 hours (RSMo § 167.012.2(2)); Kansas a term like the public schools' and no number
/// (K.S.A. 72-3120(a)(2)); Pennsylvania 180 days or 900 hours (24 P.S. § 13-1327.1(c)); New York 180
/// days and 900 hours (8 NYCRR § 100.10(f)); Georgia 180 days of four and a half hours (O.C.G.A. § 20-2-690(c)).
/// </summary>
[Collection(SharedServer.Name)]
public sealed partial class The_same_log_read_otherwise(TestServer server)
{
    private const string Four = "&Input.Under=US-KS/naps&Input.Under=US-PA/home-education&Input.Under=US-NY/home-instruction&Input.Under=US-GA/home-study";

    [Fact]
    public async Task Has_a_verdict_of_its_own_under_each_pathway_side_by_side()
    {
        var log = await MissouriAsync();
        var page = await log.Guardian.GetAsync(log.WhatIfPath(Four));
        var columns = page.QuerySelectorAll(".variants > section");

        Assert.Equal(["As it is", "Kansas", "Pennsylvania", "New York", "Georgia"], columns.Select(c => c.QuerySelector("h2")!.Plain().Split(',')[0]));
        Assert.Equal(["behind", "for you to judge", "on pace", "behind", "behind"], columns.Select(c => c.QuerySelector(".state")!.Plain()));
        Assert.Contains("552 of 1,000 hours", columns[0].Plain(), StringComparison.Ordinal);
        Assert.Contains("138 of 180 days, on pace", columns[2].Plain(), StringComparison.Ordinal);
        Assert.Contains("552 of 900 hours", columns[3].Plain(), StringComparison.Ordinal);
        Assert.Contains("0 of 180 days of at least 4:30 hours, behind: the last weeks lead to about 0; 180 days are missing, and 79 teaching days are left", columns[4].Plain(), StringComparison.Ordinal);
        foreach (var (column, source) in columns.Zip(["RSMo § 167.012.2(2)", "K.S.A. 72-31", "24 P.S. § 13-1327.1", "8 NYCRR § 100.10(", "O.C.G.A. § 20-2-690(c)"]))
            Assert.All(column.QuerySelectorAll("dd"), d => Assert.Contains(source, d.Plain(), StringComparison.Ordinal));
    }

    [Fact]
    public async Task Has_fewer_days_left_when_the_family_is_away()
    {
        var log = await MissouriAsync();
        // Two weeks from Monday, 6 April, to Friday, 17 April 2026: ten weekdays.
        var page = await log.Guardian.GetAsync(log.WhatIfPath("&Input.AwayFrom=2026-04-06&Input.AwayTo=2026-04-17"));
        var columns = page.QuerySelectorAll(".variants > section");
        Assert.Equal(["As it is", "away 6 April 2026 to 17 April 2026"], columns.Select(c => c.QuerySelector("h2")!.Plain()));
        Assert.Equal(["79", "69"], columns.Select(c => DaysLeft().Match(c.Plain()).Groups[1].Value));
    }

    [Fact]
    public async Task Falls_into_two_parts_by_a_move()
    {
        var log = await MissouriAsync();
        var page = await log.Guardian.GetAsync(log.WhatIfPath("&Input.Under=US-KS/naps&Input.Since=2026-02-01"));
        var columns = page.QuerySelectorAll(".variants > section");
        Assert.Equal(2, columns.Length);
        Assert.Equal("Kansas, Non-accredited private school, from 1 February 2026", columns[1].QuerySelector("h2")!.Plain());
        Assert.Equal(["Missouri · Home school", "Kansas · Non-accredited private school"], columns[1].Texts("h3"));
        Assert.Contains("this pathway ended on 31 January 2026", columns[1].Plain(), StringComparison.Ordinal);
    }

    [Fact]
    public async Task Is_saved_nowhere()
    {
        var log = await MissouriAsync();
        var before = await log.Family.RowsAsync();
        await log.Guardian.GetAsync(log.WhatIfPath(Four + "&Input.Since=2026-02-01&Input.AwayFrom=2026-04-06&Input.AwayTo=2026-04-17"));
        Assert.Equal(before, await log.Family.RowsAsync());
        Assert.Equal("552 of 1,000 hours", (await log.Guardian.GetAsync(log.StandingPath())).QuerySelector("main .row-side .num")!.Plain());
    }

    [Fact]
    public async Task Keeps_what_was_chosen_in_the_form_and_shows_nothing_before_anything_is()
    {
        var log = await MissouriAsync();
        var page = await log.Guardian.GetAsync(log.WhatIfPath(Four + "&Input.Since=2026-02-01&Input.AwayFrom=2026-04-06&Input.AwayTo=2026-04-17"));
        Assert.Equal(["US-KS/naps", "US-PA/home-education", "US-NY/home-instruction", "US-GA/home-study"], page.QuerySelectorAll("main select").Cast<IHtmlSelectElement>().Select(s => s.Value));
        Assert.Equal(["2026-04-06", "2026-04-17", "2026-02-01"], page.QuerySelectorAll("main input[type=date]").Select(i => i.GetAttribute("value")));
        Assert.Empty((await log.Guardian.GetAsync(log.WhatIfPath())).QuerySelectorAll(".variants"));
        Assert.Empty((await log.Guardian.GetAsync(log.WhatIfPath("&Input.Under=&Input.Under=&Input.Since=&Input.AwayFrom=&Input.AwayTo="))).QuerySelectorAll(".variants, .field-validation-error"));
    }

    [Fact]
    public async Task Can_be_asked_for_a_learner_without_a_pathway()
    {
        var log = await KeptLog.OfAsync(server, "Linnet");
        var columns = (await log.Guardian.GetAsync(log.WhatIfPath("&Input.Under=US-GA/home-study"))).QuerySelectorAll(".variants > section");
        Assert.Contains("No pathway chosen.", columns[0].Plain(), StringComparison.Ordinal);
        Assert.Contains("0 of 180 days", columns[1].Plain(), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("&Input.Under=US-ZZ/nowhere", "Input.Under")]
    [InlineData("&Input.Under=<script>", "Input.Under")]
    [InlineData("&Input.Under=US-MO/home-school" + Four, "Input.Under")]
    [InlineData("&Input.Since=2026-02-01", "Input.Under")]
    [InlineData("&Input.AwayFrom=2026-04-06", "Input.AwayTo")]
    [InlineData("&Input.AwayTo=2026-04-06", "Input.AwayFrom")]
    [InlineData("&Input.AwayFrom=2026-04-17&Input.AwayTo=2026-04-06", "Input.AwayTo")]
    [InlineData("&Input.AwayFrom=2027-04-06&Input.AwayTo=2027-04-17", "Input.AwayFrom")]
    [InlineData("&Input.AwayFrom=0001-01-01&Input.AwayTo=9999-12-31", "Input.AwayFrom")]
    [InlineData("&Input.Under=US-KS/naps&Input.Since=2027-02-01", "Input.Since")]
    [InlineData("&Input.Under=US-KS/naps&Input.Since=2026-13-40", "Input.Since")]
    [InlineData("&Input.AwayFrom=2026-13-40&Input.AwayTo=2026-04-17", "Input.AwayFrom")]
    [InlineData("&Input.AwayFrom=2026-04-06&Input.AwayTo=soon", "Input.AwayTo")]
    [InlineData("&Input.AwayFrom=2026-13-40", "Input.AwayFrom")]
    public async Task Is_not_shown_for_what_makes_no_sense_and_the_message_stands_beside_its_field(string more, string field)
    {
        var log = await MissouriAsync();
        var answer = await log.Guardian.OpenAsync(log.WhatIfPath(more));
        Assert.Equal(HttpStatusCode.UnprocessableEntity, answer.StatusCode);
        var page = await Visitor.ParseAsync(answer);
        Assert.Empty(page.QuerySelectorAll(".variants"));
        Assert.NotEqual("", page.QuerySelector($".field-validation-error[data-valmsg-for='{field}']")?.Plain() ?? "");
        Assert.Empty(page.QuerySelectorAll("main script"));
    }

    [Fact]
    public async Task Keeps_a_day_that_was_not_understood_as_it_was_typed()
    {
        var log = await MissouriAsync();
        var page = await Visitor.ParseAsync(await log.Guardian.OpenAsync(log.WhatIfPath("&Input.Under=US-KS/naps&Input.Since=2026-13-40")));
        Assert.Equal("2026-13-40", page.QuerySelector("main input[name='Input.Since']")!.GetAttribute("value"));
        Assert.Equal("US-KS/naps", ((IHtmlSelectElement)page.QuerySelector("main select")!).Value);
    }

    [Fact]
    public async Task Is_not_shown_for_ten_thousand_characters()
    {
        var log = await MissouriAsync();
        foreach (var field in new[] { "Input.Under", "Input.Since", "Input.AwayFrom" })
        {
            var answer = await log.Guardian.OpenAsync(log.WhatIfPath($"&{field}={new string('7', 10_000)}"));
            Assert.True(answer.StatusCode == HttpStatusCode.UnprocessableEntity, $"{field}: {answer.StatusCode}");
        }
    }

    private async Task<KeptLog> MissouriAsync()
    {
        var log = await KeptLog.OfAsync(server, "Linnet").StandsAsync("US-MO", "home-school");
        await log.GradeAsync(4);
        await log.FillWeekdaysAsync(new(2025, 9, 1), new(2026, 3, 11), _ => 240);
        return log;
    }

    [GeneratedRegex("each of the ([0-9]+) teaching days left")]
    private static partial Regex DaysLeft();
}
