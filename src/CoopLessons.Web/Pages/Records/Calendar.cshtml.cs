using CoopLessons.Data;
using CoopLessons.Data.Families;
using CoopLessons.Data.Requirements;
using CoopLessons.Web.Hosting;
using Microsoft.AspNetCore.Mvc;
using Microsoft.EntityFrameworkCore;

namespace CoopLessons.Web.Pages.Records;

/// <summary>The secret address at which a calendar program reads the family's due dates: made, renewed, ended.</summary>
public sealed class CalendarModel(AppDb db, TimeProvider clock, ServerSettings settings) : FamilyPage(db, clock)
{
    /// <summary>The one that answers now.</summary>
    public CalendarAddress? Present { get; private set; }

    /// <summary>Shown this once.</summary>
    public string? Link { get; private set; }

    /// <summary>Of the co-op's notices, shown this once; null where the address tells of none.</summary>
    public string? FeedLink { get; private set; }

    public bool IsInCoop => Db.Current.Coops.Count > 0;

    public async Task OnGetAsync() => Present = (await OpenAsync()).FirstOrDefault();

    /// <summary>Makes an address; one that answered before ends.</summary>
    public async Task<IActionResult> OnPostMakeAsync(bool withNames, bool withCoops)
    {
        ModelState.Clear();
        await EndAllAsync();
        var secret = Invitation.NewSecret();
        Db.CalendarAddresses.Add(new CalendarAddress(Guid.CreateVersion7(), secret, withNames, Now, withCoops));
        if (!await SaveAsync())
        {
            Present = (await OpenAsync()).FirstOrDefault();
            return Again(StatusCodes.Status409Conflict);
        }

        Link = settings.AddressOf(Request, $"/calendar/{secret}.ics");
        FeedLink = withCoops ? settings.AddressOf(Request, $"/calendar/{secret}.atom") : null;
        Present = (await OpenAsync()).FirstOrDefault();
        return Page();
    }

    public async Task<IActionResult> OnPostEndAsync()
    {
        await EndAllAsync();
        if (!await SaveAsync())
        {
            Present = (await OpenAsync()).FirstOrDefault();
            return Again(StatusCodes.Status409Conflict);
        }

        Say("The address no longer answers.");
        return RedirectToPage();
    }

    // Two that were made in the same moment both end.
    private async Task EndAllAsync()
    {
        foreach (var address in await OpenAsync())
            address.End(Now);
    }

    private Task<List<CalendarAddress>> OpenAsync() => Db.CalendarAddresses.Where(a => a.EndedAt == null).OrderByDescending(a => a.MadeAt).ToListAsync(Ct);
}
