using CoopLessons.Core.Schedule;
using CoopLessons.Core.Units;
using CoopLessons.Data;
using CoopLessons.Data.Planning;
using CoopLessons.Data.Schedule;
using CoopLessons.Web.Tests.App;

namespace CoopLessons.Web.Tests.Tenancy;

/// <summary>One of everything with which a family plans.</summary>
internal sealed class PlannedWith
{
    public Guid Course { get; } = Guid.CreateVersion7();
    public Guid Loop { get; } = Guid.CreateVersion7();
    public Guid Appointment { get; } = Guid.CreateVersion7();
    public Guid Adult { get; } = Guid.CreateVersion7();
    public Guid Wish { get; } = Guid.CreateVersion7();

    public void AddTo(AppDb db, Guid learnerId, Guid subjectId)
    {
        db.Add(new Course(Course, new CourseFacts("Mathematics", subjectId, [learnerId], 30, 5, AdultNeed.Beside, 120, 61, true)));
        db.Add(new LessonLoop(Loop, new LoopFacts("Afternoons", [new LoopStep(Guid.CreateVersion7(), "Maps", subjectId)], 20, 3, [learnerId], AdultNeed.Beside, false)));
        db.Add(new Appointment(Appointment, new AppointmentFacts("At the mill", AppointmentKind.CoOp, [learnerId], [Adult], TestServer.Today, 9 * 60, 150, "FREQ=WEEKLY;BYDAY=TH", [], subjectId)));
        db.Add(new TeachingAdult(Adult, "Basil", null, "555 0100", 0));
        db.Add(new DayPattern(null, WeekHours.None));
        db.Add(new DayPattern(learnerId, WeekHours.None));
        db.Add(new LearnerSitting(learnerId, 25));
        db.Add(new WeeklyWish(Wish, subjectId, null, DayOfWeek.Wednesday, false));
        db.Add(PlannedSession.OfCourse(Guid.CreateVersion7(), Course, TestServer.Today.AddDays(1), 10 * 60, 0, [learnerId]));
        db.Add(PlannedSession.OfLoop(Guid.CreateVersion7(), Loop, TestServer.Today.AddDays(1), 11 * 60, 1, [learnerId]));
    }
}
