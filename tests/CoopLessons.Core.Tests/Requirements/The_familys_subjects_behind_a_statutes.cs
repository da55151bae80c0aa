using CoopLessons.Core.Requirements;

namespace CoopLessons.Core.Tests.Requirements;

public sealed class The_familys_subjects_behind_a_statutes
{
    private static readonly Source Ours = new("our own", Basis.Family, new DateOnly(2026, 3, 1));
    private static readonly CodedSubject Reading = new(Guid.CreateVersion7(), "reading");
    private static readonly CodedSubject Writing = new(Guid.CreateVersion7(), "writing");
    private static readonly CodedSubject French = new(Guid.CreateVersion7(), "french");
    private static readonly CodedSubject[] Subjects = [Reading, Writing, French];

    private static readonly Pathway Pathway = new(
        "small", "Small", "Small.", Ours, new DutyAges(Ours),
        [new("language-arts", "language arts", true, ["reading", "writing"], Ours), new("latin", "Latin", false, [], Ours)],
        [], [], [], []);

    [Fact]
    public void Are_those_whose_code_the_catalog_proposes()
    {
        var map = SubjectProposal.Of(Pathway, Subjects, []);
        Assert.Equal([Reading.Id, Writing.Id], map["language-arts"].ToHashSet());
        Assert.Empty(map["latin"]);
    }

    [Fact]
    public void Lose_one_that_the_family_takes_out_and_gain_one_that_it_adds()
    {
        var map = SubjectProposal.Of(Pathway, Subjects, [new("language-arts", Writing.Id, false), new("language-arts", French.Id, true), new("latin", French.Id, true)]);
        Assert.Equal([Reading.Id, French.Id], map["language-arts"].ToHashSet());
        Assert.Equal([French.Id], map["latin"]);
    }

    [Fact]
    public void Are_not_touched_by_a_decision_about_what_is_no_longer_there()
    {
        var map = SubjectProposal.Of(Pathway, [Reading], [new("language-arts", French.Id, true), new("greek", Reading.Id, true)]);
        Assert.Equal([Reading.Id], map["language-arts"]);
        Assert.Equal(2, map.Count);
    }
}
