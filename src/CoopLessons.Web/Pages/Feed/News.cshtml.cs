using CoopLessons.Data;
using CoopLessons.Data.Coops.News;
using CoopLessons.Data.Tenancy;
using CoopLessons.Documents.Feeds;
using CoopLessons.Web.Hosting;
using Microsoft.AspNetCore.Mvc;
using Microsoft.EntityFrameworkCore;

namespace CoopLessons.Web.Pages.Feed;

/// <summary>What the family's co-ops tell, for a feed reader. A family that is taken out finds it empty with the next reading.</summary>
public sealed class NewsFeedModel(AppDb db, CurrentFamily current, ServerSettings settings) : FeedDoor(db, current)
{
    private const int Most = 50;

    public async Task<IActionResult> OnGetAsync(string secret)
    {
        if (await OpenAsync(secret) is { } shut)
            return shut;
        // One that tells of no co-op has no feed.
        if (!Address.WithCoops)
            return NotFound();
        var names = await Db.Coops.AsNoTracking().ToDictionaryAsync(c => c.Id, c => c.Name, Ct);
        var notices = await Db.CoopNotices.AsNoTracking().OrderByDescending(n => n.At).Take(Most).ToListAsync(Ct);
        var content = new FeedContent(Address.Id, "Notices of the co-op", settings.AddressOf(Request, "/coop"), Address.MadeAt, [.. notices.Select(n => Entry(n, names[n.CoopId]))]);
        return File(NewsFeed.Write(content), "application/atom+xml; charset=utf-8");
    }

    // A reader that has it already puts this in its place.
    private FeedEntry Entry(CoopNotice notice, string coop) => notice.Stands
        ? new(notice.Id, $"{coop}: {notice.Title}", notice.From, notice.Text, notice.At, Link(notice))
        : new(notice.Id, $"{coop}: withdrawn", notice.From, "", notice.WithdrawnAt!.Value, Link(notice));

    private string Link(CoopNotice notice) => settings.AddressOf(Request, $"/coop/{notice.CoopId}/news/{notice.Id}");
}
