using System.Globalization;
using System.Net;
using System.Text;
using AngleSharp.Html.Dom;
using CoopLessons.Core.Hours;
using CoopLessons.Data;
using CoopLessons.Data.Families;
using CoopLessons.Data.Log;
using CoopLessons.Data.Log.Sheets;
using CoopLessons.Web.Tests.App;
using Microsoft.EntityFrameworkCore;

namespace CoopLessons.Web.Tests.Log.Sheets;

[Collection(PlanningServer.Name)]
public sealed class A_sheet_brought_to_the_log(TestServer server)
{
    private const string Head = "date,activity,child,subject,minutes,notes\n";

    [Fact]
    public async Task Names_each_of_forty_bad_rows_among_three_thousand_and_goes_in_once_and_out_again()
    {
        var family = await FamilyAsync();
        var (text, bad) = Year();
        var sheet = await BringAsync(family, Encoding.UTF8.GetBytes(text));
        var map = await family.Guardian.GetAsync(sheet);
        Assert.Contains("3,000 rows, text in UTF-8, commas between cells", map.QuerySelector(".sub")!.TextContent, StringComparison.Ordinal);
        Assert.Equal($"{sheet}/rows", (await SubmitAsync(family, map)).Headers.Location?.OriginalString);

        var rows = await family.Guardian.GetAsync(sheet + "/rows");
        Assert.Equal(("2,960 rows", "0 rows", "40 rows"), (Text(rows, "#good"), Text(rows, "#there"), Text(rows, "#bad")));
        Assert.Equal(bad, rows.QuerySelectorAll("#faults li").Select(li => (li.QuerySelector("b")!.TextContent, li.QuerySelector(".row-main")!.LastChild!.TextContent.Trim())));

        var first = await family.Guardian.SubmitAsync(rows);
        var taken = first.Headers.Location!.OriginalString;
        Assert.Equal(sheet.Replace("/log/bring/", "/log/bring/taken/", StringComparison.Ordinal), taken);
        var minutes = await MinutesAsync(family);
        Assert.Equal(2960, await family.FromDbAsync(db => db.Standing().CountAsync()));
        Assert.Equal(taken, (await family.Guardian.SubmitAsync(rows)).Headers.Location?.OriginalString);
        Assert.Equal((2960, minutes), (await family.FromDbAsync(db => db.LogEntries.CountAsync()), await MinutesAsync(family)));
        // By hand: of 3,000 rows that go 20, 30, 40, 50, 60, each 75th is bad, so that of each length 8 are missing: 3,000 × 40 − 40 × 40.
        Assert.Equal(3000 * 40 - 40 * 40, minutes);
        var entry = await family.FromDbAsync(db => db.LogRevisions.OrderBy(r => r.Date).FirstAsync());
        Assert.Equal(("brought from year.csv", "Iris Alder"), (entry.Why, entry.AuthorName));

        var page = await family.Guardian.GetAsync(taken);
        Assert.Equal("2,960 entries", Text(page, "#taken"));
        await family.Guardian.SubmitAsync(page);
        Assert.Equal(0, await family.FromDbAsync(db => db.Standing().CountAsync()));
        Assert.Equal(0, await MinutesAsync(family));
        Assert.Equal(2960, await family.FromDbAsync(db => db.LogRevisions.CountAsync(r => r.Removed && r.Why == "year.csv was taken out again")));
        await family.Guardian.SubmitAsync(page);
        Assert.Equal(2 * 2960, await family.FromDbAsync(db => db.LogRevisions.CountAsync()));
    }

    [Fact]
    public async Task Leaves_out_what_is_there_already_unless_it_is_ticked()
    {
        var family = await FamilyAsync();
        const string text = Head + "2026-03-02,Kites,Wren,Science,40,\n2026-03-03,Boats,Wren & Linnet,Science,40,\n";
        await TakeAsync(family, text);
        var (_, rows) = await RowsAsync(family, text + "2026-03-04,Bread,Wren,Science,40,\n");
        Assert.Equal(("1 row", "2 rows"), (Text(rows, "#good"), Text(rows, "#there")));
        await family.Guardian.SubmitAsync(rows);
        Assert.Equal(["Kites", "Boats", "Bread"], await WhatAsync(family));
        var (_, again) = await RowsAsync(family, text);
        Assert.Equal(HttpStatusCode.UnprocessableEntity, (await family.Guardian.SubmitAsync(again)).StatusCode);
        await family.Guardian.SubmitAsync(again, new() { ["thereToo"] = "true" });
        Assert.Equal(["Kites", "Kites", "Boats", "Boats", "Bread"], await WhatAsync(family));
    }

    [Fact]
    public async Task Stays_where_somebody_changed_it_since_and_that_is_named()
    {
        var family = await FamilyAsync();
        var taken = await TakeAsync(family, Head + "2026-03-02,Kites,Wren,Science,40,\n2026-03-03,Boats,Wren,Science,40,\n");
        await family.WithDbAsync(async db =>
        {
            var id = await db.LogRevisions.Where(r => r.What == "Boats").Select(r => r.EntryId).SingleAsync();
            var (entry, newest) = (await db.EntryAsync(id, default))!.Value;
            entry.Change(newest.Facts with { Note = "Of bark." }, new Author(family.GuardianId, "Iris"), TestServer.Start.UtcDateTime, "");
            await db.SaveChangesAsync();
        });
        await family.Guardian.SubmitAsync(await family.Guardian.GetAsync(taken));
        Assert.Equal(["Boats"], await WhatAsync(family));
        var page = await family.Guardian.GetAsync(taken);
        Assert.Contains("The entries of this file are taken out, but for 1 entry that somebody had changed.", page.Body!.TextContent, StringComparison.Ordinal);
        Assert.Contains("Stayed, since somebody had changed them", page.Body.TextContent, StringComparison.Ordinal);
    }

    [Fact]
    public async Task May_make_new_subjects_and_name_children_otherwise()
    {
        var family = await FamilyAsync();
        var sheet = await BringAsync(family, Encoding.GetEncoding("iso-8859-1").GetBytes("Day;Lesson;Student;Subject;Hours\n2.3.2026;Caf\u00e9 words;W.;Latin: 2, Art: 1;0,5\n"));
        var map = await family.Guardian.GetAsync(sheet);
        Assert.Contains("1 row, text in Windows-1252, semicolons between cells", map.QuerySelector(".sub")!.TextContent, StringComparison.Ordinal);
        Assert.Equal("“2.3.2026” is read as Monday 2 March.", map.QuerySelector("#day-reads")!.TextContent);
        var wren = map.QuerySelectorAll("#learner-0 option").OfType<IHtmlOptionElement>().Single(o => o.Text == "Wren").Value;
        await SubmitAsync(family, map, new() { ["MetLearners[0].Meant"] = wren, ["MetSubjects[0].Meant"] = "new" });
        var rows = await family.Guardian.GetAsync(sheet + "/rows");
        Assert.Contains("New subjects, at the end of your list: Latin", rows.Body!.TextContent, StringComparison.Ordinal);
        await family.Guardian.SubmitAsync(rows);
        await family.WithDbAsync(async db =>
        {
            var entry = await db.Standing().SingleAsync();
            var latin = await db.Subjects.SingleAsync(s => s.Name == "Latin");
            Assert.Equal(("Café words", 30, "latin"), (entry.What, entry.Times.Single().Minutes, latin.Code));
            Assert.Equal(2, entry.Subjects.Single(s => s.SubjectId == latin.Id).Weight);
            Assert.Equal(await db.Subjects.MaxAsync(s => s.Order), latin.Order);
        });
    }

    [Fact]
    public async Task Needs_a_day_a_length_a_child_and_a_subject()
    {
        var family = await FamilyAsync();
        var sheet = await BringAsync(family, "2026-03-02,Kites\n2026-03-03,Boats\n"u8.ToArray());
        var map = await family.Guardian.GetAsync(sheet);
        var refused = await SubmitAsync(family, map, new() { ["Input.Day"] = "" });
        Assert.Equal(HttpStatusCode.UnprocessableEntity, refused.StatusCode);
        var page = await Visitor.ParseAsync(refused);
        Assert.Equal(
            ["Choose the column that holds the day.", "Choose the column that says how long.", "Choose the column that says who, or tick for whom all rows are.", "Choose the column that names the subject, or one subject for all rows."],
            page.QuerySelectorAll("main .fault").Select(f => f.TextContent).Where(t => t.Length > 0));
    }

    [Theory]
    [InlineData("", "This file is empty.")]
    [InlineData("PK\u0003\u0004workbook", "This is a workbook and not a file of separated values.")]
    [InlineData("date,what\n2026-03-02,\"Kites\n", "A quotation mark on line 2 opens a cell that is never closed.")]
    [InlineData("\n\n , \n", "There are no rows in this file.")]
    [InlineData("a\0b\0c,d\ne,f", "This is no text, so there are no rows in it.")]
    public async Task Is_refused_where_there_are_no_rows_in_it(string text, string sentence)
    {
        var family = await FamilyAsync();
        var answer = await SendAsync(family, Encoding.UTF8.GetBytes(text));
        Assert.Equal(HttpStatusCode.UnprocessableEntity, answer.StatusCode);
        Assert.Contains(sentence, (await Visitor.ParseAsync(answer)).QuerySelector("#sheet-fault")!.TextContent, StringComparison.Ordinal);
        Assert.Equal(0, await family.FromDbAsync(db => db.BroughtSheets.CountAsync()));
    }

    [Fact]
    public async Task Is_for_guardians()
    {
        var family = await FamilyAsync();
        Assert.Equal(HttpStatusCode.Forbidden, (await (await server.HelperAsync(family)).OpenAsync("/log/bring")).StatusCode);
    }

    /// <summary>3,000 rows over three school years, of which every 75th has something wrong with it.</summary>
    private static (string Text, IReadOnlyList<(string Line, string Fault)> Bad) Year()
    {
        var text = new StringBuilder(Head);
        var bad = new List<(string, string)>();
        for (var i = 1; i <= 3000; i++)
        {
            var day = new DateOnly(2023, 7, 3).AddDays(i / 4).ToString("yyyy-MM-dd", CultureInfo.InvariantCulture);
            // The bad ones among them have each of the five lengths alike.
            var minutes = 20 + (i + i / 75) % 5 * 10;
            string[] cells = [day, $"Reading {i}", i % 2 == 0 ? "Wren" : "Linnet", "Science", minutes.ToString(CultureInfo.InvariantCulture), "\"one, two\""];
            if (i % 75 == 0)
            {
                var (column, cell, fault) = (i / 75 % 4) switch
                {
                    0 => (0, "2023-02-30", "“2023-02-30” is no day in the form that was chosen."),
                    1 => (2, "Kite", "“Kite” is none of your children."),
                    2 => (4, "ages", "“ages” is no length: whole minutes such as 45 are expected."),
                    _ => (3, "", "It names no subject."),
                };
                cells[column] = cell;
                bad.Add(($"Line {i + 1}", fault));
            }

            text.AppendJoin(',', cells).Append('\n');
        }

        return (text.ToString(), bad);
    }

    private async Task<TestFamily> FamilyAsync()
    {
        var family = await server.FamilyAsync();
        await family.WithDbAsync(async db =>
        {
            db.AddRange(new Learner(Guid.CreateVersion7(), "Wren", new DateOnly(2017, 5, 1), 0), new Learner(Guid.CreateVersion7(), "Linnet", new DateOnly(2016, 5, 1), 1));
            await db.SaveChangesAsync();
        });
        return family;
    }

    private static async Task<HttpResponseMessage> SendAsync(TestFamily family, byte[] file)
    {
        var page = await family.Guardian.GetAsync("/log/bring");
        var form = new MultipartFormDataContent();
        foreach (var (name, value) in Visitor.FieldsOf(page.QuerySelector("form[enctype]")!))
            form.Add(new StringContent(value), name);
        form.Add(new ByteArrayContent(file), "Sheet", "year.csv");
        return await family.Guardian.SendAsync(new HttpRequestMessage(HttpMethod.Post, "/log/bring") { Content = form });
    }

    [Fact]
    public async Task Knows_the_familys_own_subjects_behind_sixty_that_nobody_knows()
    {
        var family = await FamilyAsync();
        var text = new StringBuilder(Head);
        for (var i = 0; i < 70; i++)
            text.Append(CultureInfo.InvariantCulture, $"2026-03-02,Kites {i},Wren,Kite flying {i},20,\n");
        text.Append("2026-03-03,Sprouts,Wren,Science,30,\n");
        var (_, rows) = await RowsAsync(family, text.ToString());
        Assert.DoesNotContain("“Science” is none of your subjects", rows.Body!.TextContent, StringComparison.Ordinal);
        Assert.Contains("“Kite flying 69” is none of your subjects", rows.Body!.TextContent, StringComparison.Ordinal);
    }

    private static async Task<string> BringAsync(TestFamily family, byte[] file)
    {
        var answer = await SendAsync(family, file);
        Assert.Equal(HttpStatusCode.Redirect, answer.StatusCode);
        return answer.Headers.Location!.OriginalString;
    }

    private static Task<HttpResponseMessage> SubmitAsync(TestFamily family, IHtmlDocument map, Dictionary<string, string?>? fill = null) =>
        family.Guardian.PostAsync(map.Location.PathName + "?handler=Rows", Visitor.FieldsOf(map.QuerySelector("main form")!).Where(f => fill?.ContainsKey(f.Key) != true).Concat((fill ?? []).Select(f => new KeyValuePair<string, string>(f.Key, f.Value!))));

    private static async Task<(string Sheet, IHtmlDocument Rows)> RowsAsync(TestFamily family, string text)
    {
        var sheet = await BringAsync(family, Encoding.UTF8.GetBytes(text));
        await SubmitAsync(family, await family.Guardian.GetAsync(sheet));
        return (sheet, await family.Guardian.GetAsync(sheet + "/rows"));
    }

    private static async Task<string> TakeAsync(TestFamily family, string text)
    {
        var (_, rows) = await RowsAsync(family, text);
        return (await family.Guardian.SubmitAsync(rows)).Headers.Location!.OriginalString;
    }

    private static Task<List<string>> WhatAsync(TestFamily family) => family.FromDbAsync(db => db.Standing().OrderBy(r => r.Date).ThenBy(r => r.EntryId).Select(r => r.What).ToListAsync());

    private static Task<int> MinutesAsync(TestFamily family) => family.FromDbAsync(async db =>
        (await db.LoggedAsync(new Core.Calendar.DayRange(new DateOnly(2023, 1, 1), new DateOnly(2026, 12, 31)), null, default)).Sum(e => e.Learners.Sum(l => l.Minutes.Value)));

    private static string Text(IHtmlDocument page, string selector) => page.QuerySelector(selector)!.TextContent.Trim();
}
