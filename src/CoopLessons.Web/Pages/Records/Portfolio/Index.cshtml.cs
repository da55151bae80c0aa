using CoopLessons.Core.Evidence;
using CoopLessons.Data;
using CoopLessons.Data.Evidence;
using CoopLessons.Documents;
using CoopLessons.Web.Pages.Log;
using CoopLessons.Web.Pages.Pieces;
using Microsoft.AspNetCore.Mvc;
using Microsoft.EntityFrameworkCore;

namespace CoopLessons.Web.Pages.Records;

/// <summary>A learner's portfolio of a year: what goes into it, what is written of each subject, which samples stand for it.</summary>
public sealed class PortfolioModel(AppDb db, TimeProvider clock) : LearnerYearPage(db, clock)
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
            Input = PortfolioInput.From(Portfolio, IsSaved);
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
            told.Narrative = string.Join('\n', new[] { (told.Narrative ?? "").Trim(), string.Join(' ', NarrativeFacts.Of(subject.Evidence.Facts)) }.Where(t => t.Length > 0));
        if (!ModelState.IsValid)
            return Again();
        var choices = Portfolio.Choices;
        if (IsSaved)
            Expect(choices, Input.Version ?? 0);
        else
            Db.Portfolios.Add(choices);
        Input.WriteTo(choices);
        if (!(IsSaved ? await SaveAsync() : await SaveNewAsync()))
            return IsSaved ? Again(StatusCodes.Status409Conflict) : AgainAfterOthers();
        Say(draft is null ? "Saved." : "The facts stand in the text now. Change them as you like.");
        return Redirect(Address(draft));
    }

    public bool IsSaved => Portfolio is not null && Db.Entry(Portfolio.Choices).State != EntityState.Detached && Db.Entry(Portfolio.Choices).State != EntityState.Added;

    public PieceList Pieces(IReadOnlyList<Piece> pieces) => new(pieces, Words, Day: true);

    public string Paper(string size) => $"/records/{Learner!.Id}/{Year!.Id}/portfolio-{size}.pdf";

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
