using System.Net;
using CoopLessons.Web.Tests.App;
using Microsoft.EntityFrameworkCore;

namespace CoopLessons.Web.Tests.Families;

[Collection(SharedServer.Name)]
public sealed class WhatAFamilySaysOfItself(TestServer server)
{
    [Fact]
    public async Task Is_saved_and_shown()
    {
        var family = await server.FamilyAsync();
        var visitor = family.Guardian;
        await visitor.SubmitAsync(await visitor.GetAsync("/family/counting"), new() { ["Input.Policy"] = "We count set work. =1+1 <b>🦉</b>", ["Input.MinimumDay"] = "270" });
        await visitor.SubmitAsync(await visitor.GetAsync("/family/describe"), new() { ["Input.Name"] = "Alder & Birch", ["Input.TimeZone"] = "Pacific/Honolulu", ["Input.State"] = "MO" });
        var page = await visitor.GetAsync("/family");
        Assert.Equal("Alder & Birch", page.QuerySelector("h1")!.TextContent);
        Assert.Contains("We count set work. =1+1 <b>🦉</b>", page.Body!.TextContent, StringComparison.Ordinal);
        Assert.Contains("Missouri", page.Body.TextContent, StringComparison.Ordinal);
        Assert.Contains("270 minutes", page.Body.TextContent, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("/family/counting", "Input.Policy", "")]
    [InlineData("/family/counting", "Input.MinimumDay", "0")]
    [InlineData("/family/counting", "Input.MinimumDay", "961")]
    [InlineData("/family/counting", "Input.MinimumDay", "1.5")]
    [InlineData("/family/counting", "Input.MinimumDay", "99999999999999999999")]
    [InlineData("/family/counting", "Input.MinimumDay", "an hour")]
    [InlineData("/family/describe", "Input.Name", "")]
    [InlineData("/family/describe", "Input.Name", "\u200B")]
    [InlineData("/family/describe", "Input.TimeZone", "Europe/Nowhere")]
    [InlineData("/family/describe", "Input.State", "ZZ")]
    [InlineData("/family/describe", "Input.State", "Missouri")]
    public async Task Is_not_saved_while_something_is_amiss(string path, string field, string value)
    {
        var family = await server.FamilyAsync();
        var before = await family.FromDbAsync(db => db.Families.Select(f => f.Version).SingleAsync());
        var answer = await family.Guardian.SubmitAsync(await family.Guardian.GetAsync(path), new() { [field] = value });
        Assert.Equal(HttpStatusCode.UnprocessableEntity, answer.StatusCode);
        Assert.NotEmpty((await Visitor.ParseAsync(answer)).QuerySelectorAll(".field-validation-error"));
        Assert.Equal(before, await family.FromDbAsync(db => db.Families.Select(f => f.Version).SingleAsync()));
    }

    [Theory]
    [InlineData(300, HttpStatusCode.Redirect)]
    [InlineData(301, HttpStatusCode.UnprocessableEntity)]
    [InlineData(10_000, HttpStatusCode.UnprocessableEntity)]
    public async Task Holds_three_hundred_signs_on_what_is_counted(int length, HttpStatusCode status)
    {
        var visitor = (await server.FamilyAsync()).Guardian;
        var answer = await visitor.SubmitAsync(await visitor.GetAsync("/family/counting"), new() { ["Input.Policy"] = new string('w', length) });
        Assert.Equal(status, answer.StatusCode);
    }

    [Theory]
    [InlineData("/family/counting", "Input.Policy")]
    [InlineData("/family/describe", "Input.Name")]
    public async Task Is_not_overwritten_by_an_older_page(string path, string field)
    {
        var visitor = (await server.FamilyAsync()).Guardian;
        var older = await visitor.GetAsync(path);
        await visitor.SubmitAsync(await visitor.GetAsync(path), new() { [field] = "first" });
        var answer = await visitor.SubmitAsync(older, new() { [field] = "second" });
        Assert.Equal(HttpStatusCode.Conflict, answer.StatusCode);
        var shown = await Visitor.ParseAsync(answer);
        Assert.Contains("second", shown.QuerySelector("main")!.InnerHtml, StringComparison.Ordinal);
        Assert.Contains("first", (await visitor.GetAsync("/family")).QuerySelector("main")!.TextContent, StringComparison.Ordinal);
        Assert.Equal(HttpStatusCode.Redirect, (await visitor.SubmitAsync(shown)).StatusCode);
    }

    [Fact]
    public async Task Ignores_fields_that_no_form_has()
    {
        var family = await server.FamilyAsync();
        var other = await server.FamilyAsync("Birch");
        await family.Guardian.SubmitAsync(await family.Guardian.GetAsync("/family/describe"), more: [new("FamilyId", other.Id.ToString()), new("Input.FamilyId", other.Id.ToString()), new("Family.Name", "Taken"), new("Id", other.Id.ToString())]);
        Assert.Equal("Alder", await family.FromDbAsync(db => db.Families.Select(f => f.Name).SingleAsync()));
        Assert.Equal("Birch", await other.FromDbAsync(db => db.Families.Select(f => f.Name).SingleAsync()));
    }
}
