using System.Net;
using CoopLessons.Web.Tests.App;

namespace CoopLessons.Web.Tests.Printing;

/// <summary>On the web server as it serves, which has limits of its own.</summary>
public sealed class A_file_too_large_over_the_network : IDisposable
{
    private readonly NetworkServer _server = new();

    public void Dispose() => _server.Dispose();

    [Theory]
    [InlineData(30_000_000)]
    [InlineData(60_000_000)]
    public async Task Is_answered_on_its_page_once_all_of_it_was_sent(int bytes)
    {
        var family = await PrintingFamily.MakeAsync(_server);
        using var answer = await family.BringAsync(new byte[bytes], "sheet.pdf");

        Assert.Equal(HttpStatusCode.RequestEntityTooLarge, answer.StatusCode);
        var page = await Visitor.ParseAsync(answer);
        Assert.Contains("larger than 25 megabytes", page.QuerySelector("#print-0 .fault:not(:empty)")!.TextContent, StringComparison.Ordinal);
        Assert.Equal("true", page.QuerySelector("#print-0 input[type=file]")!.GetAttribute("aria-invalid"));
        Assert.Empty(await family.OnShelfAsync());

        using var next = await family.BringAsync(Documents.SamplePages.Sheet("mill-visit"), "visit.pdf");
        Assert.Equal(HttpStatusCode.Redirect, next.StatusCode);
    }

    [Fact]
    public async Task Is_refused_before_it_is_sent_where_the_browser_asks_first()
    {
        var family = await PrintingFamily.MakeAsync(_server);
        using var content = new MultipartFormDataContent { { new ByteArrayContent(new byte[30_000_000]), "file", "sheet.pdf" } };
        using var request = new HttpRequestMessage(HttpMethod.Post, family.Prints + "?handler=Upload&at=0") { Content = content };
        request.Headers.ExpectContinue = true;
        using var answer = await family.Guardian.SendAsync(request);
        Assert.Equal(HttpStatusCode.RequestEntityTooLarge, answer.StatusCode);
    }
}
