using CoopLessons.Core.Schedule;
using CoopLessons.Core.Units;
using static CoopLessons.Core.Tests.Schedule.Layout.Desk;

namespace CoopLessons.Core.Tests.Schedule.Layout;

/// <summary>A dough rises for an hour, and the hour is filled.</summary>
public class The_run_sheet_of_a_day
{
    private static readonly FreeTime Morning = Free((Wednesday, 540, 690));

    private static readonly WeekProblem Week = Desk.Week(
        [Wednesday, Thursday],
        [Learner("Wren", Morning, sitting: 20), Learner("Lark", Morning)],
        [Adult("Iris", Morning)],
        Session("Knead the dough", 20, AdultNeed.HandsOn, "Wren", "Lark") with { Wait = new WaitAndLook(60, 10, 10) },
        Session("Letters", 25, AdultNeed.HandsOn, "Wren"),
        Session("Rivers", 40, AdultNeed.Beside, "Lark"));

    private static readonly Placing[] Placed =
    [
        At("Rivers", Wednesday, 565),
        At("Letters", Wednesday, 610, adult: "Iris"),
        At("Knead the dough", Wednesday, 540, look: 620 + 15, adult: "Iris", looker: "Iris"),
        At("A walk", Thursday, 540),
    ];

    private static readonly DaySheet Sheet = DaySheet.Of(Week, Placed, Wednesday);

    [Fact]
    public void Has_its_lines_in_order_of_time_with_the_change_after_them()
    {
        Assert.Equal(["Knead the dough", "Rivers", "Letters"], Sheet.Lines.Select(l => l.Title));
        Assert.Equal([new Stretch(540, 560), new Stretch(565, 605), new Stretch(610, 635)], Sheet.Lines.Select(l => l.When));
        // Five minutes; ten after more than thirty; fifteen where Wren has sat for longer than Wren does.
        Assert.Equal([565, 615, 650], Sheet.Lines.Select(l => l.ChangeUntil));
        Assert.Equal([Id("Iris"), null, Id("Iris")], Sheet.Lines.Select(l => l.Adult));
    }

    [Fact]
    public void Says_when_to_look_and_what_fills_the_wait()
    {
        var wait = Assert.Single(Sheet.Waits);
        Assert.Equal((560, 620, 630, new Stretch(635, 645)), (wait.From, wait.Earliest, wait.Latest, wait.Look!.Value));
        Assert.Equal(Id("Iris"), wait.Looker);
        Assert.Equal([Id("Rivers"), Id("Letters")], wait.FilledBy);
    }

    [Fact]
    public void Has_a_column_for_each_child_with_the_free_time_of_a_quarter_of_an_hour_and_more()
    {
        Assert.Equal(
            [
                new SheetCell(new Stretch(540, 560), SheetPart.Session, Id("Knead the dough")),
                new SheetCell(new Stretch(560, 565), SheetPart.Change, Id("Knead the dough")),
                new SheetCell(new Stretch(565, 610), SheetPart.Free, null),
                new SheetCell(new Stretch(610, 635), SheetPart.Session, Id("Letters")),
                new SheetCell(new Stretch(635, 645), SheetPart.Look, Id("Knead the dough")),
                new SheetCell(new Stretch(645, 690), SheetPart.Free, null),
            ],
            Sheet.Learners[0].Cells);
        Assert.Equal([new Stretch(615, 635), new Stretch(645, 690)], Sheet.Learners[1].Cells.Where(c => c.Part == SheetPart.Free).Select(c => c.When));
    }

    [Fact]
    public void Has_a_column_for_the_adult_hands_and_nearness() => Assert.Equal(
        [SheetPart.HandsOn, SheetPart.Beside, SheetPart.HandsOn, SheetPart.Look], Assert.Single(Sheet.Adults).Cells.Select(c => c.Part));

    [Fact]
    public void Is_filled_by_the_program_where_the_morning_is_short()
    {
        // 105 minutes hold kneading, the wait and the look only if both other things go into the wait.
        var week = Week with
        {
            Learners = [.. Week.Learners.Select(l => l with { Free = Free((Wednesday, 540, 645)), LongestSitting = 60 })],
            Sessions = [.. Week.Sessions.Select(s => s with { Learners = [Id("Wren"), Id("Lark")], Minutes = Math.Min(25, s.Minutes) })],
        };
        var plan = WeekLayout.Solve(week, Effort.Usual);
        Assert.Empty(plan.Misfits);
        Assert.Empty(PlanCheck.Faults(week, plan.Places));
        Assert.Equal(new[] { Id("Letters"), Id("Rivers") }.Order(), Assert.Single(DaySheet.Of(week, plan.Places, Wednesday).Waits).FilledBy.Order());
    }

    [Fact]
    public void Is_empty_on_a_day_without_anything() => Assert.Empty(DaySheet.Of(Week, Placed, Thursday).Lines);
}
