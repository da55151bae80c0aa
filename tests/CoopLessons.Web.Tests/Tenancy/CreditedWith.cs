using CoopLessons.Core.Calendar;
using CoopLessons.Core.Credits;
using CoopLessons.Core.Hours;
using CoopLessons.Core.Requirements.Scores;
using CoopLessons.Data;
using CoopLessons.Data.Credits;
using CoopLessons.Data.Requirements;
using CoopLessons.Web.Tests.App;

namespace CoopLessons.Web.Tests.Tenancy;

/// <summary>One of everything that a family keeps of high school and of tests.</summary>
internal sealed class CreditedWith
{
    public Guid Course { get; } = Guid.CreateVersion7();
    public Guid Rule { get; } = Guid.CreateVersion7();
    public Guid Study { get; } = Guid.CreateVersion7();
    public Guid Assessment { get; } = Guid.CreateVersion7();

    public void AddTo(AppDb db, Guid learnerId, Guid subjectId, Guid entryId, Guid pieceId)
    {
        var days = new DayRange(new DateOnly(2025, 7, 1), new DateOnly(2026, 6, 30));
        var course = new HighSchoolCourse(Course, learnerId, 0, new CourseTerms("Songs of the river", CourseArea.Arts, CourseLevel.Usual, days, CreditBasis.Hours, new CreditCount(50)));
        course.AddRule(Rule, new CourseRule(subjectId, days));
        course.Tell("Sang by the river.");
        db.Add(course);
        db.Add(new CoursePick(Course, new LogPart(entryId, subjectId), isIn: true));
        db.Add(new OtherStudy(Study, Course, new StudyElsewhere(days, new Minutes(90), "A choir week", "the mill choir")));
        db.Add(new GradingScale());
        db.Add(new TranscriptDetails(learnerId));
        db.Add(new Assessment(Assessment, learnerId, new AssessmentFacts(
            TestServer.Today, AssessmentKind.NormReferencedTest, "Spring battery", "Hazel", "", "", [new ScoreResult(ScoreResult.Composite, 41, null, "", "")], pieceId)));
    }
}
