using Microsoft.AspNetCore.Http.Features;
using Microsoft.AspNetCore.Mvc.Filters;

namespace CoopLessons.Web.Files;

/// <summary>
/// Refuses a form that says of itself that it is larger than a file may be, before anything of it is kept: the page is
/// shown as if it had been opened, and <see cref="Refused"/> tells it why.
/// </summary>
/// <param name="bytes">Of all files of the form together.</param>
[AttributeUsage(AttributeTargets.Class)]
public sealed class LargestUploadAttribute(long bytes) : Attribute, IAsyncAuthorizationFilter, IOrderedFilter
{
    public long Bytes => bytes;

    /// <summary>A form's other fields and the lines between them, in bytes.</summary>
    public const long Around = 100_000;

    // Browsers send the whole of a form before they read the answer, and show a broken connection where nobody takes it.
    private const long MostPassedOver = 200_000_000;
    private static readonly TimeSpan LongestPassingOver = TimeSpan.FromMinutes(1);

    /// <summary>Before the token of the form would be looked for in its body, and before the limit of the body is set.</summary>
    public int Order => 500;

    public static bool Refused(HttpContext context) => context.Items.ContainsKey(typeof(LargestUploadAttribute));

    public async Task OnAuthorizationAsync(AuthorizationFilterContext context)
    {
        var request = context.HttpContext.Request;
        if (!HttpMethods.IsPost(request.Method) || request.ContentLength is not { } length || length <= bytes + Around)
            return;
        context.HttpContext.Items[typeof(LargestUploadAttribute)] = true;
        await PassOverAsync(request);
        // What has no type is no form, so that nothing looks for fields in what was passed over.
        request.Method = HttpMethods.Get;
        request.ContentType = null;
    }

    private static async Task PassOverAsync(HttpRequest request)
    {
        // Whoever asks first has sent nothing yet, and need not.
        if (request.ContentLength > MostPassedOver || request.Headers.Expect.Count > 0)
            return;
        if (request.HttpContext.Features.Get<IHttpMaxRequestBodySizeFeature>() is { IsReadOnly: false } size)
            size.MaxRequestBodySize = MostPassedOver;
        using var limit = CancellationTokenSource.CreateLinkedTokenSource(request.HttpContext.RequestAborted);
        limit.CancelAfter(LongestPassingOver);
        try
        {
            await request.Body.CopyToAsync(Stream.Null, limit.Token);
        }
        catch (Exception fault) when (fault is IOException or OperationCanceledException && !request.HttpContext.RequestAborted.IsCancellationRequested)
        {
            // It comes too slowly or not whole; the answer is the same.
        }
    }
}
