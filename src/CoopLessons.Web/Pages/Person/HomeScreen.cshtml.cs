using Microsoft.AspNetCore.Mvc.RazorPages;

namespace CoopLessons.Web.Pages.People;

/// <summary>How the day comes onto a phone's home screen, and what is kept there.</summary>
public sealed class HomeScreenModel : PageModel;
