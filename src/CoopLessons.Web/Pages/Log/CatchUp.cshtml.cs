using System.Globalization;
using CoopLessons.Core.Hours;
using CoopLessons.Data;
using CoopLessons.Data.Log;
using CoopLessons.Data.Schedule;
using CoopLessons.Web.Pages.Today;
using Microsoft.AspNetCore.Mvc;
using Microsoft.EntityFrameworkCore;

namespace CoopLessons.Web.Pages.Log;

/// <summary>Gives forgotten days back: what was probably done is said yes to, or not; blanks stay blank.</summary>
[RequestFormLimits(ValueCountLimit = 4096)]
public sealed class CatchUpModel(AppDb db, TimeProvider clock) : FamilyPage(db, clock)
{
    public const string Yes = "yes";
    public const string No = "no";
    public const string Changed = "changed";

    /// <summary>One line as the form carries it.</summary>
    public sealed class Answered
    {
        /// <summary>The line's key.</summary>
        public string? Of { get; set; }

        /// <summary>Of the entry that a “yes” writes, minted with the page.</summary>
        public Guid Id { get; set; }

        /// <summary>Nothing where the line was passed over.</summary>
        public string? Answer { get; set; }

        public string? Minutes { get; set; }

        public List<Guid> Who { get; set; } = [];
    }

    [BindProperty]
    public List<Answered> Lines { get; set; } = [];

    /// <summary>Days that went as planned, all of them.</summary>
    [BindProperty]
    public List<string> Whole { get; set; } = [];

    public IReadOnlyList<CatchUpDay> Days { get; private set; } = [];
    public EntryWords Words { get; private set; } = null!;

    /// <summary>Messages beside lines, by the line's key.</summary>
    public Dictionary<string, string> Faults { get; } = [];

    public Answered AnswerOf(CatchUpLine line) => Lines.FirstOrDefault(l => l.Of == line.Key.ToString()) ?? new Answered
    {
        Of = line.Key.ToString(),
        Id = Guid.CreateVersion7(),
        Minutes = EntryForm.CommonOf(line.Facts).ToString(CultureInfo.InvariantCulture),
        Who = [.. line.Facts.Times.Select(t => t.LearnerId)],
    };

    public bool IsWhole(CatchUpDay day) => Whole.Contains(day.Date.Iso());

    public async Task<IActionResult> OnGetAsync()
    {
        await LoadAsync();
        return Page();
    }

    public async Task<IActionResult> OnPostAsync()
    {
        if (!ModelState.IsValid)
            return BadRequest();
        var keys = new List<(Answered Line, CatchUpKey Key)>();
        foreach (var line in Lines)
        {
            if (!CatchUpKey.TryParse(line.Of, out var key) || line.Id == Guid.Empty || line.Answer is not (null or "" or Yes or No or Changed))
                return BadRequest();
            keys.Add((line, key));
        }

        if (keys.DistinctBy(k => k.Key).Count() != keys.Count || keys.DistinctBy(k => k.Line.Id).Count() != keys.Count)
            return BadRequest();
        if (!await AreOursAsync(keys))
            return NotFound();
        await LoadAsync();
        var said = keys.Where(k => k.Line.Answer is Yes or No or Changed || Whole.Contains(k.Key.Date.Iso()) && k.Key.Kind is not (CatchUpKind.Usual or CatchUpKind.Begun))
            .Select(k => (k.Line, k.Key, Answer: k.Line.Answer is { Length: > 0 } own ? own : Yes)).ToList();
        var ids = said.Select(s => s.Line.Id).ToList();
        var known = (await Db.LogEntries.Where(e => ids.Contains(e.Id)).Select(e => e.Id).ToListAsync(Ct)).ToHashSet();
        var decided = await DecidedAsync([.. said.Where(s => s.Answer == No && s.Key.Kind == CatchUpKind.Planned).Select(s => s.Key.Source)]);
        // What was sent before stands already.
        said.RemoveAll(s => s.Answer == No ? decided.Contains(s.Key.Source) : known.Contains(s.Line.Id));
        var offered = Days.SelectMany(d => d.Lines).ToDictionary(l => l.Key);
        if (said.Exists(s => s.Answer != No && !offered.ContainsKey(s.Key)))
            return Overtaken();
        var deeds = said.Where(s => s.Answer != No).Select(s => (s.Line, s.Key, Facts: FactsOf(s.Line, offered[s.Key], s.Answer))).ToList();
        if (Faults.Count > 0)
            return Again();
        return await WriteAsync([.. deeds.Select(d => (d.Line.Id, d.Key, d.Facts!))], [.. said.Where(s => s.Answer == No && s.Key.Kind == CatchUpKind.Planned).Select(s => s.Key.Source)]);
    }

    private async Task<IActionResult> WriteAsync(List<(Guid EntryId, CatchUpKey Key, EntryFacts Facts)> deeds, List<Guid> notDone)
    {
        var ids = deeds.Where(d => d.Key.Kind == CatchUpKind.Planned).Select(d => d.Key.Source).Concat(notDone).ToList();
        var work = (await Db.WorkAsync(Db.PlannedSessions.Where(s => ids.Contains(s.Id)), Ct)).ToDictionary(w => w.Session.Id);
        var author = await AuthorAsync();
        // By their days, so that a course's bookmark moves lesson by lesson.
        foreach (var (entryId, key, facts) in deeds.OrderBy(d => d.Key.Date))
        {
            Db.LogEntries.Add(key.Kind == CatchUpKind.Planned ? work[key.Source].MarkDone(entryId, facts, author, Now) : LogEntry.Write(entryId, facts, author, Now));
        }

        foreach (var id in notDone.Where(id => work[id].Session.State == SessionState.Planned))
            work[id].Session.NotToday();
        if (!await SaveNewAsync())
        {
            // The same form may have come twice in one moment: then all of it stands.
            var written = deeds.Select(d => d.EntryId).ToList();
            if (await Db.LogEntries.CountAsync(e => written.Contains(e.Id), Ct) != written.Count || written.Count == 0)
                return Overtaken();
        }

        Say(deeds.Count switch
        {
            0 when notDone.Count == 0 => "Nothing was answered, so nothing was written.",
            0 => "What was not done is marked; it can be moved or let go.",
            1 => "One thing is logged on the day on which it was done.",
            _ => $"{deeds.Count} things are logged, each on the day on which it was done.",
        });
        return LocalRedirect("/log/catch-up");
    }

    private EntryFacts? FactsOf(Answered line, CatchUpLine offered, string answer)
    {
        if (answer != Changed)
            return offered.Facts;
        if (!int.TryParse(line.Minutes, NumberStyles.None, CultureInfo.InvariantCulture, out var minutes) || minutes is < 1 or > 1440)
            Faults[line.Of!] = "Give whole minutes from 1 to 1440.";
        else if (line.Who.Count == 0)
            Faults[line.Of!] = "Tick at least one child, or say no.";
        else
            return offered.Facts with { Times = [.. line.Who.Distinct().Select(l => new LearnerTime(l, new Minutes(minutes)))] };
        return null;
    }

    private IActionResult Overtaken()
    {
        Db.ChangeTracker.Clear();
        ModelState.AddModelError("", "Some of this was logged or changed meanwhile, so nothing was written. Your answers to what is left are still here; save once more.");
        return Again(StatusCodes.Status409Conflict);
    }

    private async Task<HashSet<Guid>> DecidedAsync(List<Guid> sessions) =>
        [.. await Db.PlannedSessions.Where(s => sessions.Contains(s.Id) && s.State != SessionState.Planned).Select(s => s.Id).ToListAsync(Ct)];

    /// <summary>Whether everything that the form names is the family's.</summary>
    private async Task<bool> AreOursAsync(List<(Answered Line, CatchUpKey Key)> keys)
    {
        List<Guid> Of(CatchUpKind kind) => [.. keys.Where(k => k.Key.Kind == kind).Select(k => k.Key.Source).Distinct()];
        var (planned, appointments, sittings, begun, usual) = (Of(CatchUpKind.Planned), Of(CatchUpKind.Appointment), Of(CatchUpKind.Sitting), Of(CatchUpKind.Begun), Of(CatchUpKind.Usual));
        var learners = keys.SelectMany(k => k.Line.Who).Distinct().ToList();
        return await Db.PlannedSessions.CountAsync(s => planned.Contains(s.Id), Ct) == planned.Count
            && await Db.Appointments.CountAsync(a => appointments.Contains(a.Id), Ct) == appointments.Count
            && await Db.ReadingSittings.CountAsync(s => sittings.Contains(s.Id), Ct) == sittings.Count
            && await Db.AheadMarks.CountAsync(m => begun.Contains(m.Id), Ct) == begun.Count
            && await Db.LogEntries.CountAsync(e => usual.Contains(e.Id), Ct) == usual.Count
            && await Db.Learners.CountAsync(l => learners.Contains(l.Id), Ct) == learners.Count;
    }

    private async Task LoadAsync()
    {
        Words = await EntryWords.LoadAsync(Db, Ct);
        Days = await CatchUpDays.LoadAsync(Db, Family, Today, Words, Ct);
    }
}
