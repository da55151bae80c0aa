using System.ComponentModel.DataAnnotations;
using CoopLessons.Core.Coop;
using CoopLessons.Data;
using CoopLessons.Data.Coops.Days;
using CoopLessons.Data.Coops.Turns;
using CoopLessons.Web.Pages.Account;
using Microsoft.AspNetCore.Mvc;
using Microsoft.EntityFrameworkCore;

namespace CoopLessons.Web.Pages.Coops;

/// <summary>A role as its form holds it.</summary>
public sealed class RoleInput
{
    public Guid NewId { get; set; }

    [Required(ErrorMessage = "Give the role a name, such as Teaching.")]
    [StringLength(TurnRole.LongestName, ErrorMessage = "A name has at most {1} signs.")]
    [Visible]
    public string Name { get; set; } = "";

    [Required(ErrorMessage = "Say what one turn counts.")]
    [Range(1, RotaProblemFaults.MostWeight, ErrorMessage = "A turn counts {1} to {2}.")]
    public int? Weight { get; set; } = 1;

    [Required(ErrorMessage = "Say how many have it at each meeting.")]
    [Range(1, RotaProblemFaults.MostAdults, ErrorMessage = "From {1} to {2} adults have a role.")]
    public int? Places { get; set; } = 1;

    public Guid? RoomId { get; set; }

    public bool ForAll { get; set; } = true;

    public List<Guid> May { get; set; } = [];

    public int Version { get; set; }

    public static RoleInput Of(TurnRole role) =>
        new() { Name = role.Name, Weight = role.Weight, Places = role.Places, RoomId = role.RoomId, ForAll = role.ForAll, May = role.May, Version = role.Version };
}

/// <summary>What a role's form offers.</summary>
public sealed record RoleFields(RoleInput Input, IReadOnlyList<CoopRoom> Rooms, IReadOnlyList<(CoopAdult Adult, string Family)> Adults);

/// <summary>A page that writes roles; for leaders.</summary>
public abstract class RoleFormPage(AppDb db, TimeProvider clock) : CoopPage(db, clock)
{
    [BindProperty]
    public RoleInput Input { get; set; } = new();

    public IReadOnlyList<CoopRoom> Rooms { get; private set; } = [];

    public IReadOnlyList<(CoopAdult Adult, string Family)> Adults { get; private set; } = [];

    public RoleFields Fields => new(Input, Rooms, Adults);

    protected override bool IsForLeaders => true;

    protected async Task ListAsync()
    {
        var families = (await FamiliesAsync()).ToDictionary(f => f.FamilyId, f => f.Name);
        Rooms = await Db.CoopRooms.AsNoTracking().Where(r => r.CoopId == CoopId).OrderBy(r => r.Name).ToListAsync(Ct);
        Adults = [.. (await Db.CoopAdults.AsNoTracking().Where(a => a.CoopId == CoopId && !a.Gone).ToListAsync(Ct)).Where(a => families.ContainsKey(a.FamilyId))
            .Select(a => (a, families[a.FamilyId])).OrderBy(a => a.Item2, StringComparer.OrdinalIgnoreCase).ThenBy(a => a.a.Name, StringComparer.OrdinalIgnoreCase)];
    }

    /// <summary>What was typed; null with messages beside the fields where something is wrong.</summary>
    protected TurnRoleFacts? Facts()
    {
        if (Input.RoomId is { } room && Rooms.All(r => r.Id != room))
            ModelState.AddModelError("Input.RoomId", "This room is no longer there. Choose another.");
        if (!Input.ForAll && !Input.May.Any(id => Adults.Any(a => a.Adult.Id == id)))
            ModelState.AddModelError("Input.May", "Choose who may have it, or let everybody.");
        return ModelState.IsValid
            ? new TurnRoleFacts(Input.Name, Input.Weight!.Value, Input.Places!.Value, Input.RoomId, Input.ForAll, [.. Input.May.Where(id => Adults.Any(a => a.Adult.Id == id)).Distinct()])
            : null;
    }
}

/// <summary>The roles that turn.</summary>
public sealed class RolesModel(AppDb db, TimeProvider clock) : RoleFormPage(db, clock)
{
    public IReadOnlyList<TurnRole> Roles { get; private set; } = [];

    public async Task OnGetAsync()
    {
        await LoadAsync();
        Input.NewId = Guid.CreateVersion7();
    }

    public async Task<IActionResult> OnPostAsync()
    {
        await LoadAsync();
        if (Input.NewId == Guid.Empty)
            return BadRequest();
        if (await Db.TurnRoles.AnyAsync(r => r.CoopId == CoopId && r.Id == Input.NewId, Ct))
            return LocalRedirect($"/coop/{CoopId}/turns/roles");
        if (Roles.Count >= TurnRole.Most)
            ModelState.AddModelError("Input.Name", $"A rota has at most {TurnRole.Most} roles. End one first.");
        if (Roles.Any(r => string.Equals(r.Name, Input.Name, StringComparison.OrdinalIgnoreCase)))
            ModelState.AddModelError("Input.Name", "There is a role of this name.");
        if (Facts() is not { } facts)
            return Again();
        Db.TurnRoles.Add(new TurnRole(CoopId, Input.NewId, Roles.Select(r => r.Order).DefaultIfEmpty(0).Max() + 1, facts));
        if (!await SaveNewAsync())
            return AgainAfterOthers();
        Say($"“{facts.Name}” is a role now.");
        return LocalRedirect($"/coop/{CoopId}/turns/roles");
    }

    private async Task LoadAsync()
    {
        await ListAsync();
        Roles = await Db.TurnRoles.AsNoTracking().Where(r => r.CoopId == CoopId && !r.Ended).OrderBy(r => r.Order).ThenBy(r => r.Id).ToListAsync(Ct);
    }
}

/// <summary>One role.</summary>
public sealed class RoleModel(AppDb db, TimeProvider clock) : RoleFormPage(db, clock)
{
    [BindProperty(SupportsGet = true, Name = "roleId")]
    public Guid RoleId { get; set; }

    public TurnRole Role { get; private set; } = null!;

    public async Task<IActionResult> OnGetAsync()
    {
        if (!await FindAsync())
            return NotFound();
        Input = RoleInput.Of(Role);
        return Page();
    }

    public async Task<IActionResult> OnPostAsync()
    {
        if (!await FindAsync())
            return NotFound();
        var others = await Db.TurnRoles.Where(r => r.CoopId == CoopId && !r.Ended && r.Id != RoleId).Select(r => r.Name).ToListAsync(Ct);
        if (others.Contains(Input.Name, StringComparer.OrdinalIgnoreCase))
            ModelState.AddModelError("Input.Name", "There is a role of this name.");
        if (Facts() is not { } facts)
            return Again();
        Expect(Role, Input.Version);
        Role.Describe(facts);
        if (!await SaveAsync())
            return Again(StatusCodes.Status409Conflict);
        Say("Saved. Turns that are given already stay; a new rota and whoever stands in follow it.");
        return LocalRedirect($"/coop/{CoopId}/turns/roles");
    }

    public async Task<IActionResult> OnPostEndAsync()
    {
        ModelState.Clear();
        if (!await FindAsync())
            return NotFound();
        Role.End();
        if (!await SaveAsync())
            return Again(StatusCodes.Status409Conflict);
        Say($"“{Role.Name}” is no longer given. Turns that were had stay.");
        return LocalRedirect($"/coop/{CoopId}/turns/roles");
    }

    private async Task<bool> FindAsync()
    {
        if (await Db.TurnRoles.SingleOrDefaultAsync(r => r.CoopId == CoopId && r.Id == RoleId, Ct) is not { } role)
            return false;
        Role = role;
        await ListAsync();
        return true;
    }
}
