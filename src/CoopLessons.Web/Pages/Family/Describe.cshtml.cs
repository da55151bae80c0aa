using System.ComponentModel.DataAnnotations;
using CoopLessons.Data;
using CoopLessons.Web.Pages.Account;
using Microsoft.AspNetCore.Mvc;

namespace CoopLessons.Web.Pages.Families;

/// <summary>The family's name, time zone and state.</summary>
public sealed class DescribeModel(AppDb db, TimeProvider clock) : FamilyPage(db, clock)
{
    [BindProperty]
    public InputModel Input { get; set; } = new();

    [BindProperty]
    public int Version { get; set; }

    public void OnGet()
    {
        Input = new() { Name = Family.Name, TimeZone = Family.TimeZone, State = Family.State };
        Version = Family.Version;
    }

    public async Task<IActionResult> OnPostAsync()
    {
        if (!States.Knows(Input.State ?? ""))
            ModelState.AddModelError("Input.State", "Choose a state from the list.");
        if (!ModelState.IsValid)
            return Again();
        Family.Describe(Input.Name, Input.TimeZone, Input.State ?? "");
        Expect(Family, Version);
        if (!await SaveAsync())
        {
            ModelState.Remove(nameof(Version));
            Version = await Db.VersionOfFamilyAsync(Ct);
            return Again(StatusCodes.Status409Conflict);
        }

        Say("The family is saved.");
        return RedirectToPage("/Family/Index");
    }

    public sealed class InputModel
    {
        [Required(ErrorMessage = "Give the family a name.")]
        [StringLength(Data.Families.Family.LongestName, ErrorMessage = "A family’s name has at most {1} signs.")]
        [Visible]
        public string Name { get; set; } = "";

        [Required(ErrorMessage = "Choose the time zone you live in.")]
        [StringLength(60, ErrorMessage = "Choose a time zone from the list.")]
        [KnownZone]
        public string TimeZone { get; set; } = "";

        [StringLength(2, ErrorMessage = "Choose a state from the list.")]
        public string? State { get; set; }
    }
}
