using Microsoft.AspNetCore.Mvc.RazorPages;

namespace CoopLessons.Web.Pages.Phone;

/// <summary>
/// The frame that a phone keeps: it says nothing of any family, and is the same for everybody. A script puts into it what
/// waits on this phone, or the page that was kept for the address.
/// </summary>
public sealed class IndexModel : PageModel;
