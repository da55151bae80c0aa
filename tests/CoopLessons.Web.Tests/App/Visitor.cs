using System.Net;
using AngleSharp;
using AngleSharp.Dom;
using AngleSharp.Html.Dom;
using AngleSharp.Html.Parser;

namespace CoopLessons.Web.Tests.App;

/// <summary>
/// Somebody in front of a browser without scripts: opens pages, fills in forms, keeps cookies. Cookies are kept here
/// rather than by the client, which would judge their ends by the machine's clock.
/// </summary>
public sealed class Visitor(HttpClient client)
{
    private readonly Dictionary<string, string> _cookies = new(StringComparer.Ordinal);

    public IReadOnlyDictionary<string, string> Cookies => _cookies;

    public void SetCookie(string name, string value) => _cookies[name] = value;

    /// <summary>Opens a page that must be there.</summary>
    public async Task<IHtmlDocument> GetAsync(string path)
    {
        using var answer = await SendAsync(new HttpRequestMessage(HttpMethod.Get, path));
        Assert.True(answer.StatusCode == HttpStatusCode.OK, $"{path} answered {(int)answer.StatusCode} to {answer.Headers.Location}");
        return await ParseAsync(answer);
    }

    /// <summary>Opens an address, whatever it answers; no redirect is followed.</summary>
    public Task<HttpResponseMessage> OpenAsync(string path, bool htmx = false)
    {
        var request = new HttpRequestMessage(HttpMethod.Get, path);
        if (htmx)
            request.Headers.Add("HX-Request", "true");
        return SendAsync(request);
    }

    /// <summary>
    /// Sends the form of a page as a browser would, with some fields filled in otherwise; a null value leaves the field
    /// out, and <paramref name="more"/> adds fields that may repeat. Which form: the one that holds <paramref name="within"/> (a selector), else the first form of the main part.
    /// </summary>
    public Task<HttpResponseMessage> SubmitAsync(IDocument page, Dictionary<string, string?>? fill = null, string? within = null, bool htmx = false, IEnumerable<KeyValuePair<string, string>>? more = null)
    {
        var form = Form(page, within);
        var fields = FieldsOf(form).ToList();
        foreach (var (name, value) in fill ?? [])
        {
            fields.RemoveAll(f => f.Key == name);
            if (value is not null)
                fields.Add(new(name, value));
        }

        fields.AddRange(more ?? []);
        return PostAsync(form.GetAttribute("action") is { Length: > 0 } action ? action : ((IHtmlDocument)page).Location.PathName + ((IHtmlDocument)page).Location.Search, fields, htmx);
    }

    /// <summary>Posts fields to an address; the page's own token must be among them where one is asked for.</summary>
    public Task<HttpResponseMessage> PostAsync(string path, IEnumerable<KeyValuePair<string, string>> fields, bool htmx = false)
    {
        var request = new HttpRequestMessage(HttpMethod.Post, path) { Content = new FormUrlEncodedContent(fields) };
        if (htmx)
            request.Headers.Add("HX-Request", "true");
        return SendAsync(request);
    }

    public async Task<HttpResponseMessage> SendAsync(HttpRequestMessage request)
    {
        if (_cookies.Count > 0)
            request.Headers.Add("Cookie", string.Join("; ", _cookies.Select(c => $"{c.Key}={c.Value}")));
        var answer = await client.SendAsync(request);
        foreach (var line in answer.Headers.TryGetValues("Set-Cookie", out var lines) ? lines : [])
        {
            var pair = line.Split(';')[0].Split('=', 2);
            if (pair[1].Length == 0)
                _cookies.Remove(pair[0]);
            else
                _cookies[pair[0]] = pair[1];
        }

        return answer;
    }

    /// <summary>The page that an answer holds, whatever its status.</summary>
    public static async Task<IHtmlDocument> ParseAsync(HttpResponseMessage answer)
    {
        var text = await answer.Content.ReadAsStringAsync();
        var address = answer.RequestMessage!.RequestUri!.AbsoluteUri;
        var document = await BrowsingContext.New(Configuration.Default)
            .OpenAsync(r => r.Content(text).Address(address));
        return (IHtmlDocument)document;
    }

    /// <summary>A token from any page with a form, for posts made by hand.</summary>
    public async Task<string> TokenAsync(string path = "/today")
    {
        var page = await GetAsync(path);
        return page.QuerySelector("input[name=__RequestVerificationToken]")!.GetAttribute("value")!;
    }

    private static IElement Form(IDocument page, string? within)
    {
        var form = within is null ? page.QuerySelector("main form") : page.QuerySelector(within)?.Closest("form") ?? page.QuerySelector(within)?.QuerySelector("form");
        return form ?? throw new InvalidOperationException($"No form {within} on {page.Title}.");
    }

    /// <summary>What a browser would send of a form, as it stands.</summary>
    public static IEnumerable<KeyValuePair<string, string>> FieldsOf(IElement form)
    {
        foreach (var field in form.QuerySelectorAll("input[name], select[name], textarea[name]").Where(f => !f.HasAttribute("disabled")))
        {
            var name = field.GetAttribute("name")!;
            switch (field)
            {
                case IHtmlInputElement { Type: "checkbox" or "radio" } box when box.IsChecked:
                    yield return new(name, box.GetAttribute("value") ?? "on");
                    break;
                case IHtmlInputElement { Type: not ("checkbox" or "radio" or "submit" or "file") } input:
                    yield return new(name, input.Value);
                    break;
                case IHtmlSelectElement select when select.Value is { } value:
                    yield return new(name, value);
                    break;
                case IHtmlTextAreaElement area:
                    yield return new(name, area.Value);
                    break;
            }
        }
    }
}
