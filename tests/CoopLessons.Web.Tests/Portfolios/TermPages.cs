using System.Net;
using AngleSharp.Html.Dom;
using CoopLessons.Web.Tests.App;
using CoopLessons.Web.Tests.Documents;
using CoopLessons.Web.Tests.Records;

namespace CoopLessons.Web.Tests.Portfolios;

/// <summary>The pages of reports on terms, as a guardian goes through them.</summary>
public static class TermPages
{
    private static readonly DateOnly July = new(2025, 7, 1);

    /// <summary>Linnet’s log in the fourth grade.</summary>
    public static async Task<KeptLog> UnderAsync(this TestServer server, string code, string pathway)
    {
        var log = await KeptLog.OfAsync(server, "Linnet").StandsAsync(code, pathway, July);
        await log.GradeAsync(4);
        return log;
    }

    public static string Terms(this KeptLog log) => $"/records/terms?learner={log.Linnet}&year={log.YearId}";

    public static async Task<IHtmlDocument> DraftAsync(this KeptLog log, IHtmlDocument list, int nth = 0)
    {
        var form = list.QuerySelectorAll("ul.rows form")[nth];
        var fields = Visitor.FieldsOf(form).Append(new("duty", form.QuerySelector("button")!.GetAttribute("value")!));
        using var begun = await log.Guardian.PostAsync(log.Terms(), fields);
        Assert.Equal(HttpStatusCode.Redirect, begun.StatusCode);
        return await log.Guardian.GetAsync(begun.Headers.Location!.OriginalString);
    }

    public static async Task<byte[]> BytesAsync(this KeptLog log, IHtmlDocument page)
    {
        using var answer = await log.Guardian.OpenAsync(page.Location.PathName + "/report.pdf");
        Assert.Equal("application/pdf", answer.Content.Headers.ContentType!.MediaType);
        return await answer.Content.ReadAsByteArrayAsync();
    }

    public static async Task<string> PdfAsync(this KeptLog log, IHtmlDocument page) => PaperReader.AllText(await log.BytesAsync(page));
}
