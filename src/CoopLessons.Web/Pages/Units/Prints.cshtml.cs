using CoopLessons.Core.Prepare.Printing;
using CoopLessons.Core.Units;
using CoopLessons.Data;
using CoopLessons.Data.Files;
using CoopLessons.Data.Prepare.Printing;
using CoopLessons.Data.Units;
using CoopLessons.Documents.Uploads;
using CoopLessons.Web.Files;
using CoopLessons.Web.Printing;
using Microsoft.AspNetCore.Mvc;
using Microsoft.EntityFrameworkCore;

namespace CoopLessons.Web.Pages.Units;

/// <summary>A printable of the activity, with its file where it has one.</summary>
/// <param name="At">Its place on the page, by which its forms are told apart.</param>
/// <param name="Asked">What the activity asks for; null for one of the family's own.</param>
public sealed record PrintLine(int At, string Title, Printable? Asked, PrintSource? Source, StoredFile? File, bool OnShelf)
{
    /// <summary>Rows of the form; as they were typed where they were refused.</summary>
    public IReadOnlyList<ChoiceInput> Choices { get; init; } = [];

    /// <summary>Whether the form that came in is this one.</summary>
    public bool Refused { get; init; }
}

/// <summary>From which files an activity's printables are printed, and what of them for whom.</summary>
[LargestUpload(PrintableFile.MostBytes)]
[RequestSizeLimit(PrintableFile.MostBytes + LargestUploadAttribute.Around)]
public sealed class PrintsModel(AppDb db, TimeProvider clock, FileShelf shelf, BroughtFile brought) : UnitsPage(db, clock)
{
    [BindProperty]
    public List<ChoiceInput> Choices { get; set; } = [];

    public Activity Activity { get; private set; } = null!;
    public IReadOnlyList<PrintLine> Lines { get; private set; } = [];

    /// <summary>The place of the form that brings something the activity does not ask for.</summary>
    public int AtOwn => Lines.Count;

    /// <summary>Which form came in.</summary>
    [BindProperty(SupportsGet = true)]
    public int? At { get; set; }

    /// <summary>The title typed for something of one's own, where it was refused.</summary>
    public string? OwnTitle { get; private set; }

    public async Task<IActionResult> OnGetAsync(Guid id, Guid activityId, bool more)
    {
        if (!await FindAsync(id, activityId))
            return NotFound();
        var refused = LargestUploadAttribute.Refused(HttpContext);
        if (refused)
            ModelState.AddModelError("File", UploadWords.TooLarge);
        await ShowAsync(more ? At : null);
        return refused ? Again(StatusCodes.Status413PayloadTooLarge) : Page();
    }

    public async Task<IActionResult> OnPostUploadAsync(Guid id, Guid activityId, Guid? sourceId, int? version, string? printable, IFormFile? file)
    {
        if (!await FindAsync(id, activityId))
            return NotFound();
        var source = sourceId is { } known ? await Db.PrintSources.AsNoTracking().SingleOrDefaultAsync(s => s.Id == known && s.ActivityId == activityId, Ct) : null;
        if (sourceId is not null && source is null)
            return NotFound();
        var title = source?.Printable ?? printable ?? "";
        if (title.Length == 0)
            ModelState.AddModelError("Printable", "Write what is printed.");
        else if (title.Length > PrintSource.LongestTitle)
            ModelState.AddModelError("Printable", $"At most {PrintSource.LongestTitle} signs here.");
        if (file is null)
            ModelState.AddModelError("File", "Choose a file.");
        var status = StatusCodes.Status422UnprocessableEntity;
        if (ModelState.IsValid)
        {
            var answer = await brought.TakeAsync(activityId, title, sourceId, version, file!, await AuthorAsync(), Now, Ct);
            if (answer.Fault is null)
            {
                Say(answer.Fits ? $"“{title}” can be printed." : $"“{title}” has its new file. Pages that were chosen are not in it, so all of its pages are chosen now.");
                return RedirectToPage(new { id, activityId });
            }

            ModelState.AddModelError(answer.OfTitle ? "Printable" : "File", answer.Fault);
            status = answer.Status;
        }

        OwnTitle = printable;
        await ShowAsync(ofOwn: source is null && Activity.Details.Printables.All(p => p.Title != title));
        return Again(status);
    }

    public async Task<IActionResult> OnPostChooseAsync(Guid id, Guid activityId, Guid sourceId, int version, bool more)
    {
        if (!await FindAsync(id, activityId) || await Db.PrintSources.SingleOrDefaultAsync(s => s.Id == sourceId && s.ActivityId == activityId, Ct) is not { } source)
            return NotFound();
        var pages = await Db.StoredFiles.Where(f => f.Hash == source.Hash).Select(f => f.Pages).SingleAsync(Ct);
        if (Choices.Count > PrintSource.MostChoices)
            return BadRequest();
        if (ChoiceInput.Read(Choices, pages, ModelState) is { } choices)
        {
            source.Choose(choices);
            Expect(source, version);
            if (await SaveAsync())
            {
                Say($"How “{source.Printable}” is printed is saved.");
                return more ? RedirectToPage(null, null, new { id, activityId, more, At }, $"print-{At}") : RedirectToPage(new { id, activityId });
            }

            await ShowAsync();
            return Again(StatusCodes.Status409Conflict);
        }

        await ShowAsync();
        return Again();
    }

    private async Task<bool> FindAsync(Guid id, Guid activityId)
    {
        var found = await Db.Activities.AsNoTracking().SingleOrDefaultAsync(a => a.UnitId == id && a.Id == activityId, Ct);
        Activity = found!;
        return found is not null;
    }

    /// <param name="another">At which place a row for another way of printing is offered.</param>
    /// <param name="ofOwn">The form that came in brings something of the family's own; its place follows from what is there by now.</param>
    private async Task ShowAsync(int? another = null, bool ofOwn = false)
    {
        var activityId = Activity.Id;
        var sources = await Db.PrintSources.AsNoTracking().Where(s => s.ActivityId == activityId).ToListAsync(Ct);
        var hashes = sources.Select(s => s.Hash).Distinct().ToList();
        var files = await Db.StoredFiles.AsNoTracking().Where(f => hashes.Contains(f.Hash)).ToDictionaryAsync(f => f.Hash, Ct);
        var held = await shelf.HeldAsync(Family.Id, files.Keys, Ct);
        // A file that was exchanged between the two readings is shown as missing; the next opening shows the new one.
        sources.RemoveAll(s => !files.ContainsKey(s.Hash));
        var asked = Activity.Details.Printables.DistinctBy(p => p.Title).ToList();
        var own = WeekPacket.InOrder(Activity, sources).Where(s => asked.TrueForAll(p => p.Title != s.Printable)).ToList();
        if (ofOwn)
            At = asked.Count + own.Count;
        Lines =
        [
            .. asked.Select(p => (p.Title, Asked: (Printable?)p, Source: sources.Find(s => s.Printable == p.Title)))
                .Concat(own.Select(s => (Title: s.Printable, Asked: (Printable?)null, Source: (PrintSource?)s)))
                .Select((l, at) => new PrintLine(at, l.Title, l.Asked, l.Source, l.Source is null ? null : files[l.Source.Hash], l.Source is null || held.Contains(l.Source.Hash))
                {
                    Choices = at == At && Choices.Count > 0 ? Choices : Rows(l.Source, at == another),
                    Refused = at == At && !ModelState.IsValid,
                }),
        ];
    }

    private static List<ChoiceInput> Rows(PrintSource? source, bool another)
    {
        var rows = (source?.Choices ?? []).Select(ChoiceInput.Of).ToList();
        if (another && rows.Count < PrintSource.MostChoices)
            rows.Add(new ChoiceInput { Offered = true, Names = true });
        return rows;
    }
}
