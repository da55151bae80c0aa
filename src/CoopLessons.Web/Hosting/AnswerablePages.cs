using Microsoft.AspNetCore.Diagnostics;
using Microsoft.AspNetCore.Mvc;
using Microsoft.AspNetCore.Mvc.Filters;

namespace CoopLessons.Web.Hosting;

/// <summary>
/// A page answers the methods for which it has a handler: without one it would be written from a model that nothing was
/// read into. An address with a part in which nothing is left once control characters are gone is nowhere.
/// </summary>
internal sealed class AnswerablePages : IPageFilter
{
    public void OnPageHandlerSelected(PageHandlerSelectedContext context) { }

    public void OnPageHandlerExecuting(PageHandlerExecutingContext context)
    {
        // A page that stands in for a refusal keeps the refusal's status.
        if (context.HttpContext.Features.Get<IStatusCodeReExecuteFeature>() is not null)
            return;
        if (LacksHandler(context))
            context.Result = new StatusCodeResult(StatusCodes.Status405MethodNotAllowed);
        else if (LacksPart(context))
            context.Result = new NotFoundResult();
    }

    public void OnPageHandlerExecuted(PageHandlerExecutedContext context) { }

    // The framework answers OPTIONS itself, with nothing.
    private static bool LacksHandler(PageHandlerExecutingContext context) =>
        context.HandlerMethod is null && context.ActionDescriptor.HandlerMethods.Count > 0
        && context.HttpContext.Request.Method is var method && !HttpMethods.IsGet(method) && !HttpMethods.IsHead(method) && !HttpMethods.IsOptions(method);

    private static bool LacksPart(PageHandlerExecutingContext context) => context.HandlerMethod?.Parameters.Any(p =>
        p.ParameterType == typeof(string) && context.RouteData.Values.ContainsKey(p.Name)
        && (!context.HandlerArguments.TryGetValue(p.Name, out var value) || value is null)) == true;
}
