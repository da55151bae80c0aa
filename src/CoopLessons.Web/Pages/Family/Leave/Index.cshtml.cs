using System.ComponentModel.DataAnnotations;
using System.Globalization;
using CoopLessons.Data;
using CoopLessons.Data.Families;
using CoopLessons.Data.Families.Going;
using CoopLessons.Data.People;
using CoopLessons.Web.Hosting;
using CoopLessons.Web.Pages.Today;
using CoopLessons.Web.Security;
using Microsoft.AspNetCore.Identity;
using Microsoft.AspNetCore.Mvc;
using Microsoft.AspNetCore.RateLimiting;
using Microsoft.EntityFrameworkCore;

namespace CoopLessons.Web.Pages.Families;

/// <summary>A guardian asks that everything of the family be deleted in a week; any guardian stops it.</summary>
[EnableRateLimiting(Access.Brake)]
public sealed class LeaveModel(AppDb db, TimeProvider clock, UserManager<Person> people, ServerSettings settings) : FamilyPage(db, clock)
{
    [BindProperty]
    [StringLength(Data.Families.Family.LongestName, ErrorMessage = "A family's name has at most {1} signs.")]
    public string? Name { get; set; }

    [BindProperty]
    [StringLength(SignIns.LongestPassword, ErrorMessage = "A password has at most {1} signs.")]
    [DataType(DataType.Password)]
    public string? Password { get; set; }

    /// <summary>The receipt's address; shown once, since the server keeps only its hash.</summary>
    public string? Receipt { get; private set; }

    public string Children { get; private set; } = "";

    public string DayOf(DateTime at) => Family.Local(at).ToString("dddd d MMMM yyyy, HH:mm", CultureInfo.InvariantCulture);

    public Task OnGetAsync() => ListAsync();

    public async Task<IActionResult> OnPostAskAsync()
    {
        await ListAsync();
        if (Family.LeavesAt is not null)
            return LocalRedirect("/family/leave");
        if (!string.Equals(Name?.Trim(), Family.Name, StringComparison.OrdinalIgnoreCase))
            ModelState.AddModelError(nameof(Name), $"This is not the family’s name. It is “{Family.Name}”.");
        var person = (await people.GetUserAsync(User))!;
        if (ModelState.IsValid && !await people.CheckPasswordAsync(person, Password ?? ""))
            ModelState.AddModelError(nameof(Password), "This is not your password.");
        if (!ModelState.IsValid)
            return Again();
        var secret = Invitation.NewSecret();
        var receipt = new LeavingReceipt(secret, Family.Id, Now);
        Db.LeavingReceipts.Add(receipt);
        Family.AskToLeave((await AuthorAsync()).Name, receipt.DueAt);
        if (!await SaveAsync())
            return Again(StatusCodes.Status409Conflict);
        Receipt = settings.AddressOf(Request, $"/receipt/{secret}");
        return Page();
    }

    /// <summary>The day has come: rows and files are being deleted.</summary>
    public bool IsDue => Family.LeavesAt <= Now;

    public async Task<IActionResult> OnPostStopAsync()
    {
        ModelState.Clear();
        if (IsDue)
        {
            // Files may be gone already: to say that nothing is deleted would be no truth.
            ModelState.AddModelError("", "The week is over, and everything is being deleted. It can no longer be stopped.");
            await ListAsync();
            return Again(StatusCodes.Status409Conflict);
        }

        await using var transaction = await Db.Database.BeginTransactionAsync(Ct);
        var family = Family.Id;
        var now = Now;
        await Db.LeavingReceipts.Where(r => r.FamilyId == family && r.DoneAt == null && r.DueAt > now)
            .ExecuteUpdateAsync(s => s.SetProperty(r => r.StoppedAt, now).SetProperty(r => r.FamilyId, (Guid?)null), Ct);
        Family.Stay();
        if (!await SaveAsync())
        {
            await ListAsync();
            return Again(StatusCodes.Status409Conflict);
        }

        await transaction.CommitAsync(Ct);
        Say("It is stopped. Nothing is deleted.");
        return LocalRedirect("/family");
    }

    private async Task ListAsync()
    {
        var names = await Db.Learners.AsNoTracking().OrderBy(l => l.Order).Select(l => l.Name).ToListAsync(Ct);
        Children = names.Count == 0 ? "the family" : DayWords.Names(names);
    }
}
