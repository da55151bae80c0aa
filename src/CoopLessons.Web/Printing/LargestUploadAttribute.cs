using CoopLessons.Documents.Uploads;
using Microsoft.AspNetCore.Mvc.Filters;

namespace CoopLessons.Web.Printing;

/// <summary>
/// Refuses a form that says of itself that it is larger than a file may be, before anything of it is read: the page is
/// shown as if it had been opened, and <see cref="Refused"/> tells it why.
/// </summary>
[AttributeUsage(AttributeTargets.Class)]
public sealed class LargestUploadAttribute : Attribute, IAuthorizationFilter, IOrderedFilter
{
    /// <summary>A form's other fields and the lines between them, in bytes.</summary>
    public const long Around = 100_000;

    /// <summary>Before the token of the form would be looked for in its body.</summary>
    public int Order => 500;

    public static bool Refused(HttpContext context) => context.Items.ContainsKey(typeof(LargestUploadAttribute));

    public void OnAuthorization(AuthorizationFilterContext context)
    {
        var request = context.HttpContext.Request;
        if (!HttpMethods.IsPost(request.Method) || request.ContentLength is not > PrintableFile.MostBytes + Around)
            return;
        context.HttpContext.Items[typeof(LargestUploadAttribute)] = true;
        request.Method = HttpMethods.Get;
    }
}
