using System.Diagnostics;
using Microsoft.AspNetCore.Mvc;
using Microsoft.AspNetCore.Mvc.RazorPages;

namespace CoopLessons.Web.Pages.Start;

/// <summary>A plain page with the number under which the log tells what went wrong.</summary>
[IgnoreAntiforgeryToken] // Shown in place of posts that broke; it changes nothing.
public sealed class ErrorModel : PageModel
{
    public string Number => Activity.Current?.TraceId.ToHexString() ?? HttpContext.TraceIdentifier;
}
