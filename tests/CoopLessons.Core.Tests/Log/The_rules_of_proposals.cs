using CoopLessons.Core.Hours;
using CoopLessons.Core.Log;
using CsCheck;
using static CoopLessons.Core.Tests.AlderLog;

namespace CoopLessons.Core.Tests.Log;

public class The_rules_of_proposals
{
    private static readonly DateOnly s_today = new(2027, 1, 12);
    private const int Ten = 10 * 60;

    private static LogCandidate Thing(string what, params string[] names) => new(what, Place.Home, [], [], [], names);

    private static LogCandidate Planned(string what, int inDays, int order = 0) =>
        Thing(what) with { Session = new OpenSession(new Guid(order + 1, (short)(inDays + 10), 0, new byte[8]), s_today.AddDays(inDays), order) };

    private static LogCandidate Past(string what, int? startsAt, params int[] daysAgo) => Thing(what) with
    {
        Past = new PastThing(
            new LoggedEntry(Guid.Empty, 1, s_today.AddDays(-daysAgo[0]), null, what, Place.Home, [new LearnerTime(Wren, new Minutes(30))], [new SubjectWeight(Subjects[0].Id, 1)], []),
            30, startsAt, [.. daysAgo.Select(d => s_today.AddDays(-d))]),
    };

    private static IEnumerable<string> Shown(string typed, params LogCandidate[] candidates) => LogProposals.Of(typed, candidates, s_today, Ten).Select(c => c.What);

    [Fact]
    public void Rule_1_every_typed_word_begins_a_word()
    {
        LogCandidate[] all = [Thing("Baked rye bread", "Heron", "Home arts"), Thing("Read aloud")];
        Assert.Equal(["Baked rye bread"], Shown("br BA", all));
        Assert.Equal(["Baked rye bread"], Shown("her art", all));
        Assert.Equal(["Read aloud"], Shown("rEa", all));
        Assert.Empty(Shown("aked", all));
        Assert.Equal(2, Shown("", all).Count());
    }

    [Fact]
    public void Rule_2_the_same_words_stand_once_for_each_session()
    {
        Assert.Equal(["Kneading"], Shown("", Past("kneading", null, 3), Planned("Kneading", 0)));
        Assert.Equal(["Kneading", "Kneading"], Shown("", Planned("Kneading", 0), Planned("Kneading", 1)));
        Assert.Equal(["Science"], Shown("", Past("Science", null, 3), Thing("Science") with { Subject = 3 }));
    }

    [Fact]
    public void Rule_3_today_s_plan_comes_first_in_its_order() =>
        Assert.Equal(["Second", "Alone", "Usual"], Shown("", Past("Usual", null, 7, 14), Planned("Alone", 0, 2), Planned("Second", 0, 1)));

    [Fact]
    public void Rule_4_then_what_is_usual_on_this_weekday_near_its_hour()
    {
        Assert.Equal(["Thrice", "Twice, later", "Twice", "Tomorrow's"], Shown("", Planned("Tomorrow's", 1), Past("Twice", null, 14, 21), Past("Thrice", null, 7, 14, 21), Past("Twice, later", 11 * 60, 7, 21)));
        Assert.Equal(["Tomorrow's", "In the evening"], Shown("", Planned("Tomorrow's", 1), Past("In the evening", 19 * 60, 7, 14)));
        Assert.Equal(["Tomorrow's", "Done today"], Shown("", Planned("Tomorrow's", 1), Past("Done today", null, 0, 7, 14)));
    }

    [Fact]
    public void Rule_5_then_the_plan_of_other_days_the_nearer_first() =>
        Assert.Equal(["Yesterday's", "Tomorrow's", "Friday's", "Last month's"], Shown("", Past("Last month's", null, 30), Planned("Friday's", 3), Planned("Tomorrow's", 1), Planned("Yesterday's", -1)));

    [Fact]
    public void Rule_6_then_what_was_done_the_last_first() =>
        Assert.Equal(["Newer", "Oftener", "Older"], Shown("", Past("Older", null, 9), Past("Oftener", null, 9, 10), Past("Newer", null, 2)));

    [Fact]
    public void Rule_7_then_subjects_in_their_order() =>
        Assert.Equal(["Done once", "Science", "Art"], Shown("", Thing("Art") with { Subject = 1 }, Thing("Science") with { Subject = 0 }, Past("Done once", null, 90)));

    [Fact]
    public void Rule_8_else_by_words() => Assert.Equal(["Apples", "Pears"], Shown("", Past("Pears", null, 5), Past("Apples", null, 5)));

    private static readonly string[] s_words = ["bread", "Bréad", "br", "rye", "read", "re", "7", "heron", "ba", ""];

    private static readonly Gen<string> Texts = Gen.Int[0, 9].Select(i => s_words[i]).Array[0, 3].Select(w => string.Join(' ', w));

    private static readonly Gen<LogCandidate[]> Anything = Gen.Select(Texts, Gen.Int[-3, 3], Gen.Int[0, 3], Gen.Int[0, 40], (what, day, kind, ago) => kind switch
    {
        0 => Planned(what, day, ago),
        1 => Past(what, null, ago, ago + 7, ago + 14),
        2 => Past(what, ago * 30, ago),
        _ => Thing(what, "Heron") with { Subject = ago },
    }).Array[0, 12];

    [Fact]
    public void Typing_more_never_brings_a_proposal_that_was_not_there() =>
        Gen.Select(Texts, Texts, Gen.Bool, Anything).Sample((typed, more, apart, all) =>
        {
            var longer = typed + (apart ? " " : "") + more;
            var before = LogProposals.Of(typed, all, s_today, Ten);
            var after = LogProposals.Of(longer, all, s_today, Ten);
            return after.SequenceEqual(before.Where(after.Contains));
        });

    [Fact]
    public void The_order_does_not_depend_on_how_the_things_came() =>
        Gen.Select(Texts, Anything).Sample((typed, all) =>
            Signs(LogProposals.Of(typed, all, s_today, Ten)).SequenceEqual(Signs(LogProposals.Of(typed, all.Reverse(), s_today, Ten)))
            && Signs(LogProposals.Of(typed, all, s_today, Ten)).SequenceEqual(Signs(LogProposals.Of(typed, all.OrderBy(c => c.What.Length).ThenBy(c => c.Subject), s_today, Ten))));

    private static IEnumerable<(string, Guid?, DateOnly?, int?)> Signs(IEnumerable<LogCandidate> shown) => shown.Select(c => (c.What, c.Session?.Id, c.Past?.LastOn, c.Subject));
}
