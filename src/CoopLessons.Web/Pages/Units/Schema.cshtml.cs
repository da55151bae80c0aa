using CoopLessons.Data.Units;
using Microsoft.AspNetCore.Mvc;
using Microsoft.AspNetCore.Mvc.RazorPages;

namespace CoopLessons.Web.Pages.Units;

/// <summary>The rules of a bundle file, as a JSON Schema.</summary>
public sealed class SchemaModel : PageModel
{
    public IActionResult OnGet() => Content(BundleFile.SchemaText(), "application/schema+json; charset=utf-8");
}
