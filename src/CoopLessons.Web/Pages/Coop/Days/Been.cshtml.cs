using CoopLessons.Data;
using CoopLessons.Data.Coops.Days;
using CoopLessons.Data.Families;
using CoopLessons.Data.Log;
using Microsoft.AspNetCore.Mvc;
using Microsoft.EntityFrameworkCore;

namespace CoopLessons.Web.Pages.Coops;

public sealed record BeenSaid(string Title, DateOnly On, Guid? EntryId);

/// <summary>What the family's children were in, proposed for its log: a parent confirms, changes or declines.</summary>
public sealed class BeenModel(AppDb db, TimeProvider clock) : CoopPage(db, clock)
{
    private const int MostSaid = 20;

    [BindProperty]
    public InputModel Input { get; set; } = new();

    public IReadOnlyList<BeenProposal> Waiting { get; private set; } = [];

    public IReadOnlyList<BeenSaid> Said { get; private set; } = [];

    public IReadOnlyList<FamilySubject> Subjects { get; private set; } = [];

    public string? Fault { get; private set; }

    public string Here => $"/coop/{CoopId}";

    public Task OnGetAsync() => ListAsync();

    public async Task<IActionResult> OnPostLogAsync(Guid meetingId, Guid classId)
    {
        if (!await IsOfCoopAsync(meetingId, classId))
            return NotFound();
        await ListAsync();
        if (Find(meetingId, classId) is not { } proposal || Input.EntryId != Guid.Empty && await Db.FirstWritingAsync(Input.EntryId, Ct) is not null)
            return Back();
        if (Input.EntryId == Guid.Empty)
            return BadRequest();
        (Input.MeetingId, Input.ClassId) = (meetingId, classId);
        var children = proposal.Children.Select(c => c.Id).Where(Input.Children.Contains).ToList();
        var subjects = Subjects.Select(s => s.Id).Where(Input.Subjects.Contains).ToList();
        Fault = ModelState["Input.Minutes"] is { Errors.Count: > 0 } || Input.Minutes is not (>= 1 and <= 1440) ? "Give whole minutes from 1 to 1440."
            : children.Count == 0 ? "Choose who was there, or say that it is not for your log."
            : subjects.Count == 0 ? "Choose at least one subject that it counts as." : null;
        if (Fault is { } fault)
        {
            ModelState.AddModelError($"Input.{nameof(Input.Minutes)}", fault);
            return Again();
        }

        Db.LogEntries.Add(LogEntry.Write(Input.EntryId, proposal.Facts(Input.Minutes!.Value, children, subjects), await AuthorAsync(), Now));
        // A child whose tick was taken away was not there, says the parent: nothing waits for it either.
        foreach (var child in proposal.Children)
            Db.BeenWords.Add(new BeenWord(meetingId, classId, child.Id, children.Contains(child.Id) ? Input.EntryId : null, Now));
        if (await SaveNewAsync())
            Say($"“{proposal.Taken.Title}” is logged.");
        return Back();
    }

    public async Task<IActionResult> OnPostDeclineAsync(Guid meetingId, Guid classId)
    {
        ModelState.Clear();
        if (!await IsOfCoopAsync(meetingId, classId))
            return NotFound();
        await ListAsync();
        if (Find(meetingId, classId) is not { } proposal)
            return Back();
        foreach (var child in proposal.Children)
            Db.BeenWords.Add(new BeenWord(meetingId, classId, child.Id, null, Now));
        if (await SaveNewAsync())
            Say($"“{proposal.Taken.Title}” is not for your log.");
        return Back();
    }

    private BeenProposal? Find(Guid meetingId, Guid classId) => Waiting.SingleOrDefault(p => p.Taken.MeetingId == meetingId && p.Taken.ClassId == classId);

    private async Task<bool> IsOfCoopAsync(Guid meetingId, Guid classId) =>
        await Db.CoopMeetings.AnyAsync(m => m.CoopId == CoopId && m.Id == meetingId, Ct) && await Db.CoopClasses.AnyAsync(c => c.CoopId == CoopId && c.Id == classId, Ct);

    private LocalRedirectResult Back() => LocalRedirect($"{Here}/been");

    private async Task ListAsync()
    {
        Waiting = await BeenThere.WaitingAsync(Db, CoopId, Ct);
        Subjects = await Db.Subjects.AsNoTracking().Where(s => !s.Retired).OrderBy(s => s.Order).ToListAsync(Ct);
        var words = (await Db.BeenWords.AsNoTracking().OrderByDescending(w => w.SaidAt).Take(3 * MostSaid).ToListAsync(Ct)).GroupBy(w => (w.MeetingId, w.ClassId)).Take(MostSaid).ToList();
        var meetings = words.Select(w => w.Key.MeetingId).ToList();
        var taken = (await BeenThere.StandingAsync(Db, Db.AttendancesTaken.Where(a => a.CoopId == CoopId && meetings.Contains(a.MeetingId)), Ct)).ToDictionary(a => (a.MeetingId, a.ClassId));
        Said = [.. words.Where(w => taken.ContainsKey(w.Key)).Select(w => new BeenSaid(taken[w.Key].Title, taken[w.Key].On, w.Max(x => x.EntryId)))];
    }

    public sealed class InputModel
    {
        public Guid EntryId { get; set; }
        public List<Guid> Children { get; set; } = [];
        public int? Minutes { get; set; }
        public List<Guid> Subjects { get; set; } = [];

        /// <summary>Which proposal the form was for.</summary>
        [Microsoft.AspNetCore.Mvc.ModelBinding.BindNever]
        public Guid MeetingId { get; set; }

        [Microsoft.AspNetCore.Mvc.ModelBinding.BindNever]
        public Guid ClassId { get; set; }
    }
}
