using CoopLessons.Core.Coop;
using CoopLessons.Data;
using CoopLessons.Data.Coops.Days;
using Microsoft.AspNetCore.Mvc;

namespace CoopLessons.Web.Pages.Coops;

/// <summary>A form for a class, new or known.</summary>
public abstract class ClassFormPage(AppDb db, TimeProvider clock) : TimetablePage(db, clock)
{
    private static readonly Guid AnyChild = new("0190a3f0-0000-7000-8000-000000000001");

    [BindProperty]
    public ClassForm Input { get; set; } = new();

    /// <summary>Why the room may not open as the form stands; asked before it is saved like that.</summary>
    public IReadOnlyList<string> ToMend { get; private set; } = [];

    protected IActionResult AgainSpread(int status = StatusCodes.Status422UnprocessableEntity)
    {
        Input.Spread(Table);
        return Again(status);
    }

    /// <summary>The class as the form has it, or null where the form is shown again.</summary>
    protected (ClassFacts Facts, ClassDetails Details)? ReadForm(CoopClass? known)
    {
        if (Input.Read(ModelState, Table) is not { } read)
            return null;
        var taken = Table.Classes.FirstOrDefault(c => c.Id != known?.Id && c.RoomId == read.Facts.RoomId && c.PeriodId == read.Facts.PeriodId && c.First <= read.Facts.Last && read.Facts.First <= c.Last);
        if (taken is not null)
        {
            ModelState.AddModelError("Input.RoomId", $"“{taken.Title}” is in {Table.Room(taken).Name} at {Timetable.At(Table.Period(taken))} then.");
            return null;
        }

        if (Input.NotYetCovered)
            return read;
        ToMend = Mend(known, read.Facts, read.Details);
        return ToMend.Count == 0 ? read : null;
    }

    private List<string> Mend(CoopClass? known, ClassFacts facts, ClassDetails details)
    {
        // Looked at as it would be, without touching what is there; before anybody has a place, with a child whom it may take.
        var would = new CoopClass(CoopId, known?.Id ?? Guid.CreateVersion7(), facts, details);
        var room = Table.RoomOf(would, Table.Room(would), Table.Period(would), known is null ? [] : [.. Table.Roll(known).Places.Select(p => Table.Children[p.Child])]);
        if (room.Children.Count == 0)
            room = room with { Children = [new RoomChild(AnyChild, "", Guid.Empty, facts.FromAge, [])] };
        var others = Table.Classes.Where(c => c.Id != would.Id && c.PeriodId == would.PeriodId && c.First <= would.Last && would.First <= c.Last).Select(Table.RoomOf);
        var faults = Cover.Faults(room, Table.Rules).Where(f => Timetable.KeepsShut(f) || f.Kind == CoverFaultKind.AllergenBlock)
            .Concat(Cover.Faults([.. others, room], Table.Rules).Where(f => f.Kind == CoverFaultKind.InTwoRooms && f.Room == room.Id))
            .ToList();
        return [.. faults.Select(f => Table.Sentence(f, Family.Id)).Distinct()];
    }
}
