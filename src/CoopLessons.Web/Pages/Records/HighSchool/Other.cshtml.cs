using System.ComponentModel.DataAnnotations;
using CoopLessons.Core.Credits;
using CoopLessons.Core.Hours;
using CoopLessons.Data;
using CoopLessons.Data.Credits;
using CoopLessons.Web.Pages.Account;
using Microsoft.AspNetCore.Mvc;
using Microsoft.EntityFrameworkCore;

namespace CoopLessons.Web.Pages.HighSchool;

/// <summary>Study outside the log as a parent writes it.</summary>
public sealed class OtherInput : IValidatableObject
{
    [Required(ErrorMessage = "Say what it was.")]
    [StringLength(OtherStudy.LongestWhat, ErrorMessage = "At most {1} signs here.")]
    [Visible]
    public string? What { get; set; }

    [StringLength(OtherStudy.LongestWith, ErrorMessage = "At most {1} signs here.")]
    public string? With { get; set; }

    [Required(ErrorMessage = "Choose its first day.")]
    public DateOnly? First { get; set; }

    [Required(ErrorMessage = "Choose its last day.")]
    public DateOnly? Last { get; set; }

    [Range(0, OtherStudy.MostMinutes / 60, ErrorMessage = "Give whole hours from {1} to {2}.")]
    public int? Hours { get; set; }

    [Range(0, 59, ErrorMessage = "Give minutes from {1} to {2}.")]
    public int? Minutes { get; set; }

    public StudyElsewhere Read() => new(AskedDays.Of(First, Last), new Minutes((Hours ?? 0) * 60 + (Minutes ?? 0)), What!.Trim(), With?.Trim() ?? "");

    public IEnumerable<ValidationResult> Validate(ValidationContext validationContext)
    {
        if (AskedDays.Fault(First, Last) is { } fault)
            yield return new ValidationResult(fault, [nameof(Last)]);
        if ((Hours ?? 0) * 60 + (Minutes ?? 0) is < 1 or > OtherStudy.MostMinutes)
            yield return new ValidationResult("Say how long, from a minute to a thousand hours.", [nameof(Hours)]);
        if (What?.Any(char.IsControl) == true)
            yield return new ValidationResult("Write it on one line.", [nameof(What)]);
        if (With?.Any(char.IsControl) == true)
            yield return new ValidationResult("Write it on one line.", [nameof(With)]);
    }
}

/// <summary>Study of a course that the log does not hold: added at "new", changed and removed at its id.</summary>
public sealed class OtherModel(AppDb db, TimeProvider clock) : CoursePage(db, clock)
{
    [BindProperty(Name = nameof(Input))]
    public OtherInput Input { get; set; } = new();

    /// <summary>Made with the form, so that a form sent twice adds one row.</summary>
    [BindProperty]
    public Guid NewId { get; set; }

    public OtherStudy? Row { get; private set; }

    public async Task<IActionResult> OnGetAsync(string id)
    {
        if (!await FindAsync(id))
            return NotFound();
        NewId = Guid.CreateVersion7();
        (Input, Version) = Row is null
            ? (new OtherInput { First = Course.First, Last = Course.Last }, 0)
            : (new OtherInput { What = Row.What, With = Row.With, First = Row.First, Last = Row.Last, Hours = Row.Minutes / 60, Minutes = Row.Minutes % 60 }, Row.Version);
        return Page();
    }

    public async Task<IActionResult> OnPostAsync(string id)
    {
        if (!await FindAsync(id))
            return NotFound();
        if (Row is null && All.Studies.Count(s => s.CourseId == CourseId) >= OtherStudy.Most)
            ModelState.AddModelError("", $"A course has at most {OtherStudy.Most} of these.");
        if (!ModelState.IsValid)
            return Again();
        if (Row is null && NewId == Guid.Empty)
            return BadRequest();
        var study = Input.Read();
        if (Row is null)
        {
            if (!await Db.OtherStudies.AnyAsync(s => s.Id == NewId, Ct))
            {
                Db.Add(new OtherStudy(NewId, CourseId, study));
                if (!await SaveNewAsync() && !await Db.OtherStudies.AnyAsync(s => s.Id == NewId, Ct))
                    return AgainAfterOthers();
            }
        }
        else
        {
            Row.Describe(study);
            Expect(Row, Version);
            if (!await SaveAsync())
                return await AgainAsync(id);
        }

        Say($"“{study.What}” is saved.");
        return LocalRedirect($"{Home}#elsewhere");
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
        return LocalRedirect($"{Home}#elsewhere");
    }

    private async Task<IActionResult> AgainAsync(string id)
    {
        if (!await FindAsync(id) || Row is null)
            return NotFound();
        Version = Row.Version;
        ModelState.Remove(nameof(Version));
        return Again(StatusCodes.Status409Conflict);
    }

    private async Task<bool> FindAsync(string id)
    {
        if (!await FindAsync())
            return false;
        Row = Guid.TryParse(id, out var studyId) ? await Db.OtherStudies.SingleOrDefaultAsync(s => s.Id == studyId && s.CourseId == CourseId, Ct) : null;
        return Row is not null || id == "new";
    }
}
