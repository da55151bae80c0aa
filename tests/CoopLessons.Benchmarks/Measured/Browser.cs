using System.Net;
using System.Text.RegularExpressions;

namespace CoopLessons.Benchmarks.Measured;

/// <summary>Somebody in front of a page, by real HTTP over the loopback: keeps cookies, follows no redirect.</summary>
public sealed partial class Browser(Uri address) : IDisposable
{
    private readonly HttpClient _http = new(new SocketsHttpHandler { AllowAutoRedirect = false }) { BaseAddress = address };

    public async Task<string> OpenAsync(string path)
    {
        using var answer = await _http.GetAsync(path);
        var text = await answer.Content.ReadAsStringAsync();
        return answer.StatusCode == HttpStatusCode.OK ? text : throw new InvalidOperationException($"{path} answered {(int)answer.StatusCode} to {answer.Headers.Location}.");
    }

    /// <summary>Sends a form that is answered by a redirect once it is saved; the length of the answer comes back, so that it is used.</summary>
    public async Task<int> SendAsync(string path, IEnumerable<KeyValuePair<string, string>> fields)
    {
        using var content = new FormUrlEncodedContent(fields);
        using var answer = await _http.PostAsync(path, content);
        if (answer.StatusCode != HttpStatusCode.Redirect)
            throw new InvalidOperationException($"{path} answered {(int)answer.StatusCode}: {await answer.Content.ReadAsStringAsync()}");
        return answer.Headers.Location!.OriginalString.Length;
    }

    /// <summary>The token that the forms of a page carry.</summary>
    public async Task<KeyValuePair<string, string>> TokenAsync(string path)
    {
        var found = TokenField().Match(await OpenAsync(path));
        return found.Success
            ? new(TokenName, WebUtility.HtmlDecode(found.Groups["value"].Value))
            : throw new InvalidOperationException($"{path} has no form with a token.");
    }

    public async Task SignInAsync(string email, string password) =>
        await SendAsync("/sign-in", [await TokenAsync("/sign-in"), new("Input.Email", email), new("Input.Password", password)]);

    public void Dispose() => _http.Dispose();

    private const string TokenName = "__RequestVerificationToken";

    [GeneratedRegex($"""<input name="{TokenName}" type="hidden" value="(?<value>[^"]+)""")]
    private static partial Regex TokenField();
}
