using System.ComponentModel.DataAnnotations;
using CoopLessons.Data;
using CoopLessons.Data.People;
using CoopLessons.Data.Travel;
using CoopLessons.Web.Planning;
using CoopLessons.Web.Security;
using CoopLessons.Web.Travel;
using Microsoft.AspNetCore.Identity;
using Microsoft.AspNetCore.Mvc;
using Microsoft.AspNetCore.RateLimiting;

namespace CoopLessons.Web.Pages.Families.Out;

/// <summary>Asks for everything of the family in one file, shows how far it is, and where it lies.</summary>
[EnableRateLimiting(Access.Brake)]
public sealed class IndexModel(AppDb db, TimeProvider clock, UserManager<Person> people, LayoutLine line, OutWork work, FilesOfFamilies made) : FamilyPage(db, clock)
{
    [BindProperty]
    [StringLength(SignIns.LongestPassword, ErrorMessage = "A password has at most {1} signs.")]
    [DataType(DataType.Password)]
    public string? Password { get; set; }

    public JobStanding? Job => line.Newest(Family.Id, OutWork.Key);

    public MadeFile? Made => made.Find([Family.Id], Now);

    public bool IsMine => Made?.ById == Db.Current.PersonId;

    public IReadOnlyList<(string What, string Why)> Staying => TravelTable.Staying(Db.Model);

    public string? Fault => Job is { State: JobState.Failed } ? JobTells : null;

    public string JobTells => JobWords.OfMaking(Job, "The file");

    public WorkAtHand Waiting => new(Job, JobTells, "/family/out", "/family/out?handler=Progress");

    public void OnGet() { }

    public IActionResult OnGetProgress() => this.Progress(Waiting);

    public async Task<IActionResult> OnPostMakeAsync()
    {
        // Nobody who finds an open browser takes a family's whole record along.
        var person = (await people.GetUserAsync(User))!;
        if (ModelState.IsValid && !await people.CheckPasswordAsync(person, Password ?? ""))
            ModelState.AddModelError(nameof(Password), "This is not your password.");
        if (!ModelState.IsValid)
            return Again();
        if (work.Ask(Family.Id, person.Id) is not null)
            return LocalRedirect("/family/out");
        ModelState.AddModelError("", "The server is busy with what others asked for. Ask again in a minute.");
        return Again(StatusCodes.Status503ServiceUnavailable);
    }

    public IActionResult OnPostCallOff()
    {
        if (Job is { IsOver: false } job)
            line.Cancel(Family.Id, job.Id);
        return LocalRedirect("/family/out");
    }

    public IActionResult OnPostRemove()
    {
        if (IsMine)
            made.Remove(Family.Id);
        return LocalRedirect("/family/out");
    }
}
