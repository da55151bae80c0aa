using System.Net;
using System.Net.Http.Headers;
using System.Text;
using CoopLessons.Data.Evidence;
using CoopLessons.Data.OwnLists;
using CoopLessons.Web.Tests.App;
using CoopLessons.Web.Tests.Evidence;
using CoopLessons.Web.Tests.Today;
using Microsoft.EntityFrameworkCore;

namespace CoopLessons.Web.Tests.OwnLists;

[Collection(PlanningServer.Name)]
public sealed class A_picture_that_a_child_brings(TestServer server)
{
    [Fact]
    public async Task Is_a_piece_of_that_child_s_and_belongs_to_the_entry_once_it_is_confirmed()
    {
        var day = await ListFamily.MakeAsync(server);
        var wren = await ListFamily.OpenedAsync(day, day.Wren, ListFamily.WrensPin);
        var page = await wren.GetAsync("/mine");
        // Sent twice, it is one picture.
        using var said = await BringAsync(wren, page, day.ReadAloud, SamplePhotos.Photo());
        using var again = await BringAsync(wren, page, day.ReadAloud, SamplePhotos.Photo());
        Assert.Equal(HttpStatusCode.Redirect, said.StatusCode);
        Assert.Equal(HttpStatusCode.Redirect, again.StatusCode);
        var piece = Assert.Single(await PiecesAsync(day));
        Assert.Equal((PieceKind.Photo, "Wren", TestServer.Today), (piece.Kind, piece.BroughtBy, piece.Date));
        Assert.Equal([day.Wren], piece.Learners);
        Assert.Null(piece.EntryId);

        var today = await day.TodayAsync();
        Assert.NotNull(today.QuerySelector($"#waits img[src='/evidence/{piece.Id}/small']"));
        using var confirmed = await day.Guardian.SubmitAsync(today, within: "form[action$='handler=Confirm']");
        Assert.Equal((await day.SessionAsync(day.ReadAloud)).EntryId, Assert.Single(await PiecesAsync(day)).EntryId);
        using var undone = await day.Guardian.SubmitAsync(await day.Guardian.GetAsync("/family/said"), within: "form[action$='handler=Undo']");
        Assert.Null(Assert.Single(await PiecesAsync(day)).EntryId);
    }

    [Fact]
    public async Task Goes_with_what_the_child_takes_back()
    {
        var day = await ListFamily.MakeAsync(server);
        var wren = await ListFamily.OpenedAsync(day, day.Wren, ListFamily.WrensPin);
        using var said = await BringAsync(wren, await wren.GetAsync("/mine"), day.ReadAloud, SamplePhotos.Photo());
        using var back = await wren.SubmitAsync(await wren.GetAsync("/mine"), within: $"{ListFamily.Thing(day.ReadAloud)} form[action$='handler=TakeBack']");
        Assert.NotNull(Assert.Single(await PiecesAsync(day)).RemovedAt);
    }

    [Fact]
    public async Task That_is_none_is_refused_beside_its_field_and_nothing_is_said()
    {
        var day = await ListFamily.MakeAsync(server);
        var wren = await ListFamily.OpenedAsync(day, day.Wren, ListFamily.WrensPin);
        using var answer = await BringAsync(wren, await wren.GetAsync("/mine"), day.ReadAloud, Encoding.ASCII.GetBytes("no picture at all"));
        Assert.InRange((int)answer.StatusCode, 400, 499);
        Assert.NotEmpty((await Visitor.ParseAsync(answer)).QuerySelector($"{ListFamily.Thing(day.ReadAloud)} .photo .fault")!.TextContent);
        Assert.Empty(await PiecesAsync(day));
        Assert.Equal(0, await day.Family.FromDbAsync(db => db.ChildrenSaid.CountAsync()));
    }

    [Fact]
    public async Task Opens_no_piece_to_the_child()
    {
        var day = await ListFamily.MakeAsync(server);
        var wren = await ListFamily.OpenedAsync(day, day.Wren, ListFamily.WrensPin);
        using var said = await BringAsync(wren, await wren.GetAsync("/mine"), day.ReadAloud, SamplePhotos.Photo());
        using var small = await wren.OpenAsync($"/evidence/{Assert.Single(await PiecesAsync(day)).Id}/small");
        Assert.Equal(HttpStatusCode.Forbidden, small.StatusCode);
    }

    private static Task<List<Piece>> PiecesAsync(PlannedDay day) => day.Family.FromDbAsync(db => db.Pieces.AsNoTracking().ToListAsync());

    private static async Task<HttpResponseMessage> BringAsync(Visitor child, AngleSharp.Html.Dom.IHtmlDocument page, Guid session, byte[] picture)
    {
        var content = new MultipartFormDataContent();
        foreach (var field in page.QuerySelectorAll($"{ListFamily.Thing(session)} form[enctype] input[type=hidden]"))
            content.Add(new StringContent(field.GetAttribute("value") ?? ""), field.GetAttribute("name")!);
        var part = new ByteArrayContent(picture);
        part.Headers.ContentType = new MediaTypeHeaderValue("image/jpeg");
        content.Add(part, "Photo", "picture.jpg");
        return await child.SendAsync(new HttpRequestMessage(HttpMethod.Post, "/mine?handler=Did") { Content = content });
    }
}
