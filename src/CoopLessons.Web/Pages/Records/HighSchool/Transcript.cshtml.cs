using System.ComponentModel.DataAnnotations;
using CoopLessons.Core.Credits;
using CoopLessons.Core.Prepare.Printing;
using CoopLessons.Data;
using CoopLessons.Data.Credits;
using CoopLessons.Documents.Reports;
using Microsoft.AspNetCore.Mvc;
using Microsoft.EntityFrameworkCore;

namespace CoopLessons.Web.Pages.HighSchool;

/// <summary>What stands at the head of a transcript, as typed. What is left empty is not printed.</summary>
public sealed class DetailsInput : IValidatableObject
{
    [StringLength(TranscriptDetails.LongestName, ErrorMessage = "At most {1} signs here.")]
    public string? School { get; set; }

    [StringLength(TranscriptDetails.LongestAddress, ErrorMessage = "At most {1} signs here.")]
    public string? Address { get; set; }

    [StringLength(TranscriptDetails.LongestName, ErrorMessage = "At most {1} signs here.")]
    public string? FullName { get; set; }

    public bool TellsBirthDate { get; set; }
    public DateOnly? Graduated { get; set; }

    [StringLength(TranscriptDetails.LongestName, ErrorMessage = "At most {1} signs here.")]
    public string? Signer { get; set; }

    [EnumDataType(typeof(PaperSize), ErrorMessage = "Choose one of the two.")]
    public PaperSize Paper { get; set; }

    public static DetailsInput Of(TranscriptDetails row) => new()
    {
        School = row.School,
        Address = row.Address,
        FullName = row.FullName,
        TellsBirthDate = row.TellsBirthDate,
        Graduated = row.Graduated,
        Signer = row.Signer,
        Paper = row.Paper,
    };

    public void WriteTo(TranscriptDetails row) =>
        row.Describe(new TranscriptHeading(School?.Trim() ?? "", Address?.Trim() ?? "", FullName?.Trim() ?? "", null, Graduated, Signer?.Trim() ?? ""), TellsBirthDate, Paper);

    public IEnumerable<ValidationResult> Validate(ValidationContext validationContext)
    {
        if (Graduated is { Year: < 1990 or > 2200 })
            yield return new ValidationResult("Choose a day from the year 1990 on.", [nameof(Graduated)]);
        foreach (var (text, field) in new[] { (School, nameof(School)), (Address, nameof(Address)), (FullName, nameof(FullName)), (Signer, nameof(Signer)) })
        {
            if (text?.Any(char.IsControl) == true)
                yield return new ValidationResult("Write this on one line.", [field]);
        }
    }
}

/// <summary>A learner's transcript as it is printed, and what stands at its head.</summary>
public sealed class TranscriptModel(AppDb db, TimeProvider clock) : HighSchoolPage(db, clock)
{
    [BindProperty(Name = nameof(Input))]
    public DetailsInput Input { get; set; } = new();

    [BindProperty]
    public int Version { get; set; }

    public Transcript Transcript { get; private set; } = null!;
    public bool Fits { get; private set; }
    public bool HasDescriptions => All.Courses.Any(c => c.Description.Length > 0);

    public async Task<IActionResult> OnGetAsync()
    {
        if (!await FindAsync())
            return NotFound();
        var details = await DetailsAsync();
        (Input, Version) = (DetailsInput.Of(details), details.Version);
        return Page();
    }

    public async Task<IActionResult> OnPostAsync()
    {
        if (!await FindAsync())
            return NotFound();
        if (!ModelState.IsValid)
            return Again();
        var row = await Db.TranscriptDetails.SingleOrDefaultAsync(d => d.LearnerId == LearnerId, Ct);
        if (row is null)
        {
            row = new TranscriptDetails(LearnerId);
            Input.WriteTo(row);
            Db.Add(row);
            if (!await SaveNewAsync())
                return AgainAfterOthers();
        }
        else
        {
            Input.WriteTo(row);
            Expect(row, Version);
            if (!await SaveAsync())
            {
                Version = (await DetailsAsync()).Version;
                ModelState.Remove(nameof(Version));
                return Again(StatusCodes.Status409Conflict);
            }
        }

        Say("The head of the transcript is saved.");
        return RedirectToPage(new { learnerId = LearnerId });
    }

    protected override async Task<bool> FindAsync()
    {
        if (!await base.FindAsync())
            return false;
        var details = await DetailsAsync();
        Transcript = All.Transcript(details, Today);
        Fits = TranscriptPdf.Write(Transcript, details.Paper) is not null;
        return true;
    }
}
