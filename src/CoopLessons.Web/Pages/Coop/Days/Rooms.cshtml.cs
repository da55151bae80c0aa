using CoopLessons.Data;
using CoopLessons.Data.Coops.Days;
using Microsoft.AspNetCore.Mvc;

namespace CoopLessons.Web.Pages.Coops;

/// <summary>Where and when classes are: rooms, and the periods of a meeting.</summary>
public sealed class RoomsModel(AppDb db, TimeProvider clock) : TimetablePage(db, clock)
{
    public const int Most = 30;

    [BindProperty]
    public PeriodInput Period { get; set; } = new();

    [BindProperty]
    public RoomInput Room { get; set; } = new();

    public async Task OnGetAsync()
    {
        await ReadTableAsync();
        Mint();
    }

    public async Task<IActionResult> OnPostAddPeriodAsync()
    {
        await ReadTableAsync();
        if (!Mine.Teaches)
            return Forbid();
        if (Table.Periods.Any(p => p.Id == Period.NewId))
            return Back();
        if (FaultOfPeriod(null) is { } fault)
            return Refused("Period", fault);
        Db.CoopPeriods.Add(new CoopPeriod(CoopId, IdOr(Period.NewId), Period.From!.Value, Period.Until!.Value));
        return await SaveNewAsync() ? Back() : AgainAfterOthers("Period");
    }

    public async Task<IActionResult> OnPostPeriodAsync(Guid periodId)
    {
        await ReadTableAsync();
        if (Table.Periods.SingleOrDefault(p => p.Id == periodId) is not { } period)
            return NotFound();
        if (!Mine.Teaches)
            return Forbid();
        if (FaultOfPeriod(periodId) is { } fault)
            return RefusedAtHead(fault);
        period.Be(Period.From!.Value, Period.Until!.Value);
        return await SavedAsync();
    }

    public async Task<IActionResult> OnPostRemovePeriodAsync(Guid periodId)
    {
        await ReadTableAsync();
        if (Table.Periods.SingleOrDefault(p => p.Id == periodId) is not { } period)
            return NotFound();
        if (!Mine.Teaches)
            return Forbid();
        if (Table.Classes.Any(c => c.PeriodId == periodId))
            return RefusedAtHead("A class is in this period. Move it first.");
        Db.CoopPeriods.Remove(period);
        return await SavedAsync();
    }

    public async Task<IActionResult> OnPostAddRoomAsync()
    {
        await ReadTableAsync();
        if (!Mine.Teaches)
            return Forbid();
        if (Table.Rooms.Any(r => r.Id == Room.NewId))
            return Back();
        if (FaultOfRoom(null) is { } fault)
            return Refused("Room", fault);
        Db.CoopRooms.Add(new CoopRoom(CoopId, IdOr(Room.NewId), Room.Name!.Trim(), Room.Holds));
        return await SaveNewAsync() ? Back() : AgainAfterOthers("Room");
    }

    public async Task<IActionResult> OnPostRoomAsync(Guid roomId)
    {
        await ReadTableAsync();
        if (Table.Rooms.SingleOrDefault(r => r.Id == roomId) is not { } room)
            return NotFound();
        if (!Mine.Teaches)
            return Forbid();
        if (FaultOfRoom(roomId) is { } fault)
            return RefusedAtHead(fault);
        room.Describe(Room.Name!.Trim(), Room.Holds);
        return await SavedAsync();
    }

    public async Task<IActionResult> OnPostRemoveRoomAsync(Guid roomId)
    {
        await ReadTableAsync();
        if (Table.Rooms.SingleOrDefault(r => r.Id == roomId) is not { } room)
            return NotFound();
        if (!Mine.Teaches)
            return Forbid();
        if (Table.Classes.Any(c => c.RoomId == roomId))
            return RefusedAtHead("A class is in this room. Move it first.");
        Db.CoopRooms.Remove(room);
        return await SavedAsync();
    }

    private string? FaultOfPeriod(Guid? changed)
    {
        if (Period.From is not { } from || Period.Until is not { } until)
            return "Give both times.";
        if (until <= from)
            return "A period ends after it begins.";
        if (Table.Periods.Count >= Most && changed is null)
            return $"A meeting has at most {Most} periods.";
        return Table.Periods.FirstOrDefault(p => p.Id != changed && from < p.Until && p.From < until) is { } other
            ? $"It overlaps with the period from {Timetable.At(other)}: nobody can be in both." : null;
    }

    private string? FaultOfRoom(Guid? changed)
    {
        var name = Room.Name?.Trim() ?? "";
        if (name.Length == 0)
            return "Give the room a name.";
        if (name.Length > CoopRoom.LongestName)
            return $"A name has at most {CoopRoom.LongestName} signs.";
        if (ModelState["Room.Holds"] is { Errors.Count: > 0 } || Room.Holds is < 1 or > 500)
            return "A room holds from 1 to 500 children; leave it empty for no limit.";
        if (Table.Rooms.Count >= Most && changed is null)
            return $"A co-op has at most {Most} rooms.";
        return Table.Rooms.Any(r => r.Id != changed && string.Equals(r.Name, name, StringComparison.OrdinalIgnoreCase)) ? "There is a room of this name." : null;
    }

    private async Task<IActionResult> SavedAsync()
    {
        if (await SaveAsync())
        {
            Say("Saved.");
            return Back();
        }

        await ReadTableAsync();
        return Again(StatusCodes.Status409Conflict);
    }

    private IActionResult RefusedAtHead(string sentence)
    {
        ModelState.Clear();
        (Period, Room) = (new(), new());
        Mint();
        return Refused("", sentence);
    }

    private void Mint() => (Period.NewId, Room.NewId) = (Guid.CreateVersion7(), Guid.CreateVersion7());

    private static Guid IdOr(Guid minted) => minted == Guid.Empty ? Guid.CreateVersion7() : minted;

    private LocalRedirectResult Back() => LocalRedirect($"{Here}/rooms");

    public sealed class PeriodInput
    {
        public Guid NewId { get; set; }
        public TimeOnly? From { get; set; }
        public TimeOnly? Until { get; set; }
    }

    public sealed class RoomInput
    {
        public Guid NewId { get; set; }
        public string? Name { get; set; }
        public int? Holds { get; set; }
    }
}
