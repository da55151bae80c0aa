using CoopLessons.Data;
using CoopLessons.Data.Files;
using CoopLessons.Documents.Packets;
using CoopLessons.Documents.Placing;
using CoopLessons.Web.Files;
using CoopLessons.Web.Pages.Today;
using Microsoft.AspNetCore.Mvc;

namespace CoopLessons.Web.Pages.Packet;

/// <summary>The week's packet as a file. It is made on disk and sent from there; asking for it changes nothing.</summary>
public sealed class FileModel(AppDb db, TimeProvider clock, FileShelf shelf, FileRoom room) : FamilyPage(db, clock)
{
    /// <summary>No packet that may be made takes as long, unless a file in it holds its reader up.</summary>
    private static readonly TimeSpan Patience = TimeSpan.FromSeconds(90);

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

        using var turn = await room.EnterAsync(Family.Id, Ct);
        if (turn is null)
        {
            Response.Headers.RetryAfter = "60";
            return Back(week, "Another packet or file is being worked on just now. Try again in a minute.");
        }

        using var limit = new CancellationTokenSource(Patience, Clock);
        using var both = CancellationTokenSource.CreateLinkedTokenSource(Ct, limit.Token);
        var file = shelf.Scratch();
        var sources = new Dictionary<string, FileAtHand>(StringComparer.Ordinal);
        try
        {
            foreach (var hash in paper.Files.Select(f => f.Hash))
            {
                if (await shelf.AtHandAsync(Family.Id, hash, both.Token) is { } source)
                    sources[hash] = source;
            }

            var papers = paper.Papers(sources.ToDictionary(s => s.Key, s => s.Value.Path), Family.Name, Today);
            await using (var aside = shelf.Scratch())
                await Task.Run(() => PacketPdf.Write(papers, file, aside, both.Token), both.Token);
        }
        catch (SourceUnreadableException fault)
        {
            await file.DisposeAsync();
            return Back(week, $"The file of {paper.PrintedFrom(fault.Hash)} cannot be read any more. Bring it anew.");
        }
        catch (OperationCanceledException) when (!Ct.IsCancellationRequested)
        {
            await file.DisposeAsync();
            return Back(week, "Making this packet took too long, so it was stopped. Print fewer pages, or print the largest file by itself.");
        }
        catch
        {
            await file.DisposeAsync();
            throw;
        }
        finally
        {
            foreach (var source in sources.Values)
                source.Dispose();
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
