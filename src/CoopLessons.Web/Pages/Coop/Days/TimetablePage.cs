using CoopLessons.Data;
using CoopLessons.Data.Coops.Days;
using Microsoft.AspNetCore.Mvc;

namespace CoopLessons.Web.Pages.Coops;

/// <summary>A page that speaks of a co-op's classes.</summary>
public abstract class TimetablePage(AppDb db, TimeProvider clock) : CoopPage(db, clock)
{
    public Timetable Table { get; private set; } = null!;

    public string Here => $"/coop/{CoopId}";

    /// <summary>“Iris Alder”.</summary>
    public string NameOf(Guid adult) => Table.Adults.TryGetValue(adult, out var known) ? $"{known.Name} {Table.Families[known.FamilyId].Name}" : "somebody who left";

    public bool IsThere(Guid adult) => Table.Adults.TryGetValue(adult, out var known) && !known.Gone;

    /// <summary>“Wren Alder”.</summary>
    public string NameOfChild(Guid child) => Table.Children.TryGetValue(child, out var known) ? $"{known.Name} {Table.Families[known.FamilyId].Name}" : "a child of a family that left";

    public IReadOnlyList<ClassFault> Faults(CoopClass of, DateOnly day) => Table.Read(Table.Faults(of, day), Family.Id);

    protected async Task ReadTableAsync() => Table = await Timetable.LoadAsync(Db, CoopId, Ct);

    protected IActionResult Refused(string field, string sentence, int status = StatusCodes.Status422UnprocessableEntity)
    {
        ModelState.AddModelError(field, sentence);
        return Again(status);
    }
}
