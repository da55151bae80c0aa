using AngleSharp.Dom;
using CoopLessons.Core.Calendar;
using CoopLessons.Core.Hours;
using CoopLessons.Core.Requirements;
using CoopLessons.Data.Families;
using CoopLessons.Data.Log;
using CoopLessons.Data.Requirements;
using CoopLessons.Web.Tests.App;
using Microsoft.EntityFrameworkCore;

namespace CoopLessons.Web.Tests.Records;

/// <summary>What a test says of a learner beyond the log: the pathway, the grade, many days at once.</summary>
internal static class LogUnderLaw
{
    public static readonly DateOnly July = new(2025, 7, 1);

    public static async Task<KeptLog> StandsAsync(this Task<KeptLog> made, string code, string pathwayId, DateOnly? from = null)
    {
        var log = await made;
        await log.StandAsync(code, pathwayId, from ?? July);
        return log;
    }

    public static Task StandAsync(this KeptLog log, string code, string pathwayId, DateOnly from, SpanReason because = SpanReason.Begins, string learner = "Linnet") =>
        log.AddAsync(new LearnerPathway(Guid.CreateVersion7(), log.Learners[learner], code, pathwayId, from, because, null));

    public static Task GradeAsync(this KeptLog log, int grade, string learner = "Linnet") => log.AddAsync(new LearnerGrade(log.Learners[learner], log.YearId, grade));

    public static Task AddAsync(this KeptLog log, params object[] rows) => log.Family.WithDbAsync(async db =>
    {
        db.AddRange(rows);
        await db.SaveChangesAsync();
    });

    /// <summary>The same minutes of one subject on a number of days in a row.</summary>
    public static Task FillAsync(this KeptLog log, DateOnly first, int days, int minutes, string subject, Place place = Place.Home) =>
        log.FillAsync(Enumerable.Range(0, days).Select(first.AddDays), _ => minutes, subject, place);

    /// <summary>Minutes of one subject on the weekdays up to and with the last day.</summary>
    public static Task FillWeekdaysAsync(this KeptLog log, DateOnly first, DateOnly last, Func<DateOnly, int> minutes, string subject = "science") =>
        log.FillAsync(new DayRange(first, last).Days().Where(d => d.DayOfWeek is not (DayOfWeek.Saturday or DayOfWeek.Sunday)), minutes, subject, Place.Home);

    public static string StandingPath(this KeptLog log, string learner = "Linnet", Guid? year = null) => $"/records/standing?learner={log.Learners[learner]}&year={year ?? log.YearId}";

    public static string WhatIfPath(this KeptLog log, string more = "") => $"/records/what-if?learner={log.Linnet}&year={log.YearId}{more}";

    /// <summary>Text with every run of blanks as one.</summary>
    public static string Plain(this INode node) => string.Join(' ', (node is IDocument { Body: { } body } ? body : node).TextContent.Split(default(char[]), StringSplitOptions.RemoveEmptyEntries));

    public static IReadOnlyList<string> Texts(this IParentNode node, string selector) => [.. node.QuerySelectorAll(selector).Select(Plain)];

    /// <summary>Numbers of rows, by table, of everything that a page on the law could write.</summary>
    public static Task<IReadOnlyList<int>> RowsAsync(this TestFamily family) => family.FromDbAsync<IReadOnlyList<int>>(async db =>
    [
        await db.LearnerPathways.CountAsync(), await db.OwnPathways.CountAsync(), await db.LearnerGrades.CountAsync(), await db.SubjectReadings.CountAsync(),
        await db.LegalEvents.CountAsync(), await db.DutyMarks.CountAsync(), await db.CalendarAddresses.CountAsync(), await db.SchoolYears.CountAsync(),
        await db.Set<SchoolBreak>().CountAsync(), await db.LogEntries.CountAsync(), await db.LogRevisions.CountAsync(), await db.DayMarks.CountAsync(),
    ]);

    private static Task FillAsync(this KeptLog log, IEnumerable<DateOnly> days, Func<DateOnly, int> minutes, string subject, Place place) =>
        log.AddAsync([.. days.Select(day => (object)LogEntry.Write(
            Guid.CreateVersion7(),
            new EntryFacts(day, null, "Read and wrote", place, "", [new LearnerTime(log.Linnet, new Minutes(minutes(day)))], [new SubjectWeight(log.Subjects[subject], 1)], []),
            new Author(log.Family.GuardianId, "Iris"), TestServer.Start.UtcDateTime))]);
}
