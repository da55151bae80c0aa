using System.Text.Json;
using CoopLessons.Core.Calendar;
using CoopLessons.Core.Credits;
using CoopLessons.Core.Hours;
using CoopLessons.Core.Prepare.Printing;
using CoopLessons.Core.Requirements.Scores;
using CoopLessons.Data.Credits;
using CoopLessons.Data.Requirements;

namespace CoopLessons.Data.Scenario;

/// <summary>High school courses and tests of the co-op, as <c>seed-scenario/credits.json</c> tells them.</summary>
internal sealed record CoopCredits(IReadOnlyDictionary<string, CoopHighSchool> Families)
{
    public static CoopCredits Read() =>
        JsonSerializer.Deserialize<CoopCredits>(ScenarioFiles.Bytes("scenario/credits.json"), Coop.Json) ?? throw new InvalidDataException("credits.json holds nothing.");
}

/// <param name="PlusAndMinus">The family marks with plus and minus.</param>
internal sealed record CoopHighSchool(bool PlusAndMinus, IReadOnlyList<CoopTranscript> Transcripts, IReadOnlyList<CoopHighSchoolCourse> Courses, IReadOnlyList<CoopAssessment> Assessments);

internal sealed record CoopTranscript(string Learner, string School, string FullName, string Signer);

/// <summary>A course, in the parent's order.</summary>
/// <param name="Mark">Of the family's scale; with neither this nor <paramref name="Marked"/> it is still open.</param>
internal sealed record CoopHighSchoolCourse(
    string Learner, string Title, CourseArea Area, DateOnly First, DateOnly Last, CreditBasis Basis, string Aim, CourseLevel Level = CourseLevel.Usual, string? Mark = null, MarkKind? Marked = null,
    string? Awarded = null, string? CollegeCredits = null, string College = "", IReadOnlyList<CoopCourseRule>? Rules = null, IReadOnlyList<CoopOtherStudy>? Other = null,
    IReadOnlyList<CoopLacking>? Lacking = null, IReadOnlyList<string>? Description = null);

/// <summary>A subject; without days of its own, over the course's.</summary>
internal sealed record CoopCourseRule(string Subject, DateOnly? First = null, DateOnly? Last = null);

internal sealed record CoopOtherStudy(string What, string With, DateOnly First, DateOnly Last, int Hours, int Minutes = 0);

internal sealed record CoopLacking(string What, bool There = false);

internal sealed record CoopAssessment(
    string Learner, DateOnly Date, AssessmentKind Kind, string What, string By, string Qualification, IReadOnlyList<CoopResult> Results, string Outcome = "");

internal sealed record CoopResult(string Area, int? Percentile = null, int? Stanine = null, string GradeEquivalent = "", string Points = "");

/// <summary>Writes the high school courses of a family of the scenario. Ids come from no stream, so that the log's stay what they are.</summary>
/// <param name="today">Tests after it were not taken yet.</param>
internal sealed class CreditsOfFamily(AppDb db, Household house, CoopHighSchool told, DateOnly today)
{
    private readonly Dictionary<string, Guid> _learners = house.Children.ToDictionary(c => c.Child.Name, c => c.Id);

    /// <summary>Adds everything to the unit of work. Nothing is saved here.</summary>
    public void Add()
    {
        if (told.PlusAndMinus)
        {
            var scale = new GradingScale();
            scale.Describe(GradeScale.WithPlusAndMinus, CreditCount.CarnegieUnit, CreditCount.UsualCollegeCredits);
            db.GradingScales.Add(scale);
        }

        foreach (var head in told.Transcripts)
        {
            var details = new TranscriptDetails(_learners[head.Learner]);
            details.Describe(new TranscriptHeading(head.School, "", head.FullName, null, null, head.Signer), tellsBirthDate: false, PaperSize.Letter);
            db.TranscriptDetails.Add(details);
        }

        foreach (var (order, course) in told.Courses.Index())
            Add(course, order);
        foreach (var test in told.Assessments.Where(a => a.Date < today))
            db.Assessments.Add(new Assessment(Guid.CreateVersion7(), _learners[test.Learner], new AssessmentFacts(
                test.Date, test.Kind, test.What, test.By, test.Qualification, test.Outcome, [.. test.Results.Select(r => new ScoreResult(r.Area, r.Percentile, r.Stanine, r.GradeEquivalent, r.Points))])));
    }

    private void Add(CoopHighSchoolCourse course, int order)
    {
        var days = new DayRange(course.First, course.Last);
        int? college = course.CollegeCredits is { } given ? Credit(given).Hundredths : null;
        var row = new HighSchoolCourse(Guid.CreateVersion7(), _learners[course.Learner], order, new CourseTerms(course.Title, course.Area, course.Level, days, course.Basis, Credit(course.Aim), college, course.College));
        foreach (var rule in course.Rules ?? [])
            row.AddRule(Guid.CreateVersion7(), new CourseRule(house.Subjects[rule.Subject], new DayRange(rule.First ?? course.First, rule.Last ?? course.Last)));
        if (course.Awarded is { } awarded)
            row.SetMark(course.Mark is null ? course.Marked ?? MarkKind.Open : MarkKind.Graded, course.Mark ?? "", Credit(awarded));
        row.Lacks((course.Lacking ?? []).Select(l => new LackingLine(l.What, l.There)));
        row.Tell(string.Join('\n', course.Description ?? []));
        db.HighSchoolCourses.Add(row);
        foreach (var study in course.Other ?? [])
            db.OtherStudies.Add(new OtherStudy(Guid.CreateVersion7(), row.Id, new StudyElsewhere(new DayRange(study.First, study.Last), new Minutes(study.Hours * 60 + study.Minutes), study.What, study.With)));
    }

    private static CreditCount Credit(string text) => CreditCount.TryRead(text, out var count) ? count : throw new InvalidDataException($"credits.json: “{text}” is no number of credits.");
}
