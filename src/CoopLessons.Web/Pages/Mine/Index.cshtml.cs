using CoopLessons.Data;
using CoopLessons.Data.Evidence;
using CoopLessons.Data.Families;
using CoopLessons.Data.Log;
using CoopLessons.Data.OwnLists;
using CoopLessons.Data.Schedule;
using CoopLessons.Documents.Uploads;
using CoopLessons.Web.Evidence;
using CoopLessons.Web.Files;
using CoopLessons.Web.Pages.Today;
using CoopLessons.Web.Security;
using Microsoft.AspNetCore.Mvc;
using Microsoft.EntityFrameworkCore;

namespace CoopLessons.Web.Pages.Mine;

/// <summary>A child's list: what is there today, and "I did it". What a child says waits for a guardian.</summary>
[LargestUpload(EvidenceFile.MostBytes)]
[RequestSizeLimit(EvidenceFile.MostBytes + LargestUploadAttribute.Around)]
public sealed class IndexModel(AppDb db, TimeProvider clock, TabletDoor tablets, BroughtPieces brought) : FamilyPage(db, clock)
{
    /// <summary>A child who says more on one day has said enough for a grown-up to look at.</summary>
    public const int MostInADay = 60;

    private OwnList _list = null!;

    public Learner Child { get; private set; } = null!;

    public ChildDay Day { get; private set; } = null!;

    public ReadingLevel Reading => _list.Reading;

    /// <summary>What was sent and not taken, shown again where it belongs.</summary>
    public SayInput Sent { get; private set; } = new();

    /// <summary>To which planned thing it belongs.</summary>
    public Guid? SentFor { get; private set; }

    private Guid Me => Db.Current.LearnerId!.Value;

    public async Task<IActionResult> OnGetAsync()
    {
        await LoadAsync();
        if (!LargestUploadAttribute.Refused(HttpContext))
            return Page();
        ModelState.AddModelError("", "That picture is too large. Take a smaller one, or say it without.");
        return Again(StatusCodes.Status413PayloadTooLarge);
    }

    /// <param name="id">Made with the page, so that a second sending is recognised.</param>
    /// <param name="sessionId">Null for something that was not planned.</param>
    public async Task<IActionResult> OnPostDidAsync(Guid id, Guid? sessionId, SayInput input, IFormFile? photo)
    {
        (Sent, SentFor) = (input, sessionId);
        await FindAsync();
        var work = sessionId is { } planned ? await Db.WorkAsync(planned, Ct) : null;
        if (sessionId is not null && (work is null || !work.Session.Learners.Contains(Me) || work.Session.Date != Today || work.Session.State is SessionState.LetGo or SessionState.NotDone))
            return NotFound();
        if (id == Guid.Empty)
            return BadRequest();
        if (await KnowsAsync(id) || await IsSaidAsync(work))
            return Said();
        await CheckAsync(input, work);
        if (!ModelState.IsValid)
        {
            await LoadAsync();
            return Again();
        }

        var pieces = new List<Guid>();
        if (photo is not null)
        {
            if (await BringAsync(PieceIds.Of(id, 0), photo, input.Words ?? "", work) is { } refused)
            {
                await LoadAsync();
                return Again(refused);
            }

            pieces.Add(PieceIds.Of(id, 0));
        }

        var what = work?.Title ?? input.What!;
        Db.ChildrenSaid.Add(new ChildSaid(id, new SaidFacts(Me, sessionId, what, Today, null, input.Words ?? "", input.With ?? "", pieces), Now));
        // Sent twice in one moment, it is said once.
        if (!await SaveNewAsync() && !await KnowsAsync(id))
        {
            await LoadAsync();
            return AgainAfterOthers();
        }

        return Said();
    }

    public async Task<IActionResult> OnPostTakeBackAsync(Guid saidId)
    {
        var me = Me;
        if (await Db.ChildrenSaid.SingleOrDefaultAsync(s => s.Id == saidId && s.LearnerId == me, Ct) is not { } said)
            return NotFound();
        said.TakeBack();
        if (said.State == SaidState.TakenBack && said.Pieces.Count > 0)
        {
            // A picture goes with what it was to show; a guardian can bring it back.
            var shown = said.Pieces.ToList();
            foreach (var piece in await Db.Pieces.Where(p => shown.Contains(p.Id)).ToListAsync(Ct))
                piece.Remove(Now);
        }

        // Decided by a grown-up in this moment, it stays decided.
        await SaveNewAsync();
        return LocalRedirect("/mine");
    }

    public async Task<IActionResult> OnPostFinishedAsync()
    {
        var tablet = await Db.FamilyTablets.SingleAsync(t => t.Id == Db.Current.TabletId!.Value, Ct);
        tablet.Finish(Now);
        await SaveNewAsync();
        if (!tablet.Lent)
            return LocalRedirect("/tablet");
        tablets.TakeAway(HttpContext);
        return LocalRedirect("/");
    }

    /// <summary>Keeps a picture among the family's pieces, unless it is there by an earlier sending.</summary>
    /// <returns>The status of the answer where it is refused, with the reason beside the field; null where it is kept.</returns>
    private async Task<int?> BringAsync(Guid pieceId, IFormFile photo, string words, PlannedWork? work)
    {
        if (await Db.Pieces.AnyAsync(p => p.Id == pieceId, Ct))
            return null;
        var (piece, fault) = await brought.LookAsync(photo.OpenReadStream(), photo.FileName, Ct);
        if (piece is null)
        {
            ModelState.AddModelError("Photo", fault!.Sentence);
            return fault.Status;
        }

        await using (piece)
        {
            if (PieceWords.KindOf(piece.Verdict) != PieceKind.Photo)
            {
                ModelState.AddModelError("Photo", "That is not a picture.");
                return StatusCodes.Status422UnprocessableEntity;
            }

            var facts = new PieceFacts(Today, [Me], work?.Split.Split.MaxBy(s => s.Weight)?.SubjectId, null, words.Length <= Piece.LongestCaption ? words : words[..Piece.LongestCaption]);
            await brought.TakeAsync(pieceId, piece, null, facts, Family.KeepOriginals, new Author(Guid.Empty, Child.Name), Now, Ct);
        }

        return null;
    }

    private LocalRedirectResult Said() => LocalRedirect(SentFor is { } id ? $"/mine#thing-{id:N}" : "/mine#besides");

    private Task<bool> KnowsAsync(Guid id) => Db.ChildrenSaid.AnyAsync(s => s.Id == id, Ct);

    /// <summary>Whether it is said already, or stands in the log for this child.</summary>
    private async Task<bool> IsSaidAsync(PlannedWork? work)
    {
        if (work is null)
            return false;
        var (me, session) = (Me, work.Session.Id);
        var said = Db.ChildrenSaid.Where(s => s.LearnerId == me && s.SessionId == session);
        if (await said.AnyAsync(s => s.State == SaidState.Waiting, Ct))
            return true;
        var entries = (await said.Where(s => s.EntryId != null).Select(s => s.EntryId!.Value).ToListAsync(Ct)).Append(work.Session.EntryId ?? Guid.Empty).ToList();
        return await Db.Standing().AnyAsync(r => entries.Contains(r.EntryId) && r.Times.Any(t => t.LearnerId == me), Ct);
    }

    private async Task CheckAsync(SayInput input, PlannedWork? work)
    {
        var (me, today) = (Me, Today);
        if (work is null && string.IsNullOrWhiteSpace(input.What))
            ModelState.AddModelError(nameof(SayInput.What), "Write what you did.");
        if (work is not null && ChildDay.NeedsGrownUp(work, Child, today) && string.IsNullOrWhiteSpace(input.With))
            ModelState.AddModelError(nameof(SayInput.With), "Say which grown-up was with you.");
        if (await Db.ChildrenSaid.CountAsync(s => s.LearnerId == me && s.Date == today, Ct) >= MostInADay)
            ModelState.AddModelError("", "That is a lot for one day. Show it to a grown-up first.");
    }

    private async Task FindAsync()
    {
        var me = Me;
        Child = await Db.Learners.AsNoTracking().Include(l => l.Levels).SingleAsync(l => l.Id == me, Ct);
        _list = await Db.OwnLists.AsNoTracking().SingleAsync(l => l.LearnerId == me, Ct);
    }

    private async Task LoadAsync()
    {
        await FindAsync();
        Day = await ChildDay.LoadAsync(Db, Child, _list.Reading, Today, Now, Ct);
    }
}
