using System.Text.Json;
using CoopLessons.Data;
using CoopLessons.Data.Travel;
using Microsoft.AspNetCore.Mvc;
using Microsoft.AspNetCore.Mvc.RazorPages;

namespace CoopLessons.Web.Pages.Families.Out;

/// <summary>The rules of the rows in a family's file, as a JSON Schema.</summary>
public sealed class SchemaModel(AppDb db) : PageModel
{
    private static readonly JsonSerializerOptions Readable = new() { WriteIndented = true };

    public IActionResult OnGet() => Content(TravelSchema.Of(db.Model).ToJsonString(Readable), "application/schema+json; charset=utf-8");
}
