using System.Globalization;
using CoopLessons.Core.Calendar;
using CoopLessons.Core.Credits;
using CoopLessons.Core.Families;
using CoopLessons.Core.Hours;
using CoopLessons.Data;
using CoopLessons.Data.Credits;
using Microsoft.AspNetCore.Mvc;
using Microsoft.EntityFrameworkCore;

namespace CoopLessons.Web.Pages.HighSchool;

/// <summary>A part of the log beside a course.</summary>
/// <param name="Holder">The course that has it; null for none.</param>
/// <param name="Pick">What was said of it by hand for this course: true in, false out, null nothing.</param>
public sealed record PartLine(Credit Credit, string What, string Subject, HighSchoolCourse? Holder, bool? Pick);

/// <summary>The entries of a month: those in the course, and those that may be put into it by hand.</summary>
public sealed class EntriesModel(AppDb db, TimeProvider clock) : CoursePage(db, clock)
{
    [BindProperty(SupportsGet = true, Name = "month")]
    public string? MonthText { get; set; }

    /// <summary>The subject whose other entries are shown; null: only those that concern the course already.</summary>
    [BindProperty(SupportsGet = true, Name = "subject")]
    public Guid? SubjectId { get; set; }

    public Month Shown { get; private set; }

    /// <summary>Subjects with minutes in the month outside the course, in the family's order.</summary>
    public IReadOnlyList<Subject> Subjects { get; private set; } = [];
    public IReadOnlyList<Month> Months { get; private set; } = [];
    public IReadOnlyList<PartLine> In { get; private set; } = [];
    public IReadOnlyList<PartLine> Others { get; private set; } = [];

    public async Task<IActionResult> OnGetAsync() => await FindAsync() ? Page() : NotFound();

    public Task<IActionResult> OnPostInAsync(Guid entryId, Guid subjectId) => PickAsync(new LogPart(entryId, subjectId), true);

    public Task<IActionResult> OnPostOutAsync(Guid entryId, Guid subjectId) => PickAsync(new LogPart(entryId, subjectId), false);

    /// <summary>Takes back what was said by hand: the rules decide again.</summary>
    public Task<IActionResult> OnPostRulesAsync(Guid entryId, Guid subjectId) => PickAsync(new LogPart(entryId, subjectId), null);

    private async Task<IActionResult> PickAsync(LogPart part, bool? isIn)
    {
        if (!await FindAsync() || All.Log.Ledger.Credits.FirstOrDefault(c => LogPart.Of(c) == part) is not { } credit)
            return NotFound();
        var pick = await Db.CoursePicks.SingleOrDefaultAsync(p => p.CourseId == CourseId && p.EntryId == part.EntryId && p.SubjectId == part.SubjectId, Ct);
        if (isIn is not { } said)
        {
            if (pick is not null)
                Db.CoursePicks.Remove(pick);
        }
        else if (pick is null)
        {
            Db.CoursePicks.Add(new CoursePick(CourseId, part, said));
        }
        else
        {
            pick.Become(said);
        }

        // What is given to this course by hand is given to it alone.
        if (isIn == true)
            Db.CoursePicks.RemoveRange(await Db.CoursePicks.Where(p => p.CourseId != CourseId && p.IsIn && p.EntryId == part.EntryId && p.SubjectId == part.SubjectId && Db.HighSchoolCourses.Any(c => c.Id == p.CourseId && c.LearnerId == LearnerId)).ToListAsync(Ct));
        if (!await SaveNewAsync())
            return await FindAsync() ? AgainAfterOthers() : NotFound();
        Say(isIn switch { true => $"{credit.Minutes.Clock} is counted in {Course.Title}.", false => $"{credit.Minutes.Clock} is not counted in {Course.Title}.", _ => "The rules decide again." });
        return LocalRedirect(Address(Month.Of(credit.Date)));
    }

    protected override async Task<bool> FindAsync()
    {
        if (!await base.FindAsync() || (SubjectId is { } asked && All.Log.Ledger.Subjects.All(s => s.Id != asked)))
            return false;
        var ledger = All.Log.Ledger;
        Months = [.. ledger.Credits.Select(c => Month.Of(c.Date)).Distinct().Order()];
        if (MonthText is null)
            Shown = Total.Credits.Count > 0 ? Month.Of(Total.Credits[^1].Credit.Date) : Months.LastOrDefault(m => m.CompareTo(Month.Of(Course.Last)) <= 0, Month.Of(Course.First));
        else if (Month.TryParse(MonthText, out var month))
            Shown = month;
        else
            return false;
        var picks = await Db.CoursePicks.AsNoTracking().Where(p => p.CourseId == CourseId).ToDictionaryAsync(p => p.Part, p => p.IsIn, Ct);
        var whats = ledger.Entries.ToDictionary(e => e.Id, e => e.What);
        var names = ledger.Subjects.ToDictionary(s => s.Id, s => s.Name);
        var holders = All.Ledger.Courses.SelectMany(c => c.Credits.Select(x => (Part: LogPart.Of(x.Credit), c.CourseId))).ToDictionary(x => x.Part, x => x.CourseId);
        var lines = ledger.Credits.Where(c => Shown.Contains(c.Date) && c.Minutes > Minutes.Zero).Select(c =>
        {
            var part = LogPart.Of(c);
            return new PartLine(c, whats[c.EntryId], names[c.SubjectId], holders.TryGetValue(part, out var holder) ? All.Course(holder) : null, picks.TryGetValue(part, out var pick) ? pick : null);
        }).ToList();
        In = lines.FindAll(l => l.Holder?.Id == CourseId);
        var others = lines.FindAll(l => l.Holder?.Id != CourseId);
        Subjects = [.. ledger.Subjects.Where(s => others.Exists(l => l.Credit.SubjectId == s.Id))];
        var mine = Course.Rules.Select(r => r.ToCore()).ToList();
        Others = others.FindAll(l => SubjectId is { } subject
            ? l.Credit.SubjectId == subject
            : l.Pick is not null || mine.Exists(r => r.Asks(l.Credit, All.UnitOfEntry.TryGetValue(l.Credit.EntryId, out var unit) ? unit : null)));
        return true;
    }

    public Minutes SumIn => In.Select(l => l.Credit.Minutes).Sum();

    /// <summary>The month before or after the one shown; null at an end.</summary>
    public Month? Beside(int step) => step < 0
        ? Months.Where(m => m.CompareTo(Shown) < 0).Select(m => (Month?)m).LastOrDefault()
        : Months.Where(m => m.CompareTo(Shown) > 0).Select(m => (Month?)m).FirstOrDefault();

    public string Address(Month month) => string.Create(CultureInfo.InvariantCulture, $"{Home}/entries?month={month.Iso}");

    public string Address(Subject? subject) => Address(Shown) + (subject is null ? "" : $"&subject={subject.Id}");
}
