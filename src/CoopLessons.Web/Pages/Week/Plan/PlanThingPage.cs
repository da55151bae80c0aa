using CoopLessons.Data;
using CoopLessons.Data.Tenancy;
using Microsoft.AspNetCore.Mvc;
using Microsoft.EntityFrameworkCore;

namespace CoopLessons.Web.Pages.Planning;

/// <summary>
/// The page of one thing that the family plans with: added at the address that ends in "new", changed and removed at the
/// address that ends in its id.
/// </summary>
public abstract class PlanThingPage<TRow, TInput>(AppDb db, TimeProvider clock) : FamilyPage(db, clock)
    where TRow : class, IVersioned
    where TInput : class, new()
{
    private const string New = "new";

    [BindProperty]
    public TInput Input { get; set; } = new();

    /// <summary>Made with the form, so that a form sent twice adds one row.</summary>
    [BindProperty]
    public Guid NewId { get; set; }

    [BindProperty]
    public int Version { get; set; }

    /// <summary>Null while it is being added.</summary>
    public TRow? Row { get; private set; }
    public bool IsNew => Row is null;
    public PlanChoices Choices { get; private set; } = PlanChoices.None;

    /// <summary>Set where removal was asked for and is to be said once more.</summary>
    public Removal? Removal { get; private set; }

    /// <summary>The page that lists all things of this kind.</summary>
    protected virtual string Overview => "/week/plan";

    /// <summary>Where one is after it was saved.</summary>
    protected virtual string After(Guid id) => Overview;

    protected abstract IQueryable<TRow> Rows(Guid id);

    protected abstract TInput FormOf(TRow row);

    protected abstract string TitleOf(TRow row);

    /// <summary>Whether every id in the form is one of the family's own.</summary>
    protected abstract bool NamesOwn();

    /// <summary>Says beside their fields what the fields' own rules cannot see.</summary>
    protected virtual void Check() { }

    /// <summary>A new row as the form says it. The form was found sound.</summary>
    protected abstract Task<TRow> MakeAsync(Guid id);

    protected abstract void Write(TRow row);

    /// <summary>What a form for something new begins with.</summary>
    protected virtual Task BeginAsync() => Task.CompletedTask;

    /// <summary>What becomes of what hangs on the row once it is removed.</summary>
    protected abstract Task<IReadOnlyList<string>> BecomesAsync(TRow row);

    /// <summary>Loosens what hangs on the row and would hold it.</summary>
    protected virtual Task LoosenAsync(TRow row) => Task.CompletedTask;

    /// <summary>The sentence after a change.</summary>
    protected virtual string Saved(TRow row) => $"“{TitleOf(row)}” is saved.";

    public async Task<IActionResult> OnGetAsync(string id, bool remove)
    {
        if (!await FindAsync(id))
            return NotFound();
        if (Row is null)
        {
            NewId = Guid.CreateVersion7();
            await BeginAsync();
            return Page();
        }

        (Input, Version) = (FormOf(Row), Row.Version);
        if (remove)
            await AskAsync(Row);
        return Page();
    }

    public async Task<IActionResult> OnPostAsync(string id)
    {
        if (!await FindAsync(id) || !NamesOwn())
            return NotFound();
        Check();
        if (!ModelState.IsValid)
            return Again();
        if (Row is null)
            return await AddAsync();
        Write(Row);
        Expect(Row, Version);
        if (!await SaveAsync())
        {
            if (!await FindAsync(id))
                return NotFound();
            Version = Row.Version;
            ModelState.Remove(nameof(Version));
            return Again(StatusCodes.Status409Conflict);
        }

        Say(Saved(Row));
        return LocalRedirect(After(Guid.Parse(id)));
    }

    public async Task<IActionResult> OnPostRemoveAsync(string id)
    {
        if (!await FindAsync(id) || Row is null)
            return NotFound();
        // The fields of the other form did not come with this one.
        ModelState.Clear();
        var title = TitleOf(Row);
        await LoosenAsync(Row);
        Db.Remove(Row);
        Expect(Row, Version);
        if (!await SaveAsync())
        {
            if (!await FindAsync(id))
                return NotFound();
            await AskAsync(Row);
            return Again(StatusCodes.Status409Conflict);
        }

        Say($"“{title}” is removed.");
        return LocalRedirect(Overview);
    }

    private async Task<IActionResult> AddAsync()
    {
        if (NewId == Guid.Empty)
            return BadRequest();
        if (await Rows(NewId).SingleOrDefaultAsync(Ct) is { } before)
        {
            Say(Saved(before));
            return LocalRedirect(After(NewId));
        }

        var row = await MakeAsync(NewId);
        Db.Add(row);
        if (!await SaveNewAsync() && !await Rows(NewId).AnyAsync(Ct))
            return AgainAfterOthers();
        Say(Saved(row));
        return LocalRedirect(After(NewId));
    }

    private async Task AskAsync(TRow row) =>
        Removal = new Removal(TitleOf(row), row.Version, Request.Path.Value!, await BecomesAsync(row));

    /// <summary>False where the address names neither "new" nor a row of the family.</summary>
    private protected async Task<bool> FindAsync(string id)
    {
        Choices = await PlanChoices.LoadAsync(Db, Ct);
        Row = Guid.TryParse(id, out var rowId) ? await Rows(rowId).SingleOrDefaultAsync(Ct) : null;
        return Row is not null || id == New;
    }

    /// <summary>What becomes of planned sessions that go with their source.</summary>
    protected async Task<IReadOnlyList<string>> SessionsGoAsync(IQueryable<Data.Schedule.PlannedSession> sessions, string one, string many)
    {
        var states = await sessions.Select(s => s.State).ToListAsync(Ct);
        var done = states.Count(s => s == Data.Schedule.SessionState.Done);
        var open = states.Count - done;
        return
        [
            open == 0 ? $"No {one} of it is planned." : open == 1 ? $"1 planned {one} goes from the plan with it." : $"{open} planned {many} go from the plan with it.",
            .. done == 0 ? Array.Empty<string>() : [$"What the log says of the {(done == 1 ? "one that is" : $"{done} that are")} done stays as it is written."],
            "To keep it for later, set it aside instead.",
        ];
    }
}
