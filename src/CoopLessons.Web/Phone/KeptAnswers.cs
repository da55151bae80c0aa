using Microsoft.AspNetCore.Mvc;
using Microsoft.AspNetCore.Mvc.Core.Infrastructure;
using Microsoft.AspNetCore.Mvc.Filters;
using Microsoft.AspNetCore.Mvc.Infrastructure;
using Microsoft.AspNetCore.Mvc.ModelBinding;
using Microsoft.AspNetCore.Mvc.RazorPages;
using Microsoft.AspNetCore.Mvc.ViewFeatures;

namespace CoopLessons.Web.Phone;

/// <summary>A message and the field that it stands beside; an empty field for the form's head.</summary>
public sealed record KeptFault(string Field, string Says);

/// <summary>The server's own word on what a phone sent.</summary>
/// <param name="Item">The id that it was sent under.</param>
/// <param name="Saved">It is on the server, now or since an earlier sending.</param>
/// <param name="At">Where it can be looked at.</param>
/// <param name="Faults">Why it was not taken.</param>
/// <param name="StaleToken">The form's token was too old: the same once more with a new one.</param>
public sealed record KeptAnswer(Guid Item, bool Saved, string? At = null, IReadOnlyList<KeptFault>? Faults = null, bool StaleToken = false);

/// <summary>A page's own word on an item, for a script that asks it for more than whether it is saved. It names the item.</summary>
public sealed class OwnWord(object word) : JsonResult(word);

/// <summary>
/// Answers what a phone kept and sends now. It comes by the same path as a form that is sent at once, and the page answers
/// as it always does; here that answer becomes one that a script can tell from a stranger's.
/// </summary>
internal sealed class KeptAnswers : IAsyncAlwaysRunResultFilter, IOrderedFilter
{
    /// <summary>Before every other filter, so that what they answer is told as well.</summary>
    public int Order => int.MinValue;

    public Task OnResultExecutionAsync(ResultExecutingContext context, ResultExecutionDelegate next)
    {
        var request = context.HttpContext.Request;
        if (HttpMethods.IsPost(request.Method) && KeptItem.Of(request) is { } item && context.Result is not OwnWord)
        {
            context.HttpContext.Response.Headers[KeptItem.Header] = item.Id.ToString();
            if (item.At is not null)
                SayNothing(context);
            context.Result = Answer(context, item.Id);
        }

        return next();
    }

    private static IActionResult Answer(ResultExecutingContext context, Guid item)
    {
        var status = context.Result switch
        {
            PageResult page => page.StatusCode ?? context.HttpContext.Response.StatusCode,
            IStatusCodeActionResult { StatusCode: { } code } => code,
            _ => StatusCodes.Status200OK,
        };
        if (status == StatusCodes.Status421MisdirectedRequest)
            return new StatusCodeResult(status);
        if (status >= 400)
            return new JsonResult(Refused(context, item, status)) { StatusCode = status };
        var at = context.Result switch
        {
            LocalRedirectResult local => local.Url,
            RedirectResult redirect => redirect.Url,
            _ => null,
        };
        return new JsonResult(new KeptAnswer(item, true, at)) { StatusCode = StatusCodes.Status200OK };
    }

    private static KeptAnswer Refused(ResultExecutingContext context, Guid item, int status)
    {
        if (context.Result is IAntiforgeryValidationFailedResult)
            return new KeptAnswer(item, false, StaleToken: true);
        var faults = context.ModelState.SelectMany(s => s.Value!.Errors.Select(e => new KeptFault(s.Key, e.ErrorMessage))).Where(f => f.Says.Length > 0).ToList();
        if (faults.Count == 0)
            faults.Add(new KeptFault("", InWords(status)));
        return new KeptAnswer(item, false, Faults: faults);
    }

    /// <summary>Takes the sentence from the next page: behind what was sent late, nobody is on the way there.</summary>
    private static void SayNothing(ResultExecutingContext context) =>
        context.HttpContext.RequestServices.GetRequiredService<ITempDataDictionaryFactory>().GetTempData(context.HttpContext).Remove("Said");

    private static string InWords(int status) => status switch
    {
        StatusCodes.Status404NotFound => "What this belongs to is not there any more.",
        StatusCodes.Status403Forbidden => "Your sign-in may not do this.",
        StatusCodes.Status409Conflict => "Somebody changed this meanwhile.",
        StatusCodes.Status413PayloadTooLarge => "It is larger than the server takes.",
        _ => "The server could not read this.",
    };
}
