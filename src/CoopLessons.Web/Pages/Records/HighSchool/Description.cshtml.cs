using System.ComponentModel.DataAnnotations;
using CoopLessons.Core.Credits;
using CoopLessons.Data;
using CoopLessons.Data.Credits;
using Microsoft.AspNetCore.Mvc;

namespace CoopLessons.Web.Pages.HighSchool;

/// <summary>What a course held, in the parent's words; drafted from the log where the parent asks for it.</summary>
public sealed class DescriptionModel(AppDb db, TimeProvider clock) : CoursePage(db, clock)
{
    [BindProperty]
    [StringLength(HighSchoolCourse.LongestDescription, ErrorMessage = "A description has at most {1} signs.")]
    public string? Text { get; set; }

    /// <summary>A new draft beside what is written, to be looked at; null where none was asked for.</summary>
    public string? Draft { get; private set; }

    /// <summary>Whether what stands in the field came from the log just now and is not kept yet.</summary>
    public bool IsDraft { get; private set; }

    /// <param name="draft"><c>look</c>, <c>instead</c> or <c>below</c>; nothing is kept by any of them.</param>
    public async Task<IActionResult> OnGetAsync(string? draft)
    {
        if (!await FindAsync())
            return NotFound();
        (Version, Text) = (Course.Version, Course.Description);
        if (draft is null && Text.Length > 0)
            return Page();
        var drafted = string.Join('\n', CourseDraft.Of(await All.InLogAsync(Db, Course, Ct)));
        if (draft == "look" && Text.Length > 0)
        {
            Draft = drafted;
            return Page();
        }

        IsDraft = drafted.Length > 0;
        Text = draft == "below" && Text.Length > 0 ? $"{Text}\n{drafted}" : draft is null or "look" or "instead" ? drafted : Text;
        return Page();
    }

    public async Task<IActionResult> OnPostAsync()
    {
        if (!await FindAsync())
            return NotFound();
        if (!ModelState.IsValid)
            return Again();
        var text = (Text ?? "").ReplaceLineEndings("\n").Trim();
        return await ChangeAsync(c => c.Tell(text), "The description is kept as you wrote it.", Home);
    }
}
