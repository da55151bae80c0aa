using System.ComponentModel.DataAnnotations;
using CoopLessons.Core.Coop;
using CoopLessons.Data;
using CoopLessons.Data.Coops.Days;
using CoopLessons.Data.Coops.Turns;
using Microsoft.AspNetCore.Mvc;
using Microsoft.EntityFrameworkCore;

namespace CoopLessons.Web.Pages.Coops;

/// <summary>What the co-op asks of the adults in its rooms, and how many children each room usually holds.</summary>
public sealed class CoverModel(AppDb db, TimeProvider clock) : CoopPage(db, clock)
{
    [BindProperty]
    public InputModel Input { get; set; } = new();

    public IReadOnlyList<CoopRoom> Rooms { get; private set; } = [];

    protected override bool IsForLeaders => true;

    public async Task OnGetAsync()
    {
        await ListAsync();
        var row = await Db.CoverFigures.AsNoTracking().SingleOrDefaultAsync(f => f.CoopId == CoopId, Ct);
        var rules = row?.Rules ?? CoverRules.Usual;
        var children = await Db.RoomChildren.AsNoTracking().Where(r => r.CoopId == CoopId).ToDictionaryAsync(r => r.RoomId, Ct);
        Input = new()
        {
            Version = row?.Version ?? -1,
            LeastUnrelated = rules.LeastUnrelated,
            HouseholdCountsAsOne = rules.HouseholdCountsAsOne,
            GuestsCount = rules.GuestsCount,
            OnSite = rules.ChildrenOnSite,
            OffSite = rules.ChildrenOffSite,
            Young = rules.YoungChildren,
            YoungBelow = rules.YoungBelow,
            MostChildren = rules.MostChildren,
            MostYearsApart = rules.MostYearsApart,
            Rooms = [.. Rooms.Select(r => children.TryGetValue(r.Id, out var c) ? new RoomRow { RoomId = r.Id, Young = c.Young, Older = c.Older, OffSite = c.OffSite } : new RoomRow { RoomId = r.Id })],
        };
    }

    public async Task<IActionResult> OnPostAsync()
    {
        await ListAsync();
        if (Input.Rooms.Any(r => Rooms.All(room => room.Id != r.RoomId)))
            return NotFound();
        if (!ModelState.IsValid)
            return Again();
        var rules = CoverRules.Usual with
        {
            LeastUnrelated = Input.LeastUnrelated!.Value,
            HouseholdCountsAsOne = Input.HouseholdCountsAsOne,
            GuestsCount = Input.GuestsCount,
            ChildrenOnSite = Input.OnSite!.Value,
            ChildrenOffSite = Input.OffSite!.Value,
            YoungChildren = Input.Young!.Value,
            YoungBelow = Input.YoungBelow!.Value,
            MostChildren = Input.MostChildren,
            MostYearsApart = Input.MostYearsApart,
        };
        var row = await Db.CoverFigures.SingleOrDefaultAsync(f => f.CoopId == CoopId, Ct);
        if (row is null)
            Db.CoverFigures.Add(new CoverFigures(CoopId, rules));
        else
        {
            Expect(row, Input.Version);
            row.Be(rules);
        }

        var children = await Db.RoomChildren.Where(r => r.CoopId == CoopId).ToDictionaryAsync(r => r.RoomId, Ct);
        foreach (var room in Input.Rooms.DistinctBy(r => r.RoomId))
        {
            if (!children.TryGetValue(room.RoomId, out var kept))
                Db.RoomChildren.Add(kept = new RoomChildren(CoopId, room.RoomId));
            kept.Be(room.Young ?? 0, room.Older ?? 0, room.OffSite);
        }

        if (row is null ? !await SaveNewAsync() : !await SaveAsync())
            return row is null ? AgainAfterOthers() : Again(StatusCodes.Status409Conflict);
        Say("Saved. The next rota, and whoever stands in, follow it.");
        return LocalRedirect($"/coop/{CoopId}/turns/cover");
    }

    private async Task ListAsync() => Rooms = await Db.CoopRooms.AsNoTracking().Where(r => r.CoopId == CoopId).OrderBy(r => r.Name).ToListAsync(Ct);

    public sealed class InputModel
    {
        private const string Whole = "Write a whole number from {1} to {2}.";

        public int Version { get; set; } = -1;

        [Required(ErrorMessage = "Say how many; 0 asks for none."), Range(0, 10, ErrorMessage = Whole)]
        public int? LeastUnrelated { get; set; }

        public bool HouseholdCountsAsOne { get; set; }
        public bool GuestsCount { get; set; }

        [Required(ErrorMessage = "Say how many."), Range(1, 50, ErrorMessage = Whole)]
        public int? OnSite { get; set; }

        [Required(ErrorMessage = "Say how many."), Range(1, 50, ErrorMessage = Whole)]
        public int? OffSite { get; set; }

        [Required(ErrorMessage = "Say how many."), Range(1, 50, ErrorMessage = Whole)]
        public int? Young { get; set; }

        [Required(ErrorMessage = "Say from which age on."), Range(1, 18, ErrorMessage = Whole)]
        public int? YoungBelow { get; set; }

        [Range(1, 200, ErrorMessage = Whole)]
        public int? MostChildren { get; set; }

        [Range(0, 18, ErrorMessage = Whole)]
        public int? MostYearsApart { get; set; }

        public List<RoomRow> Rooms { get; set; } = [];
    }

    public sealed class RoomRow
    {
        public Guid RoomId { get; set; }

        [Range(0, 200, ErrorMessage = "Write a whole number from {1} to {2}.")]
        public int? Young { get; set; }

        [Range(0, 200, ErrorMessage = "Write a whole number from {1} to {2}.")]
        public int? Older { get; set; }

        public bool OffSite { get; set; }
    }
}
