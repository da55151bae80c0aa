using System.ComponentModel.DataAnnotations;
using CoopLessons.Data;
using CoopLessons.Data.Evidence;
using CoopLessons.Data.Families;
using CoopLessons.Web.Hosting;
using Microsoft.AspNetCore.Mvc;
using Microsoft.EntityFrameworkCore;

namespace CoopLessons.Web.Pages.Records;

/// <summary>A link with every look that was taken through it, the latest first.</summary>
public sealed record LinkWithLooks(ReaderLink Link, IReadOnlyList<ReaderLook> Looks);

/// <summary>Links at which evaluators read one learner's year: made, looked after, withdrawn.</summary>
public sealed class ReadersModel(AppDb db, TimeProvider clock, ServerSettings settings) : LearnerYearPage(db, clock)
{
    /// <summary>The parts that may be given, as the portfolio knows them.</summary>
    public static readonly IReadOnlyList<PortfolioPart> Given = [PortfolioPart.Days, PortfolioPart.Reading, PortfolioPart.Subjects, PortfolioPart.OwnSubjects, PortfolioPart.Missing, PortfolioPart.Pairs, PortfolioPart.Log];

    public sealed class InputModel
    {
        public Guid NewId { get; set; }

        [Required(ErrorMessage = "Say for whom it is, so that you know it again.")]
        [StringLength(ReaderLink.LongestReader, ErrorMessage = "At most 80 letters.")]
        public string? Reader { get; set; }

        [Required(ErrorMessage = "Say on which day it ends.")]
        public DateOnly? EndsOn { get; set; }
        public List<PortfolioPart> Parts { get; set; } = [];
    }

    [BindProperty]
    public InputModel Input { get; set; } = new();

    public IReadOnlyList<LinkWithLooks> Links { get; private set; } = [];

    /// <summary>Shown this once.</summary>
    public string? Address { get; private set; }

    /// <summary>Whom that address is for.</summary>
    public string MadeFor { get; private set; } = "";

    public async Task<IActionResult> OnGetAsync()
    {
        if (!await LoadAsync())
            return NotFound();
        Input = Proposed();
        return Page();
    }

    public async Task<IActionResult> OnPostAsync()
    {
        if (!await LoadAsync() || Learner is null || Year is null)
            return NotFound();
        if (Input.EndsOn is { } ends && (ends < Today || ends > Today.AddDays(ReaderLink.MostDays)))
            ModelState.AddModelError("Input.EndsOn", $"Choose a day from today up to {RecordWords.Of(Today.AddDays(ReaderLink.MostDays))}.");
        if (Input.Parts.Exists(p => !Given.Contains(p)))
            ModelState.AddModelError("Input.Parts", "One of these parts cannot be given.");
        if (!ModelState.IsValid || Input.NewId == Guid.Empty)
            return Again();
        var secret = Invitation.NewSecret();
        Db.ReaderLinks.Add(new ReaderLink(Input.NewId, secret, Learner.Id, Year.Id, Input.Reader!.Trim(), Input.Parts, Input.EndsOn!.Value, Now));
        if (!await SaveNewAsync())
        {
            Say("That link was made already. Its address is shown once; withdraw it and make another if you do not have it.");
            return Redirect(Back);
        }

        Address = settings.AddressOf(Request, $"/reader/{secret}");
        await LoadAsync();
        // The next one is made for somebody else.
        ModelState.Clear();
        (MadeFor, Input) = (Input.Reader!.Trim(), Proposed());
        return Page();
    }

    public async Task<IActionResult> OnPostWithdrawAsync(Guid linkId)
    {
        // The button's form holds nothing of what a new link asks for.
        ModelState.Clear();
        if (!await LoadAsync() || await Db.ReaderLinks.SingleOrDefaultAsync(l => l.Id == linkId, Ct) is not { } link)
            return NotFound();
        link.Withdraw(Now);
        if (!await SaveAsync())
            return Redirect(Back);
        Say("It no longer opens.");
        return Redirect(Back);
    }

    private InputModel Proposed() => new() { EndsOn = Today.AddDays(30), Parts = [PortfolioPart.Days, PortfolioPart.Reading, PortfolioPart.Subjects, PortfolioPart.Missing, PortfolioPart.Pairs] };

    private string Back => Url.Page("/Records/Readers/Index", new { learner = Learner?.Id, year = Year?.Id })!;

    private async Task<bool> LoadAsync()
    {
        if (!await FindAsync())
            return false;
        if (Learner is null || Year is null)
            return true;
        var links = await Db.ReaderLinks.AsNoTracking().Where(l => l.LearnerId == Learner.Id && l.SchoolYearId == Year.Id).OrderByDescending(l => l.MadeAt).ToListAsync(Ct);
        var ids = links.ConvertAll(l => l.Id);
        var looks = (await Db.ReaderLooks.AsNoTracking().Where(l => ids.Contains(l.LinkId)).OrderByDescending(l => l.At).ThenByDescending(l => l.Id).ToListAsync(Ct)).ToLookup(l => l.LinkId);
        Links = [.. links.Select(l => new LinkWithLooks(l, [.. looks[l.Id]]))];
        return true;
    }
}
