using CoopLessons.Data;
using CoopLessons.Data.Sealing;
using CoopLessons.Data.Tenancy;
using Microsoft.AspNetCore.Mvc;
using Microsoft.AspNetCore.Mvc.Filters;
using Microsoft.AspNetCore.Mvc.ModelBinding;
using Microsoft.AspNetCore.Mvc.ViewFeatures;
using Microsoft.EntityFrameworkCore;

namespace CoopLessons.Web.Sealing;

/// <summary>
/// Answers for every page whose save would have changed a sealed year: says so with what was sent, and lets a guardian send
/// it once more as a late correction. To a phone that sent what it had kept it says so, too, and the phone keeps it.
/// </summary>
internal sealed class SealRefusals : IAsyncExceptionFilter
{
    public async Task OnExceptionAsync(ExceptionContext context)
    {
        if (context.Exception is not SealedYearException refused)
            return;
        var http = context.HttpContext;
        var db = http.RequestServices.GetRequiredService<AppDb>();
        db.ChangeTracker.Clear();
        // The phone's answer takes its words from here.
        context.ModelState.Clear();
        context.ModelState.AddModelError("", $"{refused.Message} Give it a day of an open year, or send it by hand and say why it is corrected late.");
        var family = await db.Families.AsNoTracking().SingleAsync(http.RequestAborted);
        var data = new ViewDataDictionary<SealRefusal>(new EmptyModelMetadataProvider(), new ModelStateDictionary())
        {
            Model = SealRefusal.Of(refused, http.Request, db.Current.Role == Role.Guardian),
            ["Family"] = family.Name,
            ["Zone"] = family.TimeZone,
            ["Now"] = http.RequestServices.GetRequiredService<TimeProvider>().GetUtcNow().UtcDateTime,
            ["Place"] = "Records",
        };
        context.ExceptionHandled = true;
        if (http.Request.Headers.ContainsKey("HX-Request"))
        {
            // It stands in for the page rather than for the part that was to be swapped.
            http.Response.Headers["HX-Retarget"] = "#main";
            http.Response.Headers["HX-Reswap"] = "innerHTML show:window:top";
            context.Result = new PartialViewResult { ViewName = "_SealedYear", ViewData = data, StatusCode = StatusCodes.Status409Conflict };
            return;
        }

        context.Result = new ViewResult { ViewName = "_SealedYear", ViewData = data, StatusCode = StatusCodes.Status409Conflict };
    }
}
