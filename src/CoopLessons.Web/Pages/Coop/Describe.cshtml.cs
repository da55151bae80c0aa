using System.ComponentModel.DataAnnotations;
using CoopLessons.Data;
using CoopLessons.Data.Coops;
using CoopLessons.Web.Pages.Account;
using Microsoft.AspNetCore.Mvc;

namespace CoopLessons.Web.Pages.Coops;

/// <summary>The co-op's name, its rule for illness, and what the families agreed on.</summary>
public sealed class DescribeModel(AppDb db, TimeProvider clock) : CoopPage(db, clock)
{
    [BindProperty]
    public InputModel Input { get; set; } = new();

    protected override bool IsForLeaders => true;

    public void OnGet() => Input = new() { Name = Coop.Name, SickRule = Coop.SickRule, Agreement = Coop.Agreement, Version = Coop.Version };

    public async Task<IActionResult> OnPostAsync()
    {
        if (!ModelState.IsValid)
            return Again();
        Expect(Coop, Input.Version);
        Coop.Describe(Input.Name, Input.SickRule, Input.Agreement ?? "");
        if (!await SaveAsync())
            return Again(StatusCodes.Status409Conflict);
        Say("Saved. All families see it.");
        return LocalRedirect($"/coop/{CoopId}");
    }

    public sealed class InputModel
    {
        [Required(ErrorMessage = "Give the co-op a name.")]
        [StringLength(Coop.LongestName, ErrorMessage = "A name has at most {1} signs.")]
        [Visible]
        public string Name { get; set; } = "";

        [Required(ErrorMessage = "Say when somebody stays at home.")]
        [StringLength(Coop.LongestRule, ErrorMessage = "At most {1} signs here.")]
        public string SickRule { get; set; } = "";

        [StringLength(Coop.LongestRule, ErrorMessage = "At most {1} signs here.")]
        public string? Agreement { get; set; }

        public int Version { get; set; }
    }
}
