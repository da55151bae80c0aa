using CoopLessons.Data;
using CoopLessons.Data.Families;
using CoopLessons.Data.OwnLists;
using CoopLessons.Data.People;
using CoopLessons.Web.Pages.People;
using CoopLessons.Web.Pages.Today;
using CoopLessons.Web.Security;
using Microsoft.AspNetCore.Identity;
using Microsoft.AspNetCore.Mvc;
using Microsoft.EntityFrameworkCore;

namespace CoopLessons.Web.Pages.Families.Lists;

/// <summary>A tablet as the family sees it.</summary>
public sealed record TabletRow(Guid Id, string Name, string Names, string Since, string Until);

/// <summary>Turns the device at hand into the family's tablet, and ends tablets.</summary>
public sealed class TabletModel(AppDb db, TimeProvider clock, TabletDoor tablets, SignInManager<Person> signIns) : FamilyPage(db, clock)
{
    public const int MostTablets = 20;

    /// <summary>Whose names the tablet is to show.</summary>
    [BindProperty]
    public List<Guid> Learners { get; set; } = [];

    public IReadOnlyList<Learner> Choices { get; private set; } = [];

    public IReadOnlyList<TabletRow> Tablets { get; private set; } = [];

    public Task OnGetAsync() => LoadAsync();

    public async Task<IActionResult> OnPostMakeAsync()
    {
        await LoadAsync();
        if (Learners.Any(id => Choices.All(c => c.Id != id)))
            return NotFound();
        if (Learners.Count == 0)
            ModelState.AddModelError(nameof(Learners), "Tick at least one child.");
        if (Tablets.Count >= MostTablets)
            ModelState.AddModelError(nameof(Learners), $"{MostTablets} devices open the lists already. End one first.");
        if (!ModelState.IsValid)
            return Again();
        await tablets.TurnAsync(HttpContext, Now, (key, device) => FamilyTablet.Shared(Guid.CreateVersion7(), key, Db.Current.PersonId!.Value, device, Learners, Now));
        await signIns.SignOutAsync();
        return LocalRedirect("/tablet");
    }

    public async Task<IActionResult> OnPostEndAsync(Guid tabletId)
    {
        if (await Db.FamilyTablets.SingleOrDefaultAsync(t => t.Id == tabletId, Ct) is not { } tablet)
            return NotFound();
        Db.FamilyTablets.Remove(tablet);
        // Ended by somebody else in this moment, it is ended.
        await SaveNewAsync();
        Say("No list opens on that device any more.");
        return RedirectToPage();
    }

    private async Task LoadAsync()
    {
        var names = await Db.Learners.AsNoTracking().OrderBy(l => l.Order).ThenBy(l => l.Id).ToListAsync(Ct);
        var listed = await Db.OwnLists.AsNoTracking().Where(l => l.Shown && l.Pin != "").Select(l => l.LearnerId).ToListAsync(Ct);
        Choices = [.. names.Where(l => !l.SetAside && listed.Contains(l.Id))];
        Tablets = [.. (await Db.FamilyTablets.AsNoTracking().Where(t => t.EndsAt > Now).OrderByDescending(t => t.MadeAt).ToListAsync(Ct)).Select(t => new TabletRow(
            t.Id, Device.NameOf(t.Device), DayWords.Names(names.Where(n => t.Learners.Contains(n.Id)).Select(n => n.Name)),
            Family.Local(new DateTimeOffset(t.MadeAt, TimeSpan.Zero)).ToString("d MMMM yyyy, H:mm"),
            t.Lent ? $"lent until {Family.Local(new DateTimeOffset(t.EndsAt, TimeSpan.Zero)):H:mm}" : $"ends {Family.Local(new DateTimeOffset(t.EndsAt, TimeSpan.Zero)):d MMMM} unless it is used"))];
    }
}
