using CoopLessons.Core.Schedule;
using CoopLessons.Data;
using CoopLessons.Data.Schedule;
using CoopLessons.Web.Pages.Today;
using Microsoft.AspNetCore.Mvc;

namespace CoopLessons.Web.Pages.Week;

/// <summary>A day fell through: what was planned for it goes to other days or is let go, all or none, and back again.</summary>
public sealed class LostModel(AppDb db, TimeProvider clock) : FamilyPage(db, clock)
{
    public const string Keep = "keep";
    public const string LetGo = "let-go";
    private const string TakenKey = "TakenChanges";
    private const int DaysOffered = 10;

    public sealed class Choice
    {
        public Guid SessionId { get; set; }

        /// <summary><see cref="Keep"/>, <see cref="LetGo"/>, or a date.</summary>
        public string? To { get; set; }
    }

    /// <summary>A change as a form carries it.</summary>
    public sealed class Move
    {
        public Guid SessionId { get; set; }

        /// <summary>As <see cref="PlaceText"/> writes it.</summary>
        public string? From { get; set; }
        public string? To { get; set; }
    }

    [BindProperty]
    public List<Choice> Input { get; set; } = [];

    [BindProperty]
    public List<Move> Back { get; set; } = [];

    public DateOnly Date { get; private set; }

    /// <summary>What of the day is not done.</summary>
    public IReadOnlyList<PlannedWork> Undone { get; private set; } = [];
    public IReadOnlyList<DateOnly> Offered { get; private set; } = [];

    /// <summary>Changes that are shown before they are taken.</summary>
    public IReadOnlyList<PlanChange> Shown { get; private set; } = [];

    /// <summary>Changes that were taken a moment ago.</summary>
    public IReadOnlyList<PlanChange> Taken { get; private set; } = [];

    public string TitleOf(Guid sessionId) => _titles.GetValueOrDefault(sessionId, "");

    private Dictionary<Guid, string> _titles = [];

    public async Task<IActionResult> OnGetAsync(string date)
    {
        if (!await LoadAsync(date))
            return NotFound();
        if (TempData[TakenKey] is string taken)
        {
            Taken = PlaceText.ReadAll(taken);
            var ids = Taken.Select(t => t.SessionId).ToList();
            _titles = (await Db.WorkAsync(Db.PlannedSessions.Where(s => ids.Contains(s.Id)), Ct)).ToDictionary(w => w.Session.Id, w => w.Title);
        }

        Input = [.. Undone.Select(w => new Choice { SessionId = w.Session.Id, To = Offered[0].Iso() })];
        return Page();
    }

    /// <summary>Shows what the choices would change; nothing is changed yet.</summary>
    public Task<IActionResult> OnPostShowAsync(string date) => WithChangesAsync(date, changes =>
    {
        Shown = changes;
        return Task.FromResult<IActionResult>(Page());
    });

    public Task<IActionResult> OnPostTakeAsync(string date) => WithChangesAsync(date, async changes =>
    {
        if (await Plan.ApplyAsync(Db, changes, Ct) != PlanAnswer.Taken || !await SaveAsync())
            return await OvertakenAsync(date);
        TempData[TakenKey] = PlaceText.WriteAll(changes);
        return LocalRedirect($"/week/lost/{Date.Iso()}");
    });

    public async Task<IActionResult> OnPostUndoAsync(string date)
    {
        if (!await LoadAsync(date))
            return NotFound();
        if (!ModelState.IsValid || Back.Count == 0)
            return BadRequest();
        var changes = new List<PlanChange>();
        foreach (var back in Back)
        {
            if (PlaceText.Read(back.From) is not { } from || PlaceText.Read(back.To) is not { } to)
                return BadRequest();
            changes.Add(new PlanChange(back.SessionId, from, to));
        }

        if (changes.Any(c => c.Then.Date != Date))
            return NotFound();
        var answer = await Plan.ApplyAsync(Db, changes, Ct);
        if (answer == PlanAnswer.Unknown)
            return NotFound();
        if (answer == PlanAnswer.Overtaken || !await SaveAsync())
            return await OvertakenAsync(date);
        Say($"{Date.InWords(Today)} is as it was.");
        return LocalRedirect($"/today/{Date.Iso()}");
    }

    private async Task<IActionResult> WithChangesAsync(string date, Func<IReadOnlyList<PlanChange>, Task<IActionResult>> go)
    {
        if (!await LoadAsync(date))
            return NotFound();
        if (!ModelState.IsValid)
            return BadRequest();
        var moves = new List<(Guid SessionId, DateOnly? To)>();
        for (var i = 0; i < Input.Count; i++)
        {
            if (Input[i].To == LetGo)
                moves.Add((Input[i].SessionId, null));
            else if (DayWords.TryRead(Input[i].To, out var to) && to >= PlanForm.Earliest && to != Date)
                moves.Add((Input[i].SessionId, to));
            else if (Input[i].To != Keep)
                ModelState.AddModelError($"Input[{i}].To", "Choose a day from the list, keep it, or let it go.");
        }

        if (await Plan.ToDaysAsync(Db, Date, moves, Ct) is not { } changes)
            return NotFound();
        var answer = await Plan.ApplyAsync(Db, changes, Ct);
        // What is merely shown must not linger in the unit of work.
        Db.ChangeTracker.Clear();
        if (answer == PlanAnswer.Unknown)
            return NotFound();
        if (answer == PlanAnswer.Overtaken)
            return await OvertakenAsync(date);
        if (ModelState.IsValid && changes.Count == 0)
            ModelState.AddModelError("", "Everything is kept, so there is nothing to change. Choose a day for something, or let it go.");
        return ModelState.IsValid ? await go(changes) : Again();
    }

    private async Task<IActionResult> OvertakenAsync(string date)
    {
        Db.ChangeTracker.Clear();
        await LoadAsync(date);
        ModelState.Clear();
        ModelState.AddModelError("", "The plan was changed meanwhile, so nothing was moved. This is how the day stands now.");
        Input = [.. Undone.Select(w => new Choice { SessionId = w.Session.Id, To = Offered[0].Iso() })];
        return Again(StatusCodes.Status409Conflict);
    }

    private async Task<bool> LoadAsync(string text)
    {
        if (!DayWords.TryRead(text, out var date))
            return false;
        Date = date;
        Undone = await Db.WorkAsync(Db.PlannedSessions.Where(s => s.Date == date && (s.State == SessionState.Planned || s.State == SessionState.NotDone)), Ct);
        // A day gone by is made up for from today on.
        Offered = (await TeachingDays.LoadAsync(Db, Ct)).After(date >= Today ? date : Today.AddDays(-1), DaysOffered);
        _titles = Undone.ToDictionary(w => w.Session.Id, w => w.Title);
        return true;
    }
}
