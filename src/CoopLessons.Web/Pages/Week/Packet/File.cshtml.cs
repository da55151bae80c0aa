using CoopLessons.Data;
using CoopLessons.Data.Files;
using CoopLessons.Documents.Packets;
using CoopLessons.Documents.Placing;
using CoopLessons.Web.Files;
using CoopLessons.Web.Pages.Today;
using Microsoft.AspNetCore.Mvc;

namespace CoopLessons.Web.Pages.Packet;

/// <summary>The week's packet as a file. It is made on disk and sent from there; asking for it changes nothing.</summary>
public sealed class FileModel(AppDb db, TimeProvider clock, FileShelf shelf, PicturePaper maker) : FamilyPage(db, clock)
{
    public async Task<IActionResult> OnGetAsync(string week, bool changed)
    {
        if (!DayWords.TryWeek(week, out var shown))
            return NotFound();
        var packet = await PacketOnPaper.LoadAsync(Db, shelf, shown, Ct);
        var paper = PacketOnPaper.Of(packet, changed && packet.Printed is not null, Family.Name, Today);
        if (paper.Plan.Sides.Count == 0)
            return Back(week, changed ? "Nothing changed since the packet was printed." : "Nothing is printed for this week.");
        if (PacketWords.TooLong(paper.Plan) is { } tooLong)
            return Back(week, tooLong);

        try
        {
            var file = await maker.MakeAsync(
                Family.Id, paper.Files.Select(f => f.Hash), (paths, to, aside, ct) => PacketPdf.Write(paper.Papers(paths, Family.Name, Today), to, aside, ct), Ct);
            if (file is not null)
                return File(file, "application/pdf", $"packet-{shown.Iso}{(changed ? "-changed" : "")}.pdf".ToLowerInvariant());
        }
        catch (SourceUnreadableException fault)
        {
            return Back(week, $"The file of {paper.PrintedFrom(fault.Hash)} cannot be read any more. Bring it anew.");
        }
        catch (OperationCanceledException) when (!Ct.IsCancellationRequested)
        {
            return Back(week, "Making this packet took too long, so it was stopped. Print fewer pages, or print the largest file by itself.");
        }

        Response.Headers.RetryAfter = "60";
        return Back(week, "Another packet or file is being worked on just now. Try again in a minute.");
    }

    private LocalRedirectResult Back(string week, string sentence)
    {
        Say(sentence);
        return LocalRedirect($"/week/packet/{week}");
    }
}
