using CoopLessons.Core.Credits;
using CoopLessons.Core.Hours;
using static CoopLessons.Core.Tests.AlderLog;
using static CoopLessons.Core.Tests.Credits.CourseClaims;

namespace CoopLessons.Core.Tests.Credits;

public class Which_course_has_a_part_of_the_log
{
    private static readonly HoursLedger Bread = WrensLedger(
        Entry(1, Tuesday, 90, split: [2.Of(Science), 1.Of(Writing)]),
        Entry(2, Tuesday.AddDays(1), 400, Science),
        Entry(3, Tuesday.AddDays(40), 45, Writing));

    [Fact]
    public void Goes_by_subject_and_not_by_entry()
    {
        var courses = CourseLedger.Of(Bread, [Course(Biology, All(Science)), Course(Essays, All(Writing))], NoUnits);
        Assert.Equal((460, 75), (courses[Biology].FromLog.Value, courses[Essays].FromLog.Value));
        Assert.Equal(0, courses.MinutesInNone.Value);
    }

    [Fact]
    public void Is_the_first_in_the_parents_order_and_the_other_is_told_so()
    {
        var courses = CourseLedger.Of(Bread, [Course(Biology, All(Science)), Course(History, Between(Science, Tuesday.AddDays(1), Tuesday.AddDays(1)))], NoUnits);
        Assert.Empty(courses[History].Credits);
        Assert.Equal([new CountedInAnother(Biology, new Minutes(400))], courses[History].InAnother);
        Assert.Equal("6:40", courses[History].InAnother[0].Minutes.Clock);
        Assert.Empty(courses[Biology].InAnother);
    }

    [Fact]
    public void Is_the_one_to_which_a_parent_gave_it_whatever_the_order()
    {
        var courses = CourseLedger.Of(Bread, [Course(Biology, All(Science)), Course(History).With(2, Science)], NoUnits);
        Assert.Equal((60, 400), (courses[Biology].FromLog.Value, courses[History].FromLog.Value));
        Assert.True(courses[History].Credits[0].ByHand);
        Assert.Equal([new CountedInAnother(History, new Minutes(400))], courses[Biology].InAnother);
    }

    [Fact]
    public void Is_the_next_that_asks_once_the_first_was_told_not_to()
    {
        var courses = CourseLedger.Of(Bread, [Course(Biology, All(Science)).Without(2, Science), Course(History, All(Science))], NoUnits);
        Assert.Equal((60, 400), (courses[Biology].FromLog.Value, courses[History].FromLog.Value));
        Assert.Empty(courses[Biology].InAnother);
    }

    [Fact]
    public void Is_none_where_no_course_asks()
    {
        var courses = CourseLedger.Of(Bread, [Course(Essays, Between(Writing, Tuesday, Tuesday))], NoUnits);
        Assert.Equal(30, courses[Essays].FromLog.Value);
        Assert.Equal(60 + 400 + 45, courses.MinutesInNone.Value);
        Assert.Null(courses.HolderOf(new LogPart(Id(3), Writing.Id)));
    }

    [Fact]
    public void Follows_the_unit_where_a_rule_names_one()
    {
        var courses = CourseLedger.Of(Bread, [Course(Biology, All(Science, unit: Id(601)))], new Dictionary<Guid, Guid> { [Id(2)] = Id(601), [Id(1)] = Id(602) });
        Assert.Equal(400, courses[Biology].FromLog.Value);
    }

    [Fact]
    public void Counts_study_elsewhere_beside_it_and_not_in_the_ledgers_sum()
    {
        var lab = new StudyElsewhere(Year, new Minutes(300), "Laboratory days", "county extension");
        var courses = CourseLedger.Of(Bread, [Course(Biology, All(Science)) with { Elsewhere = [lab] }], NoUnits);
        Assert.Equal((460, 300, 760), (courses[Biology].FromLog.Value, courses[Biology].Elsewhere.Value, courses[Biology].Total.Value));
        Assert.Equal(Bread.Total.Value, courses[Biology].FromLog.Value + courses.MinutesInNone.Value);
    }
}
