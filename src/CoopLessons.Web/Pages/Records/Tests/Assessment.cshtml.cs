using CoopLessons.Data;
using CoopLessons.Data.Evidence;
using CoopLessons.Data.Families;
using CoopLessons.Data.Requirements;
using Microsoft.AspNetCore.Mvc;
using Microsoft.EntityFrameworkCore;

namespace CoopLessons.Web.Pages.Assessments;

/// <summary>One test or evaluation: added at "new", changed and taken away at its id.</summary>
public sealed class AssessmentModel(AppDb db, TimeProvider clock) : FamilyPage(db, clock)
{
    // So many of the newest papers and photos are offered as evidence.
    private const int Offered = 60;

    [BindProperty(SupportsGet = true, Name = "learnerId")]
    public Guid LearnerId { get; set; }

    [BindProperty(Name = nameof(Input))]
    public AssessmentInput Input { get; set; } = new();

    /// <summary>Made with the form, so that a form sent twice adds one row.</summary>
    [BindProperty]
    public Guid NewId { get; set; }

    [BindProperty]
    public int Version { get; set; }

    public Learner Learner { get; private set; } = null!;
    public Assessment? Row { get; private set; }

    /// <summary>Pieces of the learner, the newest first, with the one that is chosen.</summary>
    public IReadOnlyList<Piece> Pieces { get; private set; } = [];

    public string Overview => $"/records/{LearnerId}/tests";

    public async Task<IActionResult> OnGetAsync(string id)
    {
        if (!await FindAsync(id))
            return NotFound();
        (Input, NewId, Version) = (AssessmentInput.Of(Row), Guid.CreateVersion7(), Row?.Version ?? 0);
        return Page();
    }

    public async Task<IActionResult> OnPostAsync(string id)
    {
        if (!await FindAsync(id) || (Input.PieceId is { } piece && piece != Row?.PieceId && !await Db.StandingPieces().AnyAsync(p => p.Id == piece, Ct)))
            return NotFound();
        if (!ModelState.IsValid)
            return Again();
        if (Row is null && NewId == Guid.Empty)
            return BadRequest();
        var facts = Input.Read();
        if (Row is null)
        {
            if (!await Db.Assessments.AnyAsync(a => a.Id == NewId, Ct))
            {
                Db.Add(new Assessment(NewId, LearnerId, facts));
                if (!await SaveNewAsync() && !await Db.Assessments.AnyAsync(a => a.Id == NewId, Ct))
                    return AgainAfterOthers();
            }
        }
        else
        {
            Row.Describe(facts);
            Expect(Row, Version);
            if (!await SaveAsync())
                return await AgainAsync(id);
        }

        Say($"“{facts.What}” is saved.");
        return LocalRedirect(Overview);
    }

    public async Task<IActionResult> OnPostRemoveAsync(string id)
    {
        if (!await FindAsync(id) || Row is null)
            return NotFound();
        ModelState.Clear();
        Db.Remove(Row);
        Expect(Row, Version);
        var what = Row.What;
        if (!await SaveAsync())
            return await AgainAsync(id);
        Say($"“{what}” is taken away.");
        return LocalRedirect(Overview);
    }

    private async Task<IActionResult> AgainAsync(string id)
    {
        if (!await FindAsync(id) || Row is null)
            return NotFound();
        if (Input.Results.Count == 0)
            Input = AssessmentInput.Of(Row);
        Version = Row.Version;
        ModelState.Remove(nameof(Version));
        return Again(StatusCodes.Status409Conflict);
    }

    private async Task<bool> FindAsync(string id)
    {
        if (await Db.Learners.AsNoTracking().SingleOrDefaultAsync(l => l.Id == LearnerId, Ct) is not { } learner)
            return false;
        Learner = learner;
        Row = Guid.TryParse(id, out var rowId) ? await Db.Assessments.SingleOrDefaultAsync(a => a.Id == rowId && a.LearnerId == LearnerId, Ct) : null;
        if (Row is null && id != "new")
            return false;
        var pieces = (await Db.StandingPieces().AsNoTracking().Where(p => p.Kind == PieceKind.Paper || p.Kind == PieceKind.Photo).OrderByDescending(p => p.Date).ThenByDescending(p => p.Id).Take(5 * Offered).ToListAsync(Ct))
            .Where(p => p.Learners.Count == 0 || p.Learners.Contains(LearnerId)).Take(Offered).ToList();
        if (Row?.PieceId is { } chosen && pieces.TrueForAll(p => p.Id != chosen) && await Db.Pieces.AsNoTracking().SingleOrDefaultAsync(p => p.Id == chosen, Ct) is { } kept)
            pieces.Insert(0, kept);
        Pieces = pieces;
        return true;
    }
}
