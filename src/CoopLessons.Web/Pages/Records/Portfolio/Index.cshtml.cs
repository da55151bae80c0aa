using CoopLessons.Core.Evidence;
using CoopLessons.Data;
using CoopLessons.Data.Evidence;
using CoopLessons.Documents;
using CoopLessons.Web.Pages.Log;
using CoopLessons.Web.Pages.Pieces;
using CoopLessons.Web.Planning;
using CoopLessons.Web.Travel;
using Microsoft.AspNetCore.Mvc;
using Microsoft.EntityFrameworkCore;

namespace CoopLessons.Web.Pages.Records;

/// <summary>A learner's portfolio of a year: what goes into it, what is written of each subject, which samples stand for it.</summary>
public sealed class PortfolioModel(AppDb db, TimeProvider clock, FullPortfolioWork work, FullPortfolios made, LayoutLine line) : LearnerYearPage(db, clock)
{
    [BindProperty]
    public PortfolioInput Input { get; set; } = new();

    /// <summary>Null while there is no learner or no year.</summary>
    public PortfolioYear? Portfolio { get; private set; }

    public EntryWords Words { get; private set; } = null!;

    /// <summary>Names of this family that paper shows otherwise, with how.</summary>
    public IReadOnlyList<(string Name, string OnPaper)> Unprintable { get; private set; } = [];

    public async Task<IActionResult> OnGetAsync()
    {
        if (!await LoadAsync())
            return NotFound();
        if (Portfolio is not null)
            Input = PortfolioInput.From(Portfolio, Portfolio.IsSaved);
        return Page();
    }

    /// <param name="draft">Key of the subject whose facts are put into its text; null for saving alone.</param>
    public async Task<IActionResult> OnPostAsync(string? draft)
    {
        if (!await LoadAsync() || Portfolio is null)
            return NotFound();
        if (Input.Parts.Exists(p => !Enum.IsDefined(p)))
            ModelState.AddModelError("Input.Parts", "One of these parts is not known.");
        if (draft is not null && Portfolio.Subjects.FirstOrDefault(s => s.Subject.Key == draft) is { } subject && Input.Subjects.Find(s => s.Key == draft) is { } told)
            told.Narrative = string.Join('\n', new[] { (told.Narrative ?? "").Trim(), string.Join(' ', subject.Evidence.Sentences) }.Where(t => t.Length > 0));
        if (!ModelState.IsValid)
            return Again();
        var choices = Portfolio.Choices;
        if (Portfolio.IsSaved)
            Expect(choices, Input.Version ?? 0);
        else
            Db.Portfolios.Add(choices);
        Input.WriteTo(choices);
        if (!(Portfolio.IsSaved ? await SaveAsync() : await SaveNewAsync()))
            return Portfolio.IsSaved ? Again(StatusCodes.Status409Conflict) : AgainAfterOthers();
        Say(draft is null ? "Saved." : "The facts stand in the text now. Change them as you like.");
        return Redirect(Address(draft));
    }

    /// <summary>Asks for the full portfolio, which takes a while.</summary>
    public async Task<IActionResult> OnPostFullAsync()
    {
        ModelState.Clear();
        if (!await FindAsync() || Log is null)
            return NotFound();
        if (work.Ask(Family.Id, Db.Current.PersonId!.Value, Learner!.Id, Year!.Id) is null)
            Say("The server is busy with what others asked for. Ask again in a minute.");
        return Redirect(Address("take"));
    }

    public async Task<IActionResult> OnPostCallOffAsync()
    {
        ModelState.Clear();
        if (!await FindAsync() || Log is null)
            return NotFound();
        if (Job is { IsOver: false } job)
            line.Cancel(Family.Id, job.Id);
        return Redirect(Address("take"));
    }

    public async Task<IActionResult> OnGetProgressAsync() => await FindAsync() && Log is not null ? this.Progress(Waiting) : NotFound();

    /// <summary>The making of the full portfolio; null where nobody asked for it.</summary>
    public JobStanding? Job => work.Standing(Family.Id, Learner!.Id, Year!.Id);

    /// <summary>The full portfolio as it was made; null where none lies there.</summary>
    public MadeFile? Made => made.Find([Family.Id, Learner!.Id, Year!.Id], Now);

    /// <summary>Why the last making came to nothing; null where it did not.</summary>
    public string? Fault => Job switch
    {
        { State: JobState.Failed } => JobTells,
        { Result: FullPortfolioMade { Fault: { } fault } } => fault,
        _ => null,
    };

    public string JobTells => JobWords.OfMaking(Job, "The full portfolio");

    public WorkAtHand Waiting => new(Job, JobTells, Address(null), At("Progress"));

    public PieceList Pieces(IReadOnlyList<Piece> pieces) => new(pieces, Words, Day: true);

    public string Paper(string size) => $"/records/{Learner!.Id}/{Year!.Id}/portfolio-{size}.pdf";

    public string At(string handler) => Url.Page("/Records/Portfolio/Index", handler, new { learner = Learner!.Id, year = Year!.Id })!;

    private string Address(string? draft) =>
        Url.Page("/Records/Portfolio/Index", new { learner = Learner!.Id, year = Year!.Id }) + (draft is null ? "" : $"#{draft}");

    private async Task<bool> LoadAsync()
    {
        if (!await FindAsync())
            return false;
        if (Log is null || Year is null)
            return true;
        Portfolio = await PortfolioYear.LoadAsync(Db, Log, Year, Today, Ct);
        Words = await EntryWords.LoadAsync(Db, Ct);
        Unprintable = [.. new[] { Learner!.Name, Family.Name, Year.Name }.Concat(Log.Ledger.Subjects.Select(s => s.Name)).Where(n => !PaperLetters.CanPrint(n)).Distinct().Select(n => (n, PaperLetters.OnPaper(n)))];
        return true;
    }
}
