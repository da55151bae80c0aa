using CoopLessons.Core.Prepare.Books;
using CoopLessons.Data;
using CoopLessons.Data.Prepare;
using Microsoft.AspNetCore.Mvc;

namespace CoopLessons.Web.Pages.Records;

/// <summary>What a child read, heard and looked through in a school year.</summary>
public sealed class ReadingModel(AppDb db, TimeProvider clock) : LearnerYearPage(db, clock)
{
    /// <summary>Null while there is no learner or no year.</summary>
    public ReadingList? Books { get; private set; }

    public async Task<IActionResult> OnGetAsync()
    {
        if (!await FindAsync())
            return NotFound();
        if (Learner is not null && Year is not null)
            Books = await ListOfReading.LoadAsync(Db, Learner, Year, Today, Ct);
        return Page();
    }
}
