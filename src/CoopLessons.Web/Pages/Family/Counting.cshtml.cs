using System.ComponentModel.DataAnnotations;
using CoopLessons.Core.Hours;
using CoopLessons.Data;
using Microsoft.AspNetCore.Mvc;

namespace CoopLessons.Web.Pages.Families;

/// <summary>What the family counts as learning, in one line, and from how many minutes a day is a school day.</summary>
public sealed class CountingModel(AppDb db, TimeProvider clock) : FamilyPage(db, clock)
{
    [BindProperty]
    public InputModel Input { get; set; } = new();

    [BindProperty]
    public int Version { get; set; }

    public void OnGet()
    {
        Input = new() { Policy = Family.CountingPolicy, MinimumDay = Family.MinimumDay };
        Version = Family.Version;
    }

    public async Task<IActionResult> OnPostAsync()
    {
        if (!ModelState.IsValid)
            return Again();
        Family.CountBy(Input.Policy, new Minutes(Input.MinimumDay!.Value));
        Expect(Family, Version);
        if (!await SaveAsync())
        {
            ModelState.Remove(nameof(Version));
            Version = await Db.VersionOfFamilyAsync(Ct);
            return Again(StatusCodes.Status409Conflict);
        }

        Say("What is counted is saved. Every report prints it.");
        return RedirectToPage("/Family/Index");
    }

    public sealed class InputModel
    {
        [Required(ErrorMessage = "Say in a sentence or two what you count.")]
        [StringLength(Data.Families.Family.LongestPolicy, ErrorMessage = "At most {1} signs, so that every report can print it.")]
        public string Policy { get; set; } = "";

        [Required(ErrorMessage = "Give a number of minutes.")]
        [Range(1, 960, ErrorMessage = "Give between {1} and {2} minutes.")]
        public int? MinimumDay { get; set; }
    }
}
