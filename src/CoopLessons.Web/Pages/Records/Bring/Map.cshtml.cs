using CoopLessons.Core.Log.Sheets;
using CoopLessons.Data;
using CoopLessons.Data.Families;
using CoopLessons.Data.Log.Sheets;
using CoopLessons.Web.Pages.Today;
using Microsoft.AspNetCore.Mvc;
using Microsoft.EntityFrameworkCore;

namespace CoopLessons.Web.Pages.Records.Bringing;

/// <summary>Says what each column of a brought file means, and who and what its names are.</summary>
[RequestFormLimits(ValueCountLimit = 2048)]
public sealed class MapModel(AppDb db, TimeProvider clock) : SheetPage(db, clock)
{
    [BindProperty]
    public ColumnsInput Input { get; set; } = new();

    [BindProperty]
    public List<NameInput> MetLearners { get; set; } = [];

    [BindProperty]
    public List<NameInput> MetSubjects { get; set; } = [];

    public IReadOnlyList<Learner> Learners { get; private set; } = [];
    public IReadOnlyList<FamilySubject> Subjects { get; private set; } = [];

    /// <summary>The file's rows without the one that names the columns.</summary>
    public IReadOnlyList<SheetRecord> Body => [.. At.Records.Records.Skip(At.Columns.Headed ? 1 : 0)];

    /// <summary>Of the columns: by the first row, or by their number.</summary>
    public IReadOnlyList<string> Names => [.. Enumerable.Range(0, At.Records.Columns).Select(i =>
        At.Columns.Headed && At.Records.Records[0].Cell(i) is { Length: > 0 } name ? name : $"Column {i + 1}")];

    public IReadOnlyList<string> FittingDays => SheetForms.DaysOf(SheetColumns.Filled(Body, At.Columns.Day));

    public IReadOnlyList<LengthForm> FittingLengths => SheetForms.LengthsOf(SheetColumns.Filled(Body, At.Columns.Length));

    /// <summary>How the first day is read as it stands.</summary>
    public string DayReads => SheetColumns.Filled(Body, At.Columns.Day, 1) is [var first]
        ? SheetForms.Day(first, At.Columns.DayForm) is { } day ? $"“{BringWords.Shown(first)}” is read as {day.InWords(Today)}." : $"“{BringWords.Shown(first)}” is no day in this form."
        : "";

    public async Task<IActionResult> OnGetAsync(Guid sheetId)
    {
        if (await FindAsync(sheetId) is { } elsewhere)
            return elsewhere;
        await ListAsync();
        return Page();
    }

    public async Task<IActionResult> OnPostColumnsAsync(Guid sheetId)
    {
        if (await FindAsync(sheetId) is { } elsewhere)
            return elsewhere;
        return await ChooseAsync() ?? LocalRedirect($"/log/bring/{sheetId}");
    }

    public async Task<IActionResult> OnPostRowsAsync(Guid sheetId)
    {
        if (await FindAsync(sheetId) is { } elsewhere)
            return elsewhere;
        if (await ChooseAsync() is { } again)
            return again;
        if (Input.Day is null)
            ModelState.AddModelError("Input.Day", "Choose the column that holds the day.");
        if (Input.Length is null)
            ModelState.AddModelError("Input.Length", "Choose the column that says how long.");
        if (Input.Who is null && Input.Everybody.Count == 0)
            ModelState.AddModelError("Input.Who", "Choose the column that says who, or tick for whom all rows are.");
        if (Input.Subject is null && Input.Subject0 is null)
            ModelState.AddModelError("Input.Subject", "Choose the column that names the subject, or one subject for all rows.");
        return ModelState.IsValid ? LocalRedirect($"/log/bring/{sheetId}/rows") : Again();
    }

    public async Task<IActionResult> OnPostDropAsync(Guid sheetId)
    {
        if (await FindAsync(sheetId) is { } elsewhere)
            return elsewhere;
        Db.BroughtSheets.Remove(At.Sheet);
        await SaveNewAsync();
        Say("The file is thrown away. Nothing of it came into the log.");
        return LocalRedirect("/log/bring");
    }

    /// <summary>Keeps what was chosen; an answer where it cannot be.</summary>
    private async Task<IActionResult?> ChooseAsync()
    {
        await ListAsync();
        int? Column(int? at) => at is { } i && i >= 0 && i < At.Records.Columns ? i : null;
        // A name that is not the family's is nobody's here.
        if (Input.Everybody.Exists(e => Learners.All(l => l.Id != e)) || Input.Subject0 is { } subject && Subjects.All(s => s.Id != subject))
            return NotFound();
        if (!ModelState.IsValid || SheetForms.Days.All(d => d.Form != Input.DayForm) || !Enum.IsDefined(Input.LengthForm))
            return BadRequest();
        var columns = new SheetColumns(
            Input.Headed, Column(Input.Day), Column(Input.What), Column(Input.Who), Column(Input.Subject), Column(Input.Length), Column(Input.Start), Column(Input.Where), Column(Input.Note),
            Input.DayForm!, Input.LengthForm, [.. Input.Everybody.Distinct()], Input.Subject0);
        At.Sheet.Choose(new SheetChoices(columns, Said(MetLearners, At.Sheet.Choices.Learners), Said(MetSubjects, At.Sheet.Choices.Subjects)));
        if (!await SaveAsync())
            return Again(StatusCodes.Status409Conflict);
        await ReadAsync(At.Sheet);
        return null;
    }

    // What was said of names that another column would bring back is kept.
    private static List<NameMeant> Said(List<NameInput> said, IReadOnlyList<NameMeant> before) =>
        [.. said.Where(s => s.Name is { Length: > 0 and <= 200 }).Select(s => new NameMeant(s.Name!, s.Meant is { Length: <= 40 } meant ? meant : ""))
            .Concat(before).DistinctBy(n => Core.Log.FoldedWords.Key(n.Name)).Take(2 * SheetAtHand.MostNames)];

    private async Task ListAsync()
    {
        Learners = await Db.Learners.AsNoTracking().OrderBy(l => l.SetAside).ThenBy(l => l.Order).ThenBy(l => l.Id).ToListAsync(Ct);
        Subjects = await Db.Subjects.AsNoTracking().OrderBy(s => s.Retired).ThenBy(s => s.Order).ToListAsync(Ct);
    }

    public sealed class ColumnsInput
    {
        public bool Headed { get; set; }
        public int? Day { get; set; }
        public int? What { get; set; }
        public int? Who { get; set; }
        public int? Subject { get; set; }
        public int? Length { get; set; }
        public int? Start { get; set; }
        public int? Where { get; set; }
        public int? Note { get; set; }
        public string? DayForm { get; set; }
        public LengthForm LengthForm { get; set; }
        public List<Guid> Everybody { get; set; } = [];
        public Guid? Subject0 { get; set; }
    }

    public sealed class NameInput
    {
        public string? Name { get; set; }
        public string? Meant { get; set; }
    }
}
