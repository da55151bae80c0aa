using CoopLessons.Data;
using CoopLessons.Data.Files;
using CoopLessons.Data.Prepare.Printing;
using CoopLessons.Web.Pages.Today;
using Microsoft.AspNetCore.Mvc;
using Microsoft.EntityFrameworkCore;
using IsoWeek = CoopLessons.Core.Calendar.Week;

namespace CoopLessons.Web.Pages.Packet;

/// <summary>What is printed for a week: what it takes and costs before it is printed, and what changed since.</summary>
public sealed class IndexModel(AppDb db, TimeProvider clock, FileShelf shelf) : FamilyPage(db, clock)
{
    /// <summary>From how many sides on it is said that making the file takes a while.</summary>
    public const int ManySides = 60;

    public IsoWeek Shown { get; private set; }
    public PacketOnPaper Paper { get; private set; } = null!;

    /// <summary>What is not on paper yet; null where no packet was printed.</summary>
    public PacketOnPaper? Changed { get; private set; }

    public WeekPacket Packet => Paper.Packet;

    /// <summary>Id of what is said to be printed.</summary>
    public Guid Printing { get; } = Guid.CreateVersion7();

    public async Task<IActionResult> OnGetAsync(string week) => await FindAsync(week) ? Page() : NotFound();

    /// <summary>Writes down that the whole of the packet lies on paper now.</summary>
    /// <param name="print">Of the packet as the page showed it.</param>
    public async Task<IActionResult> OnPostPrintedAsync(string week, Guid printing, string? print)
    {
        if (!await FindAsync(week))
            return NotFound();
        if (printing == Guid.Empty || Paper.Plan.Sides.Count == 0)
            return BadRequest();
        if (await Db.PrintedPackets.AnyAsync(p => p.Id == printing, Ct))
            return Back(week);
        if (print != PacketOnPaper.PrintOf(Packet))
        {
            ModelState.AddModelError("", "The packet changed after this page was opened, so it is not written down as printed. This is how it stands now.");
            return Again(StatusCodes.Status409Conflict);
        }

        Db.PrintedPackets.Add(new PrintedPacket(printing, Shown, Core.Prepare.Printing.PacketChange.Copies(Packet.Sections), await AuthorAsync(), Now));
        if (await SaveNewAsync())
            Say("The packet is printed. What changes from now on can be printed alone.");
        return Back(week);
    }

    /// <summary>How one printable looks, in all the ways in which it is printed.</summary>
    public async Task<IActionResult> OnPostLookAsync(string week, Guid sourceId, int version, bool colour, bool two, bool names)
    {
        if (!DayWords.TryWeek(week, out _) || await Db.PrintSources.SingleOrDefaultAsync(s => s.Id == sourceId, Ct) is not { } source)
            return NotFound();
        source.Choose(source.Choices.Select(c => c with { Colour = colour, Up = two ? 2 : 1, Names = names }));
        Expect(source, version);
        if (!await SaveAsync())
            return await FindAsync(week) ? Again(StatusCodes.Status409Conflict) : NotFound();
        Say($"“{source.Printable}” is printed so from now on.");
        return Back(week);
    }

    /// <summary>Prints on both sides of the paper, or on one.</summary>
    public async Task<IActionResult> OnPostSidesAsync(string week, bool both)
    {
        if (!DayWords.TryWeek(week, out _))
            return NotFound();
        var habits = await Db.PrintHabits.SingleOrDefaultAsync(Ct);
        if (habits is null)
            Db.PrintHabits.Add(habits = new PrintHabits());
        habits.Describe(habits.Prices, both, habits.Paper);
        // Somebody who said it at the same moment said it too.
        await SaveNewAsync();
        return Back(week);
    }

    // A route's values are written small in generated addresses, and a week is not.
    private LocalRedirectResult Back(string week) => LocalRedirect($"/week/packet/{week}");

    private async Task<bool> FindAsync(string week)
    {
        if (!DayWords.TryWeek(week, out var shown))
            return false;
        Shown = shown;
        var packet = await PacketOnPaper.LoadAsync(Db, shelf, shown, Ct);
        Paper = PacketOnPaper.Of(packet, changed: false, Family.Name, Today);
        Changed = packet.Printed is null ? null : PacketOnPaper.Of(packet, changed: true, Family.Name, Today);
        return true;
    }
}
