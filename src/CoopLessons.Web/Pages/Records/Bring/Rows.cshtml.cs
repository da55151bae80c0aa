using CoopLessons.Core.Log.Sheets;
using CoopLessons.Data;
using CoopLessons.Data.Log.Sheets;
using CoopLessons.Web.Pages.Log;
using Microsoft.AspNetCore.Mvc;
using Microsoft.EntityFrameworkCore;

namespace CoopLessons.Web.Pages.Records.Bringing;

/// <summary>Shows what of a brought file is good, what is there already and what cannot be read, and takes the good rows in.</summary>
public sealed class RowsModel(AppDb db, TimeProvider clock) : SheetPage(db, clock)
{
    public const int MostShown = 1000;

    private EntryWords _words = null!;

    public async Task<IActionResult> OnGetAsync(Guid sheetId)
    {
        if (await FindAsync(sheetId) is { } elsewhere)
            return elsewhere;
        if (At.Sheet.Choices.Columns is null)
            return LocalRedirect($"/log/bring/{sheetId}");
        _words = await EntryWords.LoadAsync(Db, Ct);
        return Page();
    }

    public async Task<IActionResult> OnPostTakeAsync(Guid sheetId, bool thereToo)
    {
        if (await FindAsync(sheetId) is { } elsewhere)
            return elsewhere;
        _words = await EntryWords.LoadAsync(Db, Ct);
        if (!At.Reading.Rows.Any(r => thereToo || !At.There.Contains(r.Line)))
        {
            ModelState.AddModelError("", "There is no row to take in.");
            return Again();
        }

        if (await SheetTaking.TakeAsync(Db, At, thereToo, await AuthorAsync(), Now, Ct) || await Db.LogImports.AnyAsync(i => i.Id == sheetId, Ct))
            return LocalRedirect($"/log/bring/taken/{sheetId}");
        ModelState.AddModelError("", "Something else was saved at the same moment. Nothing was taken in; send it once more.");
        return Again(StatusCodes.Status409Conflict);
    }

    public string Tells(SheetRow row)
    {
        var made = At.NewSubjects.ToDictionary(s => s.Id, s => s.Name);
        var who = string.Join(" and ", row.Times.Select(t => _words.Learner(t.LearnerId)));
        var split = string.Join(", ", row.Split.Select(s => (made.TryGetValue(s.SubjectId, out var name) ? name : _words.Subject(s.SubjectId)) + (row.Split.Count > 1 ? $" {s.Weight}" : "")));
        return $"{who} · {split} · {BringWords.Of(row.Place)}{(row.Start is { } start ? $" · {start:H:mm}" : "")}";
    }
}
