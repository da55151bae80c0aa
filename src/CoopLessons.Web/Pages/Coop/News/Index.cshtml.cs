using System.ComponentModel.DataAnnotations;
using CoopLessons.Data;
using CoopLessons.Data.Coops.Days;
using CoopLessons.Data.Coops.News;
using CoopLessons.Web.Pages.Account;
using Microsoft.AspNetCore.Mvc;
using Microsoft.EntityFrameworkCore;

namespace CoopLessons.Web.Pages.Coops;

/// <summary>What a co-op tells its families, the newest first; who teaches or leads writes.</summary>
public sealed class NewsModel(AppDb db, TimeProvider clock) : CoopPage(db, clock)
{
    public const int OnASheet = 30;

    private const int MostSheets = 1000;
    private DateTime _seen;

    [BindProperty(SupportsGet = true)]
    public int Sheet { get; set; } = 1;

    [BindProperty]
    public InputModel Input { get; set; } = new();

    public IReadOnlyList<CoopNotice> Notices { get; private set; } = [];

    public bool HasOlder { get; private set; }

    /// <summary>Meetings from today on.</summary>
    public IReadOnlyList<CoopMeeting> Ahead { get; private set; } = [];

    public bool IsNew(CoopNotice notice) => notice.FromId != Family.Id && notice.At > _seen && notice.At >= Mine.Since;

    public async Task OnGetAsync()
    {
        Input.NewId = Guid.CreateVersion7();
        await ListAsync();
        // What is kept for a phone was not read yet.
        if (Sheet == 1 && Notices.Count > 0 && !CoopLessons.Web.Phone.PageShots.IsKept(HttpContext))
            await SeeAsync(Notices[0].At);
    }

    public async Task<IActionResult> OnPostAsync()
    {
        if (!Mine.Teaches)
            return Forbid();
        if (Input.MeetingId is { } meeting && !await Db.CoopMeetings.AnyAsync(m => m.CoopId == CoopId && m.Id == meeting, Ct))
            return NotFound();
        if (!ModelState.IsValid)
        {
            await ListAsync();
            return Again();
        }

        var id = Input.NewId == Guid.Empty ? Guid.CreateVersion7() : Input.NewId;
        if (!await Db.CoopNotices.AnyAsync(n => n.CoopId == CoopId && n.Id == id, Ct))
        {
            Db.CoopNotices.Add(new CoopNotice(CoopId, id, Mine, Input.Title, Input.Text ?? "", Now, meetingId: Input.MeetingId));
            // Whoever is taken out in this moment writes no more: one of the two must fail.
            Db.Entry(Mine).State = EntityState.Modified;
            if (!await SaveNewAsync() && !await Db.CoopNotices.AnyAsync(n => n.CoopId == CoopId && n.Id == id, Ct))
            {
                await ListAsync();
                return AgainAfterOthers();
            }
        }

        Say("All families are told.");
        return LocalRedirect($"/coop/{CoopId}/news");
    }

    private async Task ListAsync()
    {
        Sheet = Math.Clamp(Sheet, 1, MostSheets);
        var found = await Db.CoopNotices.AsNoTracking().Where(n => n.CoopId == CoopId).OrderByDescending(n => n.At).ThenByDescending(n => n.Id)
            .Skip((Sheet - 1) * OnASheet).Take(OnASheet + 1).ToListAsync(Ct);
        (Notices, HasOlder) = (found.Count > OnASheet ? found[..OnASheet] : found, found.Count > OnASheet);
        Ahead = await Db.CoopMeetings.AsNoTracking().Where(m => m.CoopId == CoopId && m.On >= Today).OrderBy(m => m.On).Take(OnASheet).ToListAsync(Ct);
        _seen = await Db.NewsSeen.Where(s => s.CoopId == CoopId).Select(s => s.UpTo).SingleOrDefaultAsync(Ct);
    }

    private async Task SeeAsync(DateTime newest)
    {
        var seen = await Db.NewsSeen.SingleOrDefaultAsync(s => s.CoopId == CoopId, Ct) ?? Db.NewsSeen.Add(new NewsSeen(CoopId)).Entity;
        seen.See(newest);
        // Opened twice in one moment, it is seen all the same.
        await SaveNewAsync();
    }

    public sealed class InputModel
    {
        public Guid NewId { get; set; }

        [Required(ErrorMessage = "Say in a few words what it is about.")]
        [StringLength(CoopNotice.LongestTitle, ErrorMessage = "At most {1} signs here.")]
        [Visible]
        public string Title { get; set; } = "";

        [StringLength(CoopNotice.LongestText, ErrorMessage = "At most {1} signs here.")]
        public string? Text { get; set; }

        public Guid? MeetingId { get; set; }
    }
}
