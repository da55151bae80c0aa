using System.ComponentModel.DataAnnotations;
using CoopLessons.Data;
using CoopLessons.Data.OwnLists;
using CoopLessons.Web.Security;
using Microsoft.AspNetCore.Mvc;
using Microsoft.AspNetCore.RateLimiting;
using Microsoft.EntityFrameworkCore;

namespace CoopLessons.Web.Pages.Tablets;

/// <summary>A child's PIN opens the child's list.</summary>
[EnableRateLimiting(Access.Brake)]
public sealed class OpenModel(AppDb db, TimeProvider clock, ChildPins pins) : TabletPage(db, clock)
{
    private OwnList? _list;

    [BindProperty]
    [DataType(DataType.Password)]
    public string? Pin { get; set; }

    public string Name { get; private set; } = "";

    public bool HasPin => _list?.HasPin == true;

    public async Task<IActionResult> OnGetAsync(Guid learnerId) => await FindAsync(learnerId) is null ? NotFound() : Page();

    public async Task<IActionResult> OnPostAsync(Guid learnerId)
    {
        if (await FindAsync(learnerId) is not { } tablet)
            return NotFound();
        if (_list is not { HasPin: true } list)
            return LocalRedirect($"/tablet/{learnerId}");
        if (list.IsWaiting(Now))
            return Resting(list);
        if (Pin is not { Length: >= OwnList.ShortestPin and <= OwnList.LongestPin })
            return Refused("Type all the digits of your PIN.");
        list.Try(Now);
        // Of tries that are made at once, one is looked at.
        if (!await SaveNewAsync())
            return Refused("Two tries came at once. Try again.");
        if (!pins.Fits(list.Pin, Pin))
            return list.IsWaiting(Now) ? Resting(list) : Refused("That is not your PIN. Try once more; a grown-up can give you a new one.");
        list.Opened();
        tablet.Open(learnerId, Now);
        return await SaveNewAsync() ? LocalRedirect("/mine") : Refused("Two tries came at once. Try again.");
    }

    private IActionResult Resting(OwnList list)
    {
        var until = Family.Local(new DateTimeOffset(list.WaitsUntil!.Value, TimeSpan.Zero));
        // To the full minute after, so that the clock on the wall is right.
        return Refused($"That did not fit a few times, so the PIN has a rest until {until.AddSeconds(59):H:mm}. A grown-up can give you a new one.", StatusCodes.Status429TooManyRequests);
    }

    private IActionResult Refused(string why, int status = StatusCodes.Status422UnprocessableEntity)
    {
        ModelState.Remove(nameof(Pin));
        ModelState.AddModelError(nameof(Pin), why);
        Pin = null;
        return Again(status);
    }

    /// <summary>The tablet, where it shows this child's name; null elsewhere.</summary>
    private async Task<FamilyTablet?> FindAsync(Guid learnerId)
    {
        var tablet = await TabletAsync();
        if ((await ChildrenAsync(tablet)).FirstOrDefault(c => c.Id == learnerId) is not { } child)
            return null;
        Name = child.Name;
        _list = await Db.OwnLists.SingleOrDefaultAsync(l => l.LearnerId == learnerId, Ct);
        return tablet;
    }
}
