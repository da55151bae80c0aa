using CoopLessons.Data;
using CoopLessons.Data.Files;
using CoopLessons.Documents.Packets;
using CoopLessons.Web.Pages.Today;
using CoopLessons.Web.Printing;
using Microsoft.AspNetCore.Mvc;

namespace CoopLessons.Web.Pages.Packet;

/// <summary>The week's packet as a file. It is made on disk and sent from there; asking for it changes nothing.</summary>
public sealed class FileModel(AppDb db, TimeProvider clock, FileShelf shelf, PrintRoom room) : FamilyPage(db, clock)
{
    public async Task<IActionResult> OnGetAsync(string week, bool changed)
    {
        if (!DayWords.TryWeek(week, out var shown))
            return NotFound();
        var packet = await PacketOnPaper.LoadAsync(Db, shelf, Family.Id, shown, Ct);
        var paper = PacketOnPaper.Of(packet, changed && packet.Printed is not null, Family.Name, Today);
        if (paper.Plan.Sides.Count == 0)
            return Back(week, changed ? "Nothing changed since the packet was printed." : "Nothing is printed for this week.");

        using var turn = await room.EnterAsync(Ct);
        if (turn is null)
        {
            Response.Headers.RetryAfter = "60";
            return Back(week, "Other packets are being made just now. Try again in a minute.");
        }

        var file = shelf.Scratch();
        try
        {
            await using (var aside = shelf.Scratch())
                await Task.Run(() => PacketPdf.Write(paper.Papers(shelf, Family.Id, Family.Name, Today), file, aside, Ct), Ct);
        }
        catch (Exception fault) when (fault is InvalidDataException or FileNotFoundException)
        {
            await file.DisposeAsync();
            return Back(week, "A file of this packet cannot be read any more. Download each of them to see which, and bring that one anew.");
        }
        catch
        {
            await file.DisposeAsync();
            throw;
        }

        file.Position = 0;
        return File(file, "application/pdf", $"packet-{shown.Iso}{(changed ? "-changed" : "")}.pdf".ToLowerInvariant());
    }

    private LocalRedirectResult Back(string week, string sentence)
    {
        Say(sentence);
        return LocalRedirect($"/week/packet/{week}");
    }
}
