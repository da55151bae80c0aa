using System.Net;
using CoopLessons.Core.Calendar;
using CoopLessons.Core.Hours;
using CoopLessons.Core.Requirements;
using CoopLessons.Web.Tests.App;
using Microsoft.EntityFrameworkCore;

namespace CoopLessons.Web.Tests.Law;

[Collection(SharedServer.Name)]
public sealed class A_pathway_of_ones_own(TestServer server)
{
    private const string New = "/family/law/own/new";

    [Fact]
    public async Task Is_kept_in_the_shape_of_the_catalogs()
    {
        var family = await server.FamilyAsync();
        var (reading, art) = (await family.SubjectAsync("reading"), await family.SubjectAsync("art"));
        var answer = await family.Guardian.SubmitAsync(await family.Guardian.GetAsync(New), new()
        {
            ["Input.Name"] = "By the river",
            ["Input.YearBegins"] = "08-15",
            ["Input.Days"] = "170",
            ["Input.MinutesADay"] = "240",
            ["Input.Hours"] = "900.5",
            ["Input.CoreHours"] = "500",
            ["Input.CoreHoursAtHome"] = "300.25",
            ["Input.Papers[0].What"] = "A letter to the grandparents",
            ["Input.Papers[0].To"] = "the grandparents",
            ["Input.Papers[0].By"] = "06-01",
            ["Input.Papers[1].What"] = "A list of books",
            ["Input.Records[1].What"] = "Drawings",
            ["Input.Records[1].Years"] = "5",
        }, more: [new("Input.EitherIsEnough", "true"), new("Input.CoreSubjects", reading.ToString()), new("Input.RequiredSubjects", reading.ToString()), new("Input.RequiredSubjects", art.ToString())]);
        Assert.Equal(HttpStatusCode.Redirect, answer.StatusCode);
        var pathway = (await family.FromDbAsync(db => db.OwnPathways.SingleAsync())).Read()!;
        Assert.Equal("By the river", pathway.Name);
        Assert.Equal(new MonthDay(8, 15), pathway.Year!.Begins);
        var either = Assert.IsType<AnyOf>(pathway.Requirements[0]);
        Assert.Equal((170, 240), (Assert.IsType<DaysRequirement>(either.Of[0]).Days!.Value, ((DaysRequirement)either.Of[0]).MinutesADay!.Value));
        Assert.Equal(900.5m, Assert.IsType<HoursRequirement>(either.Of[1]).Hours);
        Assert.Equal([(500m, null), (300.25m, (Place?)Place.Home)], pathway.Requirements.OfType<HoursRequirement>().Select(h => (h.Hours!.Value, h.Place)));
        Assert.All(pathway.Requirements.OfType<HoursRequirement>(), h => Assert.Equal(["reading"], h.Subjects!));
        Assert.Equal(new[] { ("art", true), ("reading", true) }, pathway.Subjects.Select(s => (s.Id, s.Required)).Order());
        Assert.Equal([new OnDate(new MonthDay(6, 1)), new InYear()], pathway.Duties.Select(d => d.Due));
        Assert.Equal(("Drawings", 5), (Assert.Single(pathway.Records).What, pathway.Records[0].KeepYears!.Value));
        Assert.All(pathway.AllRequirements, r => Assert.Equal(Basis.Family, r.Source.Basis));
    }

    [Fact]
    public async Task Comes_back_into_its_form_as_it_was_written()
    {
        var family = await server.FamilyAsync();
        var own = await family.OwnAsync();
        var page = await family.Guardian.GetAsync("/family/law/own/" + own.Id);
        Assert.Equal(("170", "180", "600"), (Value(page, "Input_Days"), Value(page, "Input_MinutesADay"), Value(page, "Input_CoreHours")));
        await family.Guardian.SubmitAsync(page);
        await family.Guardian.SubmitAsync(await family.Guardian.GetAsync("/family/law/own/" + own.Id));
        var pathway = (await family.FromDbAsync(db => db.OwnPathways.SingleAsync())).Read()!;
        Assert.Equal([170], pathway.Requirements.OfType<DaysRequirement>().Select(d => d.Days!.Value));
        Assert.Equal(["mathematics", "reading"], pathway.Requirements.OfType<HoursRequirement>().Single().Subjects!.Order());
        Assert.Equal(["mathematics", "reading"], pathway.Subjects.Where(s => s.Required).Select(s => s.Id).Order());
    }

    [Fact]
    public async Task Keeps_the_ids_of_its_papers_when_one_between_them_goes()
    {
        var family = await server.FamilyAsync();
        await family.Guardian.SubmitAsync(await family.Guardian.GetAsync(New), new() { ["Input.Name"] = "Ours", ["Input.Papers[0].What"] = "First", ["Input.Papers[1].What"] = "Second" });
        var path = "/family/law/own/" + await family.FromDbAsync(db => db.OwnPathways.Select(p => p.Id).SingleAsync());
        await family.Guardian.SubmitAsync(await family.Guardian.GetAsync(path), new() { ["Input.Papers[0].What"] = "", ["Input.Papers[2].What"] = "Third" });
        var duties = (await family.FromDbAsync(db => db.OwnPathways.SingleAsync())).Read()!.Duties;
        Assert.Equal([("paper-2", "Second"), ("paper-3", "Third")], duties.Select(d => (d.Id, d.What)));
    }

    [Theory]
    [InlineData("Input.Name", "")]
    [InlineData("Input.Name", " ")]
    [InlineData("Input.YearBegins", "13-01")]
    [InlineData("Input.YearBegins", "February")]
    [InlineData("Input.Days", "0")]
    [InlineData("Input.Days", "367")]
    [InlineData("Input.Days", "many")]
    [InlineData("Input.MinutesADay", "60")]
    [InlineData("Input.Hours", "0")]
    [InlineData("Input.Hours", "12.3")]
    [InlineData("Input.Hours", "9000.25")]
    [InlineData("Input.EitherIsEnough", "true")]
    [InlineData("Input.CoreHours", "600")]
    [InlineData("Input.CoreHoursAtHome", "400")]
    [InlineData("Input.Papers[0].To", "somebody")]
    [InlineData("Input.Papers[0].By", "02-30")]
    [InlineData("Input.Records[0].Years", "31")]
    [InlineData("Input.Records[1].Years", "3")]
    public async Task Is_refused_beside_the_field_where_it_cannot_be(string field, string value)
    {
        var family = await server.FamilyAsync();
        var fill = new Dictionary<string, string?> { ["Input.Name"] = "Ours" };
        fill[field] = value;
        var answer = await family.Guardian.SubmitAsync(await family.Guardian.GetAsync(New), fill);
        await answer.IsRefusedAsync();
        Assert.Equal(0, await family.FromDbAsync(db => db.OwnPathways.CountAsync()));
    }

    [Fact]
    public async Task Is_refused_where_it_is_too_long_or_too_much_and_nothing_typed_is_lost()
    {
        var family = await server.FamilyAsync();
        var page = await family.Guardian.GetAsync(New);
        var long10k = new string('x', 10_000);
        var answer = await family.Guardian.SubmitAsync(page, new() { ["Input.Name"] = "Ours", ["Input.Papers[0].What"] = long10k });
        await answer.IsRefusedAsync();
        Assert.Equal(long10k, (await Visitor.ParseAsync(answer)).QuerySelector("#paper-0")!.GetAttribute("value"));
        await (await family.Guardian.SubmitAsync(page, new() { ["Input.Name"] = long10k })).IsRefusedAsync();
        await (await family.Guardian.SubmitAsync(page, new() { ["Input.Name"] = "Ours" }, more: Enumerable.Range(2, 11).Select(i => new KeyValuePair<string, string>($"Input.Papers[{i}].What", "Paper")))).IsRefusedAsync();
        Assert.Equal(0, await family.FromDbAsync(db => db.OwnPathways.CountAsync()));
    }

    [Theory]
    [InlineData("=1+1")]
    [InlineData("<script>alert(1)</script>")]
    [InlineData("\u202Eriver\u202C 🌊")]
    public async Task Takes_any_words_as_words(string words)
    {
        var family = await server.FamilyAsync();
        Assert.Equal(HttpStatusCode.Redirect, (await family.Guardian.SubmitAsync(await family.Guardian.GetAsync(New), new() { ["Input.Name"] = words, ["Input.Papers[0].What"] = words + "\u0007", ["Input.Papers[0].By"] = "02-29" })).StatusCode);
        var own = await family.FromDbAsync(db => db.OwnPathways.SingleAsync());
        Assert.Equal((words, words), (own.Name, own.Read()!.Duties[0].What));
        var page = await family.Guardian.GetAsync("/family/law/own/" + own.Id);
        Assert.Equal(words, page.QuerySelector("#paper-0")!.GetAttribute("value"));
        Assert.Empty(page.QuerySelectorAll("main script"));
    }

    [Fact]
    public async Task Is_written_once_though_its_form_is_sent_eight_times_at_once()
    {
        var family = await server.FamilyAsync();
        var page = await family.Guardian.GetAsync(New);
        var answers = await Task.WhenAll(Enumerable.Range(0, 8).Select(_ => family.Guardian.SubmitAsync(page, new() { ["Input.Name"] = "Ours" })));
        Assert.All(answers, a => Assert.Equal(HttpStatusCode.Redirect, a.StatusCode));
        Assert.Equal(1, await family.FromDbAsync(db => db.OwnPathways.CountAsync()));
    }

    [Fact]
    public async Task Is_not_overwritten_from_an_old_page_and_names_no_foreign_subject()
    {
        var (family, other) = (await server.FamilyAsync(), await server.FamilyAsync("Birch"));
        var path = "/family/law/own/" + (await family.OwnAsync()).Id;
        var page = await family.Guardian.GetAsync(path);
        await family.Guardian.SubmitAsync(page, new() { ["Input.Days"] = "171" });
        var stale = await family.Guardian.SubmitAsync(page, new() { ["Input.Days"] = "172" });
        await stale.IsRefusedAsync(HttpStatusCode.Conflict);
        Assert.Equal("172", Value(await Visitor.ParseAsync(stale), "Input_Days"));
        var theirs = await other.SubjectAsync("reading");
        Assert.Equal(HttpStatusCode.NotFound, (await family.Guardian.SubmitAsync(await family.Guardian.GetAsync(path), more: [new("Input.CoreSubjects", theirs.ToString())])).StatusCode);
        Assert.Equal(HttpStatusCode.NotFound, (await family.Guardian.SubmitAsync(await family.Guardian.GetAsync(New), new() { ["Input.Name"] = "Ours" }, more: [new("Input.RequiredSubjects", theirs.ToString())])).StatusCode);
    }

    [Fact]
    public async Task Is_removed_only_while_nobody_stands_under_it()
    {
        var family = await server.FamilyAsync();
        var wren = await family.LearnerAsync();
        var own = await family.OwnAsync();
        var path = "/family/law/own/" + own.Id;
        var page = await family.Guardian.GetAsync(path);
        await family.WithDbAsync(async db =>
        {
            db.Add(new Data.Requirements.LearnerPathway(Guid.CreateVersion7(), wren, own, LawFamily.July, SpanReason.Begins));
            db.Add(new Data.Requirements.SubjectReading("", own.Id.ToString(), "reading", await db.Subjects.Select(s => s.Id).FirstAsync(), true));
            await db.SaveChangesAsync();
        });
        await (await family.Guardian.SubmitAsync(page, within: "form[action*='handler=Remove'] button")).IsRefusedAsync(HttpStatusCode.Conflict);
        Assert.Empty((await family.Guardian.GetAsync(path)).QuerySelectorAll("form[action*='handler=Remove']"));
        await family.WithDbAsync(async db =>
        {
            db.Remove(await db.LearnerPathways.SingleAsync());
            await db.SaveChangesAsync();
        });
        Assert.Equal(HttpStatusCode.Redirect, (await family.Guardian.SubmitAsync(page, within: "form[action*='handler=Remove'] button")).StatusCode);
        Assert.Equal((0, 0), await family.FromDbAsync(async db => (await db.OwnPathways.CountAsync(), await db.SubjectReadings.CountAsync())));
    }

    private static string? Value(AngleSharp.Dom.IDocument page, string id) => page.QuerySelector("#" + id)!.GetAttribute("value");
}
