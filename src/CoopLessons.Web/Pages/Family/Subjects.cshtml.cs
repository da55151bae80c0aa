using System.ComponentModel.DataAnnotations;
using CoopLessons.Data;
using CoopLessons.Data.Families;
using CoopLessons.Web.Pages.Account;
using Microsoft.AspNetCore.Mvc;
using Microsoft.EntityFrameworkCore;

namespace CoopLessons.Web.Pages.Families;

/// <summary>The family's subjects: their order, their names, which are taught.</summary>
public sealed class SubjectsModel(AppDb db, TimeProvider clock) : FamilyPage(db, clock)
{
    public const int Most = 60;

    /// <summary>A subject to be added.</summary>
    // Named, or a form without these fields would be read as if it had them by their bare names.
    [BindProperty(Name = nameof(Add))]
    public AddInput Add { get; set; } = new();

    /// <summary>A subject to be renamed.</summary>
    [BindProperty(Name = nameof(Renamed))]
    public RenameInput Renamed { get; set; } = new();

    public IReadOnlyList<FamilySubject> Subjects { get; private set; } = [];

    public Task OnGetAsync() => ListAsync();

    public async Task<IActionResult> OnPostAddAsync()
    {
        await ListAsync();
        CheckOnly(nameof(Add));
        if (Add.Id != Guid.Empty && Subjects.Any(s => s.Id == Add.Id))
            return RedirectToPage();
        if (Bears(Add.Name, except: null))
            ModelState.AddModelError("Add.Name", "There is a subject of this name already.");
        else if (Subjects.Count >= Most)
            ModelState.AddModelError("Add.Name", $"More than {Most} subjects are not kept. Retired ones can be renamed and returned.");
        if (!ModelState.IsValid)
            return Again();
        var subject = new FamilySubject(Add.Id == Guid.Empty ? Guid.CreateVersion7() : Add.Id, SubjectCodes.For(Add.Name, Subjects.Select(s => s.Code)), Add.Name, Subjects.Max(s => (int?)s.Order + 1) ?? 0);
        Db.Subjects.Add(subject);
        if (!await SaveNewAsync())
        {
            await ListAsync();
            // Its code may be taken now, though its name is not; the next sending finds another.
            if (Subjects.All(s => s.Id != Add.Id))
                return AgainAfterOthers("Add.Name");
        }

        Say($"{subject.Name} is added at the end of the list.");
        return RedirectToPage();
    }

    public async Task<IActionResult> OnPostRenameAsync(Guid id)
    {
        await ListAsync();
        CheckOnly(nameof(Renamed));
        if (Subjects.SingleOrDefault(s => s.Id == id) is not { } subject)
            return NotFound();
        Renamed.Id = id;
        if (Bears(Renamed.Name, except: id))
            ModelState.AddModelError("Renamed.Name", "There is a subject of this name already.");
        if (!ModelState.IsValid)
            return Again();
        subject.Rename(Renamed.Name);
        Expect(subject, Renamed.Version);
        if (!await SaveAsync())
        {
            await ListAsync();
            return Again(StatusCodes.Status409Conflict);
        }

        Say($"The subject is called {Renamed.Name} now, in the records, too.");
        return RedirectToPage();
    }

    public Task<IActionResult> OnPostUpAsync(Guid id) => MoveAsync(id, -1);

    public Task<IActionResult> OnPostDownAsync(Guid id) => MoveAsync(id, +1);

    public Task<IActionResult> OnPostRetireAsync(Guid id) => ChangeAsync(id, s => s.Retire(), s => $"{s.Name} is retired. What was logged keeps it.");

    public Task<IActionResult> OnPostReturnAsync(Guid id) => ChangeAsync(id, s => s.Return(), s => $"{s.Name} is taught again.");

    private async Task<IActionResult> MoveAsync(Guid id, int by)
    {
        await ListAsync();
        var list = Subjects.ToList();
        var at = list.FindIndex(s => s.Id == id);
        if (at < 0)
            return NotFound();
        // Among those that are taught; the retired stand apart.
        var to = at;
        do to += by;
        while (to >= 0 && to < list.Count && list[to].Retired != list[at].Retired);
        if (to >= 0 && to < list.Count)
            (list[at], list[to]) = (list[to], list[at]);
        foreach (var (order, subject) in list.Index())
            subject.StandAt(order);
        return await ChangedAsync($"{list.First(s => s.Id == id).Name} is moved.");
    }

    private async Task<IActionResult> ChangeAsync(Guid id, Action<FamilySubject> verb, Func<FamilySubject, string> sentence)
    {
        await ListAsync();
        if (Subjects.SingleOrDefault(s => s.Id == id) is not { } subject)
            return NotFound();
        verb(subject);
        return await ChangedAsync(sentence(subject));
    }

    private async Task<IActionResult> ChangedAsync(string sentence)
    {
        ModelState.Clear();
        var saved = await SaveAsync();
        await ListAsync();
        if (Request.IsHtmx())
            return Fragment("_SubjectList", this, saved ? StatusCodes.Status200OK : StatusCodes.Status409Conflict);
        if (!saved)
            return Again(StatusCodes.Status409Conflict);
        Say(sentence);
        return RedirectToPage();
    }

    private async Task ListAsync()
    {
        Subjects = await Db.Subjects.OrderBy(s => s.Order).ThenBy(s => s.Name).ToListAsync(Ct);
        if (HttpMethods.IsGet(Request.Method))
            Add.Id = Guid.CreateVersion7();
    }

    /// <summary>Each form of the page is checked by itself.</summary>
    private void CheckOnly(string form)
    {
        foreach (var key in ModelState.Keys.Where(k => k.StartsWith(form == nameof(Add) ? nameof(Renamed) : nameof(Add), StringComparison.Ordinal)).ToList())
            ModelState.Remove(key);
    }

    private bool Bears(string name, Guid? except) =>
        Subjects.Any(s => s.Id != except && string.Equals(s.Name, name, StringComparison.OrdinalIgnoreCase));

    public sealed class AddInput
    {
        /// <summary>Made with the form, so that a form sent twice adds one subject.</summary>
        public Guid Id { get; set; }

        [Required(ErrorMessage = "Give the subject a name.")]
        [StringLength(FamilySubject.LongestName, ErrorMessage = "A subject’s name has at most {1} signs.")]
        [Visible]
        public string Name { get; set; } = "";
    }

    public sealed class RenameInput
    {
        internal Guid Id { get; set; }

        [Required(ErrorMessage = "Give the subject a name.")]
        [StringLength(FamilySubject.LongestName, ErrorMessage = "A subject’s name has at most {1} signs.")]
        [Visible]
        public string Name { get; set; } = "";

        public int Version { get; set; }
    }
}
