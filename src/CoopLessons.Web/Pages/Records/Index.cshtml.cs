using CoopLessons.Core.Calendar;
using CoopLessons.Core.Families;
using CoopLessons.Core.Hours;
using CoopLessons.Core.Requirements.Standing;
using CoopLessons.Data;
using CoopLessons.Data.Requirements;
using CoopLessons.Web.Charts;
using Microsoft.AspNetCore.Mvc;
using Microsoft.EntityFrameworkCore;

namespace CoopLessons.Web.Pages.Records;

/// <summary>A subject of the family beside its row of the report.</summary>
public sealed record SubjectRow(Subject Subject, SubjectHours Hours, IReadOnlyList<bool> Met);

/// <summary>The hours and school days of one learner's year, each number a way to the entries it is made of.</summary>
public sealed class IndexModel(AppDb db, TimeProvider clock) : StandingPage(db, clock)
{
    public IReadOnlyList<SubjectRow> Subjects { get; private set; } = [];
    /// <summary>The next paper that the family owes; null where none is open with a date.</summary>
    public LearnerDuty? NextPaper { get; private set; }

    public IReadOnlyList<LedgerQuestion> Questions { get; private set; } = [];
    public IReadOnlyList<MonthSheet> Sheets { get; private set; } = [];
    public StackedBars? Bars { get; private set; }

    /// <summary>Subjects that the law names and that have not been met for weeks.</summary>
    public IReadOnlyList<SubjectCoverage> Quiet { get; private set; } = [];

    /// <summary>Where the year holds another pathway beside that of today: on which side it lies.</summary>
    public string OtherSide => Standing is not { Standings: { Count: > 1 } all } ? ""
        : all[0] == Present ? ", with another pathway later in this year"
        : ", with another pathway earlier in this year";

    /// <summary>In a grade of high school in this year, or with a course of it.</summary>
    public bool IsInHighSchool { get; private set; }

    public bool HasAnything => Report is { } r && (r.Entries > 0 || r.SchoolDays > 0);

    public async Task<IActionResult> OnGetAsync()
    {
        if (!await FindStandingAsync())
            return NotFound();
        if (Log is null || Report is null)
            return Page();
        IsInHighSchool = await Db.LearnerGrades.AnyAsync(g => g.LearnerId == Learner!.Id && g.SchoolYearId == Year!.Id && g.Grade >= 9, Ct)
            || await Db.HighSchoolCourses.AnyAsync(c => c.LearnerId == Learner!.Id, Ct);
        if (Present is { } now)
        {
            NextPaper = LearnerDuty.Next(LearnerDuty.Of(Standing!.Law), Today);
            Quiet = [.. (await Standing.CoverageAsync(Db, now.Span, Ct)).Where(s => s.Quiet)];
        }

        // The report keeps the subjects' order and leaves out those that were never met.
        var met = Log.Ledger.Subjects.Where(s => Log.Ledger.BroadDays(s.Id) > 0);
        Subjects = [.. met.Zip(Report.Subjects, (subject, hours) => new SubjectRow(subject, hours, MonthsMet(subject)))];
        Questions = Log.Ledger.Questions();
        Sheets = [.. Report.Months.Select(m => MonthSheet.Of(m.Month, Log.Days, Year!.Calendar))];
        if (Report.Total > Minutes.Zero)
            Bars = StackedBars.Of([.. Report.Months.Select(m => m.Month)], [.. Report.Subjects.Select(s => new BarSeries(s.Subject, s.ByMonth))]);
        return Page();
    }

    /// <summary>The entries that make a number of this page.</summary>
    public string Entries(Guid? subject = null, Month? month = null, Place? place = null, DateOnly? date = null) =>
        EntriesFilter.Address(Url, Learner!.Id, Year!.Id, subject, month, place, date);

    public string DayAddress(DateOnly date) => DayModel.Address(Url, Learner!.Id, date);

    private IReadOnlyList<bool> MonthsMet(Subject subject)
    {
        var months = Log!.Ledger.Credits.Where(c => c.SubjectId == subject.Id).Select(c => Month.Of(c.Date))
            .Concat(Log.Ledger.Touches.Where(t => t.SubjectId == subject.Id).Select(t => Month.Of(t.Date))).ToHashSet();
        return [.. Report!.Months.Select(m => months.Contains(m.Month))];
    }
}
