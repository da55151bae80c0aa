using CoopLessons.Data;
using CoopLessons.Data.Coops.Days;
using CoopLessons.Web.Pages.Today;
using Microsoft.AspNetCore.Mvc;
using Microsoft.EntityFrameworkCore;

namespace CoopLessons.Web.Pages.Coops;

/// <summary>Who is there, class by class: taken on a phone by teaching families, with or without a network.</summary>
public sealed class AttendanceModel(AppDb db, TimeProvider clock) : MeetingPage(db, clock)
{
    [BindProperty]
    public InputModel Input { get; set; } = new();

    /// <summary>What holds of each class.</summary>
    public IReadOnlyDictionary<Guid, AttendanceTaken> Taken { get; private set; } = new Dictionary<Guid, AttendanceTaken>();

    public async Task<IActionResult> OnGetAsync()
    {
        if (!Mine.Teaches)
            return Forbid();
        await ListAsync();
        return Page();
    }

    public async Task<IActionResult> OnPostTakeAsync(Guid classId)
    {
        if (Held.SingleOrDefault(c => c.Id == classId) is not { } held)
            return NotFound();
        if (!Mine.Teaches)
            return Forbid();
        if (Input.NewId == Guid.Empty)
            return BadRequest();
        await ListAsync();
        if (await Db.AttendancesTaken.AnyAsync(a => a.CoopId == CoopId && a.Id == Input.NewId, Ct))
            return Back(held);
        if (!Meeting.Stands)
            return Refused("", "The day is called off.");
        if (Meeting.On > Today)
            return Refused("", $"This is taken on the day, {Meeting.On.InWords(Today)}, or after it.");
        // Who had a place when the page came and has none now was there all the same.
        var there = Input.There.Distinct().Where(Table.Children.ContainsKey).ToList();
        var away = Table.Roll(held).Places.Select(p => p.Child).Except(there).ToList();
        var facts = new AttendanceFacts(MeetingId, classId, Meeting.On, held.Title, Table.Period(held).Minutes, held.Details.Subjects, there, away);
        Db.AttendancesTaken.Add(new AttendanceTaken(CoopId, Input.NewId, facts, Mine.Name, Kept?.WrittenBefore(Now) ?? Now));
        if (!await SaveNewAsync() && !await Db.AttendancesTaken.AnyAsync(a => a.CoopId == CoopId && a.Id == Input.NewId, Ct))
        {
            await FindAsync();
            return AgainAfterOthers();
        }

        Say($"“{held.Title}”: {there.Count} there, {away.Count} away.");
        return Back(held);
    }

    private LocalRedirectResult Back(CoopClass held) => LocalRedirect($"{Here}/days/{MeetingId}/attendance#class-{held.Id}");

    private async Task ListAsync() =>
        Taken = (await BeenThere.StandingAsync(Db, Db.AttendancesTaken.Where(a => a.CoopId == CoopId && a.MeetingId == MeetingId), Ct)).ToDictionary(a => a.ClassId);

    public sealed class InputModel
    {
        public Guid NewId { get; set; }
        public List<Guid> There { get; set; } = [];
    }
}
