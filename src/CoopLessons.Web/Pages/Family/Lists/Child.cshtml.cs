using System.ComponentModel.DataAnnotations;
using CoopLessons.Data;
using CoopLessons.Data.Families;
using CoopLessons.Data.OwnLists;
using CoopLessons.Data.People;
using CoopLessons.Web.Security;
using Microsoft.AspNetCore.Identity;
using Microsoft.AspNetCore.Mvc;
using Microsoft.EntityFrameworkCore;

namespace CoopLessons.Web.Pages.Families.Lists;

/// <summary>One child's list: whether there is one, how it reads, its PIN, and opening it on this device for a while.</summary>
public sealed class ChildModel(AppDb db, TimeProvider clock, ChildPins pins, TabletDoor tablets, SignInManager<Person> signIns) : FamilyPage(db, clock)
{
    private OwnList? _list;

    [BindProperty]
    public InputModel Input { get; set; } = new();

    public Learner Learner { get; private set; } = null!;

    public bool HasPin => _list?.HasPin == true;
    public bool IsShown => _list?.Shown == true;
    public bool IsWaiting => _list?.IsWaiting(Now) == true;

    public async Task<IActionResult> OnGetAsync(Guid learnerId)
    {
        if (!await FindAsync(learnerId))
            return NotFound();
        Input = new InputModel { Shown = IsShown, Reading = _list?.Reading ?? ReadingLevel.AllWords };
        return Page();
    }

    public async Task<IActionResult> OnPostSaveAsync(Guid learnerId)
    {
        if (!await FindAsync(learnerId))
            return NotFound();
        if (Input.Pin is { Length: > 0 } pin && ListWords.Fault(pin) is { } fault)
            ModelState.AddModelError("Input.Pin", fault);
        if (!ModelState.IsValid)
            return Again();
        var list = _list ?? Db.OwnLists.Add(new OwnList(learnerId)).Entity;
        list.Describe(Input.Shown, Input.Reading);
        if (Input.Pin is { Length: > 0 } digits)
            list.SetPin(pins.Keep(digits));
        return await SaveNewAsync() ? Saved($"The list of {Learner.Name} is saved.") : await OvertakenAsync(learnerId);
    }

    public async Task<IActionResult> OnPostForgetPinAsync(Guid learnerId)
    {
        if (!await FindAsync(learnerId))
            return NotFound();
        ModelState.Clear();
        _list?.SetPin("");
        return await SaveNewAsync() ? Saved($"The PIN of {Learner.Name} is forgotten.") : await OvertakenAsync(learnerId);
    }

    /// <summary>The guardian's own sign-in here ends, so that the list is all that this device opens.</summary>
    public async Task<IActionResult> OnPostLendAsync(Guid learnerId)
    {
        if (!await FindAsync(learnerId))
            return NotFound();
        ModelState.Clear();
        if (!IsShown || Learner.SetAside)
        {
            Input.Reading = _list?.Reading ?? ReadingLevel.AllWords;
            ModelState.AddModelError("", $"{Learner.Name} has no list yet. Turn it on first.");
            return Again();
        }

        await tablets.TurnAsync(HttpContext, Now, (key, device) => FamilyTablet.LentTo(learnerId, Guid.CreateVersion7(), key, Db.Current.PersonId!.Value, device, Now));
        await signIns.SignOutAsync();
        return LocalRedirect("/mine");
    }

    private RedirectToPageResult Saved(string sentence)
    {
        Say(sentence);
        return RedirectToPage("/Family/Lists/Index");
    }

    private async Task<IActionResult> OvertakenAsync(Guid learnerId)
    {
        await FindAsync(learnerId);
        return AgainAfterOthers();
    }

    private async Task<bool> FindAsync(Guid learnerId)
    {
        if (await Db.Learners.SingleOrDefaultAsync(l => l.Id == learnerId, Ct) is not { } learner)
            return false;
        Learner = learner;
        _list = await Db.OwnLists.SingleOrDefaultAsync(l => l.LearnerId == learnerId, Ct);
        return true;
    }

    public sealed class InputModel
    {
        public bool Shown { get; set; }

        [EnumDataType(typeof(ReadingLevel), ErrorMessage = "Choose how the list reads.")]
        public ReadingLevel Reading { get; set; } = ReadingLevel.AllWords;

        [StringLength(20, ErrorMessage = "A PIN has 4 to 6 digits.")]
        public string? Pin { get; set; }
    }
}
