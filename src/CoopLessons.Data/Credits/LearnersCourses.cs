using CoopLessons.Core.Calendar;
using CoopLessons.Core.Credits;
using CoopLessons.Core.Hours;
using CoopLessons.Data.Families;
using CoopLessons.Data.Hours;
using Microsoft.EntityFrameworkCore;

namespace CoopLessons.Data.Credits;

/// <summary>
/// One learner's high school courses with what the log holds for them: the only way by which pages and papers come to
/// minutes and credits of a course.
/// </summary>
/// <param name="Courses">In the parent's order, with their rules.</param>
/// <param name="Log">The learner's log over all days that a course speaks of.</param>
/// <param name="Units">Titles of the units that entries belong to.</param>
/// <param name="Years">The family's, the first first.</param>
/// <param name="Grades">The learner's grade by year, where the family said it.</param>
public sealed record LearnersCourses(
    Family Family,
    Learner Learner,
    IReadOnlyList<HighSchoolCourse> Courses,
    IReadOnlyList<OtherStudy> Studies,
    LearnerYear Log,
    CourseLedger Ledger,
    GradingScale Scale,
    IReadOnlyDictionary<Guid, Guid> UnitOfEntry,
    IReadOnlyDictionary<Guid, string> Units,
    IReadOnlyList<SchoolYear> Years,
    IReadOnlyDictionary<Guid, int> Grades)
{
    /// <summary>Null where the family at hand has no such learner.</summary>
    public static async Task<LearnersCourses?> LoadAsync(AppDb db, Guid learnerId, DateOnly today, CancellationToken ct)
    {
        var courses = await db.HighSchoolCourses.AsNoTracking().Include(c => c.Rules).Where(c => c.LearnerId == learnerId).OrderBy(c => c.Order).ThenBy(c => c.Id).ToListAsync(ct);
        var ids = courses.Select(c => c.Id).ToList();
        var picks = await db.CoursePicks.AsNoTracking().Where(p => ids.Contains(p.CourseId)).ToListAsync(ct);
        var studies = await db.OtherStudies.AsNoTracking().Where(s => ids.Contains(s.CourseId)).OrderBy(s => s.First).ThenBy(s => s.Id).ToListAsync(ct);
        var picked = await db.LogRevisions.Where(r => r.Number == r.Entry.Newest && db.CoursePicks.Any(p => p.EntryId == r.EntryId && ids.Contains(p.CourseId))).Select(r => r.Date).Distinct().ToListAsync(ct);
        if (await LearnerYear.LoadAsync(db, learnerId, DaysOf(courses, picked, today), ct) is not { } log)
            return null;
        var (unitOfEntry, units) = await UnitsAsync(db, log.Ledger, ct);
        var byCourse = picks.ToLookup(p => p.CourseId);
        var claims = courses.Select(c => new CourseClaim(
            c.Id,
            [.. c.Rules.OrderBy(r => r.First).ThenBy(r => r.Id).Select(r => r.ToCore())],
            byCourse[c.Id].Where(p => p.IsIn).Select(p => p.Part).ToHashSet(),
            byCourse[c.Id].Where(p => !p.IsIn).Select(p => p.Part).ToHashSet(),
            [.. studies.Where(s => s.CourseId == c.Id).Select(s => s.ToCore())])).ToList();
        return new LearnersCourses(
            log.Family, log.Learner, courses, studies, log, CourseLedger.Of(log.Ledger, claims, unitOfEntry),
            await db.GradingScales.AsNoTracking().SingleOrDefaultAsync(ct) ?? GradingScale.Usual, unitOfEntry, units,
            await db.SchoolYears.AsNoTracking().OrderBy(y => y.First).ToListAsync(ct),
            await db.LearnerGrades.AsNoTracking().Where(g => g.LearnerId == learnerId).ToDictionaryAsync(g => g.SchoolYearId, g => g.Grade, ct));
    }

    public HighSchoolCourse? Course(Guid id) => Courses.FirstOrDefault(c => c.Id == id);

    public CreditForecast Forecast(HighSchoolCourse course) =>
        CreditForecast.Of(Ledger[course.Id].Total, new CreditCount(course.Aim), Scale.MinutesPerCredit);

    /// <summary>What hours or college credits make; null where the credit rests on neither.</summary>
    public CreditCount? Computed(HighSchoolCourse course) => course.Basis switch
    {
        CreditBasis.Hours => CreditCount.ByHours(Ledger[course.Id].Total, Scale.MinutesPerCredit),
        CreditBasis.CollegeCourse when course.CollegeCredits is { } college => CreditCount.ByCollege(college, Scale.CollegePerCredit),
        _ => null,
    };

    /// <summary>The year in which a course ends, as the family or else the calendar calls it. A summer between two years belongs to the one that lies in the same months from July to June.</summary>
    public (string Name, DateOnly First, int? Grade) YearOf(HighSchoolCourse course)
    {
        var months = Core.Credits.Transcript.MonthsOf(course.Last);
        var year = Years.FirstOrDefault(y => y.Days.Contains(course.Last))
            ?? Years.Where(y => y.Days.Overlaps(months)).MaxBy(y => (y.Last < months.Last ? y.Last : months.Last).DayNumber - (y.First > months.First ? y.First : months.First).DayNumber);
        return year is not null
            ? (year.Name, year.First, Grades.TryGetValue(year.Id, out var grade) ? grade : null)
            : (Core.Credits.Transcript.YearOf(course.Last), months.First, null);
    }

    /// <summary>Names of all years in which a course has days.</summary>
    public IReadOnlyList<string> YearsOf(HighSchoolCourse course) =>
        [.. Years.Where(y => y.Days.Overlaps(course.Days)).Select(y => y.Name).DefaultIfEmpty(YearOf(course).Name)];

    public Transcript Transcript(TranscriptDetails details, DateOnly madeOn)
    {
        var scale = Scale.Scale;
        var years = Courses.GroupBy(YearOf).OrderBy(g => g.Key.First).Select(g => new TranscriptYear(
            g.Key.Name, g.Key.Grade, [.. g.OrderBy(c => c.Area).ThenBy(c => c.Order).Select(Line)], GradeAverage.Of(scale, g.Select(c => c.ToMarked(scale)))));
        var methods = Courses.Select(c => c.Basis).Distinct().Order().Select(b => CreditWords.Method(b, Scale.MinutesPerCredit, Scale.CollegePerCredit));
        return new Transcript(details.HeadingFor(Family, Learner), [.. years], scale, GradeAverage.Of(scale, Courses.Select(c => c.ToMarked(scale))), [.. methods], madeOn);
    }

    /// <summary>The descriptions that are written, in the transcript's order.</summary>
    public CourseDescriptions Descriptions(TranscriptDetails details, DateOnly madeOn) => new(
        details.HeadingFor(Family, Learner),
        [.. Courses.Where(c => c.Description.Length > 0).OrderBy(c => YearOf(c).First).ThenBy(c => c.Area).ThenBy(c => c.Order).Select(c => new DescribedCourse(Line(c), YearsOf(c), c.Description))],
        madeOn);

    /// <summary>A course as its description is drafted from.</summary>
    public async Task<CourseInLog> InLogAsync(AppDb db, HighSchoolCourse course, CancellationToken ct)
    {
        var total = Ledger[course.Id];
        var names = Log.Ledger.Subjects.ToDictionary(s => s.Id, s => s.Name);
        var whats = Log.Ledger.Entries.ToDictionary(e => e.Id, e => e.What);
        var minutes = total.Credits.Select(c => c.Credit).Where(c => c.Minutes > Minutes.Zero).ToList();
        var (first, last) = (course.First, course.Last);
        var read = await (from m in db.BookMeetings.AsNoTracking()
                          join b in db.Books.AsNoTracking() on m.BookId equals b.Id
                          where m.BegunOn <= last && (m.EndedOn == null || m.EndedOn >= first)
                          orderby m.BegunOn, b.Title
                          select new { m.Learners, b.Title, b.Author }).ToListAsync(ct);
        // A book belongs to an English course by being read, to any other by standing in its entries.
        var books = read.Where(b => b.Learners.Contains(Learner.Id)
            && (course.Area == CourseArea.English || minutes.Exists(c => whats[c.EntryId].Contains(b.Title, StringComparison.OrdinalIgnoreCase))));
        return new CourseInLog(
            course.Title, total,
            [.. minutes.GroupBy(c => c.SubjectId).Select(g => (names[g.Key], g.Select(c => c.Minutes).Sum())).OrderByDescending(s => s.Item2).ThenBy(s => s.Item1, StringComparer.Ordinal)],
            [.. minutes.Where(c => UnitOfEntry.ContainsKey(c.EntryId)).Select(c => Units[UnitOfEntry[c.EntryId]]).Distinct()],
            [.. books.Select(b => b.Author.Length > 0 ? $"{b.Title} ({b.Author})" : b.Title).Distinct()],
            [.. minutes.GroupBy(c => whats[c.EntryId]).Select(g => (What: g.Key, Time: g.Select(c => c.Minutes).Sum())).OrderByDescending(d => d.Time).ThenBy(d => d.What, StringComparer.Ordinal).Select(d => d.What)],
            [.. Studies.Where(s => s.CourseId == course.Id).Select(s => s.ToCore())]);
    }

    private TranscriptLine Line(HighSchoolCourse c) =>
        new(c.Title, c.Area, c.Level, c.Basis, Ledger[c.Id].Total, Computed(c), c.Earned(Scale.Scale), CreditWords.Of(c.Marked, c.Mark));

    private static DayRange DaysOf(List<HighSchoolCourse> courses, List<DateOnly> picked, DateOnly today)
    {
        var days = courses.SelectMany(c => c.Rules.SelectMany(r => new[] { r.First, r.Last }).Append(c.First).Append(c.Last)).Concat(picked).DefaultIfEmpty(today).ToList();
        return new DayRange(days.Min(), days.Max());
    }

    private static async Task<(IReadOnlyDictionary<Guid, Guid> OfEntry, IReadOnlyDictionary<Guid, string> Titles)> UnitsAsync(AppDb db, HoursLedger ledger, CancellationToken ct)
    {
        var (first, last) = (ledger.Period.First, ledger.Period.Last);
        var rows = await (from r in db.LogRevisions
                          where r.Number == r.Entry.Newest && r.Date >= first && r.Date <= last
                          join s in db.PlannedSessions on r.Entry.SessionId equals s.Id
                          join a in db.Activities on s.ActivityId equals a.Id
                          join u in db.Units on a.UnitId equals u.Id
                          select new { r.EntryId, Unit = u.Id, u.Title }).ToListAsync(ct);
        return (rows.ToDictionary(r => r.EntryId, r => r.Unit), rows.DistinctBy(r => r.Unit).ToDictionary(r => r.Unit, r => r.Title));
    }
}
