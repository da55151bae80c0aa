using System.Net.Http.Headers;
using System.Text.Json;
using CoopLessons.Web.Phone;
using CoopLessons.Web.Tests.App;

namespace CoopLessons.Web.Tests.Phone;

/// <summary>A form as a phone sends it that kept it: the fields of a page, an id, and when it was written.</summary>
public static class KeptForm
{
    private static readonly JsonSerializerOptions Web = new(JsonSerializerDefaults.Web);

    /// <summary>The server's word, and its status.</summary>
    public sealed record Word(int Status, KeptAnswer? Answer, HttpResponseHeaders Headers);

    /// <param name="family">For which it was done; null leaves it out.</param>
    public static async Task<Word> SendAsync(this Visitor visitor, string path, IEnumerable<KeyValuePair<string, string>> fields, Guid id, DateTimeOffset? at = null, Guid? family = null)
    {
        using var request = new HttpRequestMessage(HttpMethod.Post, path) { Content = new FormUrlEncodedContent(fields) };
        request.Headers.Add(KeptItem.Header, id.ToString());
        if (at is { } written)
            request.Headers.Add(KeptItem.AtHeader, written.ToString("O"));
        if (family is { } whose)
            request.Headers.Add(KeptItem.FamilyHeader, whose.ToString());
        using var answer = await visitor.SendAsync(request);
        var text = await answer.Content.ReadAsStringAsync();
        var word = text.StartsWith('{') && text.Contains("\"item\"", StringComparison.Ordinal) ? JsonSerializer.Deserialize<KeptAnswer>(text, Web) : null;
        return new Word((int)answer.StatusCode, word, answer.Headers);
    }

    /// <summary>Whom the server knows, and a token for what is sent next.</summary>
    public static async Task<JsonElement> HereAsync(this Visitor visitor)
    {
        using var answer = await visitor.OpenAsync("/phone/here");
        answer.EnsureSuccessStatusCode();
        return JsonDocument.Parse(await answer.Content.ReadAsStringAsync()).RootElement.Clone();
    }
}
