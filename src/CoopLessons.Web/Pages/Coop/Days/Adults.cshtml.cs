using System.ComponentModel.DataAnnotations;
using CoopLessons.Data;
using CoopLessons.Data.Coops;
using CoopLessons.Data.Coops.Days;
using CoopLessons.Data.People;
using CoopLessons.Web.Pages.Account;
using Microsoft.AspNetCore.Mvc;

namespace CoopLessons.Web.Pages.Coops;

/// <param name="Prefix">Of the ids on the page.</param>
public sealed record AdultFields(string Prefix, string Name, Guid? LivesWith, bool Guest, IReadOnlyList<CoopFamily> Others, string? Fault);

/// <summary>Each family names its own adults to the co-op.</summary>
public sealed class AdultsModel(AppDb db, TimeProvider clock) : TimetablePage(db, clock)
{
    public const int Most = 20;

    [BindProperty]
    public InputModel Input { get; set; } = new();

    public IReadOnlyList<CoopAdult> Own => [.. All.Where(a => a.FamilyId == Family.Id)];

    public IReadOnlyList<CoopAdult> Theirs => [.. All.Where(a => a.FamilyId != Family.Id && !a.Gone)];

    public IReadOnlyList<CoopFamily> Others { get; private set; } = [];

    private IEnumerable<CoopAdult> All => Table.Adults.Values.OrderBy(a => Table.Families[a.FamilyId].Name, StringComparer.OrdinalIgnoreCase).ThenBy(a => a.Name, StringComparer.OrdinalIgnoreCase);

    public async Task OnGetAsync()
    {
        await ListAsync();
        Input.NewId = Guid.CreateVersion7();
    }

    public async Task<IActionResult> OnPostAddAsync()
    {
        await ListAsync();
        if (Table.Adults.TryGetValue(Input.NewId, out var known))
            return known.FamilyId == Family.Id ? Back() : NotFound();
        if (Own.Count >= Most)
            ModelState.AddModelError("Input.Name", $"A family names at most {Most} adults.");
        if (!ModelState.IsValid || !Fits())
            return Again();
        var adult = new CoopAdult(CoopId, Family.Id, Input.NewId == Guid.Empty ? Guid.CreateVersion7() : Input.NewId, Input.Name!);
        adult.Describe(Input.Name!, Input.LivesWith, Input.Guest);
        Db.CoopAdults.Add(adult);
        return await SaveNewAsync() ? Back() : AgainAfterOthers("Input.Name");
    }

    public async Task<IActionResult> OnPostChangeAsync(Guid adultId, bool gone)
    {
        await ListAsync();
        if (Own.SingleOrDefault(a => a.Id == adultId) is not { } adult)
            return NotFound();
        if (!ModelState.IsValid || !Fits())
        {
            // The message stands at the head: the field beside it is the one for a new adult.
            var fault = ModelState["Input.Name"]?.Errors.FirstOrDefault()?.ErrorMessage ?? "Choose a family of the co-op.";
            ModelState.Clear();
            Input = new() { NewId = Guid.CreateVersion7() };
            return Refused("", $"{adult.Name}: {fault}");
        }

        adult.Describe(Input.Name!, Input.LivesWith, Input.Guest);
        if (gone)
            adult.Go();
        else
            adult.Return();
        if (!await SaveAsync())
        {
            await ListAsync();
            return Again(StatusCodes.Status409Conflict);
        }

        Say($"{adult.Name} is saved.");
        return Back();
    }

    private bool Fits()
    {
        if (Input.LivesWith is not { } with || Others.Any(f => f.FamilyId == with))
            return true;
        ModelState.AddModelError("Input.Name", "Choose a family of the co-op.");
        return false;
    }

    private LocalRedirectResult Back() => LocalRedirect($"{Here}/adults");

    private async Task ListAsync()
    {
        await ReadTableAsync();
        Others = [.. (await FamiliesAsync()).Where(f => f.FamilyId != Family.Id)];
    }

    public sealed class InputModel
    {
        public Guid NewId { get; set; }

        [Required(ErrorMessage = "Give a name.")]
        [StringLength(Person.LongestName, ErrorMessage = "A name has at most {1} signs.")]
        [Visible]
        public string? Name { get; set; }

        public Guid? LivesWith { get; set; }

        public bool Guest { get; set; }
    }
}
