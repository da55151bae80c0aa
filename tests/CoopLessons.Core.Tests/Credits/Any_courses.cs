using CoopLessons.Core.Calendar;
using CoopLessons.Core.Credits;
using CoopLessons.Core.Hours;
using CsCheck;
using static CoopLessons.Core.Tests.AlderLog;

namespace CoopLessons.Core.Tests.Credits;

/// <summary>What holds of every set of courses over every log, whatever they ask for.</summary>
public class Any_courses
{
    private static readonly Gen<CourseRule> Rules =
        from subject in Gen.Int[0, Subjects.Count - 1]
        from first in Gen.Int[-20, 40]
        from days in Gen.Int[0, 60]
        from unit in Gen.Int[0, 3]
        select new CourseRule(
            Subjects[subject].Id, new DayRange(new DateOnly(2026, 12, 1).AddDays(first), new DateOnly(2026, 12, 1).AddDays(first + days)), unit == 0 ? null : Id(600 + unit));

    private static readonly Gen<LogPart> Parts =
        from entry in Gen.Int[1, 45]
        from subject in Gen.Int[0, Subjects.Count - 1]
        select new LogPart(Id(entry), Subjects[subject].Id);

    private static readonly Gen<CourseClaim[]> Courses =
        (from rules in Rules.Array[0, 4]
         from picked in Parts.Array[0, 8]
         from put in Parts.Array[0, 8]
         select (rules, picked, put)).Array[0, 5]
        .Select(all => all.Select((c, i) => new CourseClaim(Id(700 + i), c.rules, c.picked.ToHashSet(), c.put.ToHashSet(), [])).ToArray());

    private static readonly Gen<Dictionary<Guid, Guid>> Units = Gen.Int[0, 3].Array[40]
        .Select(units => units.Index().Where(u => u.Item > 0).ToDictionary(u => Id(u.Index + 1), u => Id(600 + u.Item)));

    private static readonly Gen<(HoursLedger Ledger, CourseClaim[] Courses, Dictionary<Guid, Guid> Units)> Anything =
        from log in AnyLog.Logs
        from courses in Courses
        from units in Units
        select (HoursLedger.Of(Wren, Subjects, Year, log), courses, units);

    [Fact]
    public void Hold_with_what_is_in_none_every_minute_of_the_ledger_once() =>
        Anything.Sample(a =>
        {
            var courses = CourseLedger.Of(a.Ledger, a.Courses, a.Units);
            var parts = courses.Courses.SelectMany(c => c.Credits).Select(c => c.Credit).Concat(courses.InNone).ToList();
            return courses.Courses.Sum(c => c.FromLog.Value) + courses.MinutesInNone.Value == a.Ledger.Total.Value
                && parts.Count == a.Ledger.Credits.Count && parts.ToHashSet().SetEquals(a.Ledger.Credits);
        });

    [Fact]
    public void Have_nothing_that_was_put_out_of_them_by_hand() =>
        Anything.Sample(a => CourseLedger.Of(a.Ledger, a.Courses, a.Units).Courses
            .Zip(a.Courses).All(c => c.First.Credits.All(x => !c.Second.PutOut.Contains(LogPart.Of(x.Credit)))));

    [Fact]
    public void Have_what_was_given_by_hand_to_any_of_them_in_one_to_which_it_was_given() =>
        Anything.Sample(a =>
        {
            var courses = CourseLedger.Of(a.Ledger, a.Courses, a.Units);
            return a.Ledger.Credits.Select(LogPart.Of).All(part =>
            {
                var given = a.Courses.Where(c => c.PickedIn.Contains(part) && !c.PutOut.Contains(part)).ToList();
                return given.Count == 0 || courses.HolderOf(part) == given[0].CourseId;
            });
        });

    [Fact]
    public void Say_of_every_minute_that_they_miss_which_course_has_it() =>
        Anything.Sample(a =>
        {
            var courses = CourseLedger.Of(a.Ledger, a.Courses, a.Units);
            // A course alone would have all that it asks for.
            return a.Courses.All(c => CourseLedger.Of(a.Ledger, [c], a.Units)[c.CourseId].FromLog.Value
                == courses[c.CourseId].FromLog.Value + courses[c.CourseId].InAnother.Sum(x => x.Minutes.Value));
        });

    [Fact]
    public void Take_nothing_from_those_before_them() =>
        Anything.Sample(a =>
        {
            var byRulesAlone = a.Courses.Select(c => c with { PickedIn = new HashSet<LogPart>() }).ToList();
            var all = CourseLedger.Of(a.Ledger, byRulesAlone, a.Units);
            return byRulesAlone.Index().All(c => CourseLedger.Of(a.Ledger, [.. byRulesAlone.Take(c.Index + 1)], a.Units)[c.Item.CourseId].Credits.SequenceEqual(all[c.Item.CourseId].Credits));
        });
}
