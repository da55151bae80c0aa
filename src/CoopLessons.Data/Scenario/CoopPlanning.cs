using System.Text.Json;
using CoopLessons.Core.Units;
using CoopLessons.Data.Planning;

namespace CoopLessons.Data.Scenario;

/// <summary>With what the families of the co-op plan, as <c>seed-scenario/planning.json</c> tells it.</summary>
internal sealed record CoopPlanning(IReadOnlyDictionary<string, CoopFamilyPlan> Families)
{
    public static CoopPlanning Read() =>
        JsonSerializer.Deserialize<CoopPlanning>(ScenarioFiles.Bytes("scenario/planning.json"), Coop.Json) ?? throw new InvalidDataException("planning.json holds nothing.");
}

/// <summary>One family's. Children and grown-ups are named; hours are told by weekday as a parent writes them.</summary>
/// <param name="Hours">Of the whole family; empty where the proposed ones hold.</param>
/// <param name="LearnerHours">Of a child, where they differ.</param>
/// <param name="CoOp">Who goes to the co-op day.</param>
internal sealed record CoopFamilyPlan(
    IReadOnlyDictionary<DayOfWeek, string> Hours,
    IReadOnlyDictionary<string, IReadOnlyDictionary<DayOfWeek, string>> LearnerHours,
    IReadOnlyList<CoopTeacher> Adults,
    IReadOnlyList<CoopCourseBook> Courses,
    IReadOnlyList<CoopLoop> Loops,
    IReadOnlyList<CoopAppointment> Appointments,
    IReadOnlyDictionary<string, int> Sittings,
    IReadOnlyList<CoopWish> Wishes,
    CoopGoers CoOp);

internal sealed record CoopTeacher(string Name, string Email, string Phone, IReadOnlyDictionary<DayOfWeek, string>? Hours = null);

internal sealed record CoopCourseBook(
    string Title, string Subject, IReadOnlyList<string> Learners, int Minutes, int PerWeek, AdultNeed Need, int NextLesson, bool Morning, int? Lessons = null);

internal sealed record CoopLoopStep(string Title, string Subject);

internal sealed record CoopLoop(
    string Title, IReadOnlyList<CoopLoopStep> Steps, int Next, int Minutes, int PerWeek, IReadOnlyList<string> Learners, AdultNeed Need, bool Morning);

internal sealed record CoopAppointment(
    string Title, AppointmentKind Kind, IReadOnlyList<string> Learners, IReadOnlyList<string> Adults, DateOnly First, TimeOnly At, int Minutes, string Repeats, string? Subject = null);

internal sealed record CoopWish(bool Morning, string? Subject = null, ActivityKind? Kind = null, DayOfWeek? Day = null);

internal sealed record CoopGoers(IReadOnlyList<string> Learners, IReadOnlyList<string> Adults);
