using System.Net;
using AngleSharp.Dom;
using AngleSharp.Html.Dom;
using CoopLessons.Core.Families;
using CoopLessons.Core.Units;
using CoopLessons.Data.Families;
using CoopLessons.Data.Scenario;
using CoopLessons.Data.Units;
using CoopLessons.Web.Tests.App;
using Microsoft.EntityFrameworkCore;

namespace CoopLessons.Web.Tests.Units;

/// <summary>A small unit written by hand: two weeks, an activity of music alone, one of art and music, one of science.</summary>
internal sealed record MillSongs(Guid Id, Guid Song, Guid Picture, Guid Wheel);

internal static class UnitSamples
{
    public const string Loaf = "from-grain-to-loaf";

    public static async Task<Guid> TakeInAsync(this TestFamily family, string name = Loaf)
    {
        var id = Guid.CreateVersion7();
        await family.WithDbAsync(async db =>
        {
            await UnitTravel.TakeInAsync(db, ScenarioFiles.Units[name], id, CancellationToken.None);
            await db.SaveChangesAsync();
        });
        return id;
    }

    public static async Task<MillSongs> MillSongsAsync(this TestFamily family)
    {
        var songs = new MillSongs(Guid.CreateVersion7(), Guid.CreateVersion7(), Guid.CreateVersion7(), Guid.CreateVersion7());
        var (art, music, science, history) = (await family.SubjectAsync("art"), await family.SubjectAsync("music"), await family.SubjectAsync("science"), await family.SubjectAsync("history"));
        await family.WithDbAsync(async db =>
        {
            var unit = new Unit(songs.Id, "Songs of the mill", "Two weeks of singing by the water.", 2);
            unit.Add(new Activity(songs.Song, "sing", new ActivityFacts(1, 1, "Sing the mill song", ActivityKind.Music, "Sing it.\nSing it once more.", AdultNeed.Beside, 20, 0, ""), Counting((music, 1))));
            unit.Add(new Activity(songs.Picture, "picture", new ActivityFacts(1, 2, "Draw what the song tells", ActivityKind.Drawing, "Draw.", AdultNeed.Alone, 30, 45, "the paint dries"), Counting((art, 2), (music, 1), (history, 0)) with
            {
                Supplies = [new Supply("Drawing paper", 2, "sheet", Per.Learner), new Supply("Poster paint", 100, "ml", Per.Family)],
            }));
            unit.Add(new Activity(songs.Wheel, "wheel", new ActivityFacts(2, 1, "Turn a wheel with water", ActivityKind.Experiment, "Pour.", AdultNeed.HandsOn, 40, 0, ""), Counting((science, 1)) with
            {
                Supplies = [new Supply("drawing paper", 1, "sheet", Per.Pair)],
            }));
            db.Units.Add(unit);
            await db.SaveChangesAsync();
        });
        return songs;
    }

    public static ActivityDetails Counting(params (Guid Subject, int Weight)[] subjects) =>
        ActivityDetails.Empty with { Subjects = [.. subjects.Select(s => new ActivitySubject(s.Subject, s.Weight))] };

    /// <summary>One activity in a unit of its own.</summary>
    public static async Task<(Guid Unit, Guid Activity)> OneActivityAsync(this TestFamily family, Func<ActivityDetails, ActivityDetails> bend)
    {
        var (unitId, activityId) = (Guid.CreateVersion7(), Guid.CreateVersion7());
        var science = await family.SubjectAsync("science");
        await family.WithDbAsync(async db =>
        {
            var unit = new Unit(unitId, "One thing", "Only one.", 1);
            unit.Add(new Activity(activityId, "one", new ActivityFacts(1, 1, "The one thing", ActivityKind.Making, "Make it.", AdultNeed.Beside, 20, 0, ""), bend(Counting((science, 1)))));
            db.Units.Add(unit);
            await db.SaveChangesAsync();
        });
        return (unitId, activityId);
    }

    public static Task<Unit> UnitAsync(this TestFamily family, Guid id) =>
        family.FromDbAsync(db => db.Units.Include(u => u.Subjects).Include(u => u.Activities).AsNoTracking().SingleAsync(u => u.Id == id));

    public static Task<int> UnitsAsync(this TestFamily family) => family.FromDbAsync(db => db.Units.CountAsync());

    public static Task<Guid> SubjectAsync(this TestFamily family, string code) =>
        family.FromDbAsync(db => db.Subjects.Where(s => s.Code == code).Select(s => s.Id).SingleAsync());

    public static async Task<Guid> LearnerAsync(this TestFamily family, string name, DateOnly birth, Allergen[]? allergies = null, string note = "", (Guid Subject, int Grade)? level = null)
    {
        var id = Guid.CreateVersion7();
        await family.WithDbAsync(async db =>
        {
            var learner = new Learner(id, name, birth, await db.Learners.CountAsync());
            learner.Describe(name, birth, allergies ?? [], note);
            if (level is { } set)
                learner.SetLevel(set.Subject, new Level(set.Grade));
            db.Learners.Add(learner);
            await db.SaveChangesAsync();
        });
        return id;
    }

    /// <summary>Name of the form's field for a subject: <c>Weight</c> or <c>Touched</c>.</summary>
    public static string SubjectField(this IHtmlDocument page, Guid subjectId, string field) =>
        page.QuerySelectorAll("input[name$='.SubjectId']").Single(i => i.GetAttribute("value") == subjectId.ToString()).GetAttribute("name")!.Replace("SubjectId", field, StringComparison.Ordinal);

    /// <summary>What stands beside a field because of a fault; empty where nothing does.</summary>
    public static string Fault(this IParentNode page, string field) =>
        string.Join(" ", page.QuerySelectorAll($"[data-valmsg-for='{field}']").Select(e => e.TextContent.Trim()));

    public static string Text(this IParentNode page, string selector) => string.Join(' ', page.QuerySelectorAll(selector).Select(e => e.TextContent)).Squeezed();

    public static string Squeezed(this string text) => string.Join(' ', text.Split((char[]?)null, StringSplitOptions.RemoveEmptyEntries));

    public static async Task<IHtmlDocument> AnsweredAsync(this Task<HttpResponseMessage> answer, HttpStatusCode status)
    {
        using var response = await answer;
        Assert.Equal(status, response.StatusCode);
        return await Visitor.ParseAsync(response);
    }

    public static async Task<string> RedirectedAsync(this Task<HttpResponseMessage> answer)
    {
        using var response = await answer;
        Assert.True(response.StatusCode == HttpStatusCode.Redirect, $"{(int)response.StatusCode}: {(await response.Content.ReadAsStringAsync())[..Math.Min(2000, (await response.Content.ReadAsStringAsync()).Length)]}");
        return response.Headers.Location!.OriginalString;
    }
}
