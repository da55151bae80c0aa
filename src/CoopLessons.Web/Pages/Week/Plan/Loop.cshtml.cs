using CoopLessons.Data;
using CoopLessons.Data.Planning;

namespace CoopLessons.Web.Pages.Planning;

/// <summary>A loop: its steps in order, and which of them comes next.</summary>
public sealed class LoopModel(AppDb db, TimeProvider clock) : PlanThingPage<LessonLoop, LoopInput>(db, clock)
{
    protected override IQueryable<LessonLoop> Rows(Guid id) => Db.Loops.Where(l => l.Id == id);

    protected override LoopInput FormOf(LessonLoop row) => LoopInput.Of(row);

    protected override string TitleOf(LessonLoop row) => row.Title;

    protected override bool NamesOwn() =>
        Choices.HasLearners(Input.Learners) && Input.Steps.All(s => Choices.HasSubject(s.SubjectId) && (s.Id == Guid.Empty || Row?.Step(s.Id) is not null));

    protected override void Check()
    {
        Input.WithRoom();
        foreach (var again in Input.Steps.Where(s => s.Id != Guid.Empty).GroupBy(s => s.Id).SelectMany(g => g.Skip(1)))
            again.Id = Guid.Empty;
        if (Input.Next < 0 || Input.Next >= Input.Steps.Count)
            Input.Next = 0;
        if (!ModelState.IsValid)
            return;
        foreach (var step in Input.Steps.Where(s => s.Id == Guid.Empty && !s.IsBlank))
            step.Id = Guid.CreateVersion7();
    }

    protected override Task BeginAsync()
    {
        Input = new LoopInput { Minutes = 20, PerWeek = 3 }.WithRoom();
        return Task.CompletedTask;
    }

    protected override Task<LessonLoop> MakeAsync(Guid id)
    {
        var loop = new LessonLoop(id, Input.Read());
        loop.GoTo(Input.NextStep());
        return Task.FromResult(loop);
    }

    protected override void Write(LessonLoop row)
    {
        row.Describe(Input.Read());
        row.GoTo(Input.NextStep());
        if (Input.SetAside)
            row.PutAside();
        else
            row.BringBack();
    }

    protected override Task<IReadOnlyList<string>> BecomesAsync(LessonLoop row) => SessionsGoAsync(Db.PlannedSessions.Where(s => s.LoopId == row.Id), "sitting", "sittings");
}
