using CoopLessons.Core.Requirements;

namespace CoopLessons.Core.Tests.Requirements;

public sealed class What_the_catalog_holds
{
    private static readonly List<(string Place, Pathway Pathway)> Pathways =
        [.. Catalog.Of50AndDc.All.SelectMany(j => j.Pathways.Select(p => ($"{j.Code} {p.Id}", p)))];

    // Legislatures, state and federal offices, and one university's law library.
    private static readonly string[] OfficialEndings =
    [
        ".gov", ".state.al.us", ".state.co.us", ".state.de.us", ".k12.de.us", ".state.fl.us", ".state.md.us", ".state.nh.us", ".state.pa.us", ".state.ri.us",
        "code.dccouncil.us", "flsenate.gov", "ilga.gov", "ksde.org", "ksrevisor.org", "law.cornell.edu", "louisianabelieves.com", "marylandpublicschools.org",
    ];

    [Fact]
    public void Has_ids_that_are_unique()
    {
        Assert.All(Catalog.Of50AndDc.All, j => AssertUnique(j.Code, j.Pathways.Select(p => p.Id)));
        Assert.All(Pathways, p =>
        {
            AssertUnique(p.Place, p.Pathway.AllRequirements.Select(r => r.Id));
            AssertUnique(p.Place, p.Pathway.Subjects.Select(s => s.Id));
            AssertUnique(p.Place, p.Pathway.Duties.Select(d => d.Id));
            AssertUnique(p.Place, p.Pathway.Records.Select(r => r.Id));
        });
    }

    [Fact]
    public void Names_only_subjects_that_the_pathway_has()
    {
        var pools = Pathways.SelectMany(p => p.Pathway.AllRequirements.OfType<HoursRequirement>().Where(h => h.Subjects is not null).Select(h => (p.Place, p.Pathway, h))).ToList();
        Assert.NotEmpty(pools);
        Assert.All(pools, p => Assert.Subset(p.Pathway.Subjects.Select(s => s.Id).ToHashSet(), p.h.Subjects!.ToHashSet()));
    }

    [Fact]
    public void Ties_duties_only_to_duties_that_are_there_and_not_in_a_ring()
    {
        var tied = Pathways.SelectMany(p => p.Pathway.Duties.SelectMany(d => Withs(d.Due).Select(w => (p.Place, p.Pathway, Duty: d, With: w)))).ToList();
        Assert.NotEmpty(tied);
        Assert.All(tied, t => Assert.True(Leads(t.Pathway, t.Duty, []), $"{t.Place} {t.Duty.Id} stands with {t.With.Duty}"));
    }

    [Fact]
    public void Has_a_citation_and_a_date_behind_everything()
    {
        var sources = Sources().ToList();
        // As many as the files write: none is passed over here.
        Assert.Equal(Catalog.Files().Sum(f => f.Text.Split("\"cite\":").Length - 1), sources.Count);
        Assert.All(sources, s =>
        {
            Assert.False(string.IsNullOrWhiteSpace(s.Source.Cite), s.Place);
            Assert.True(s.Source.Checked >= new DateOnly(2026, 1, 1), $"{s.Place} was checked on {s.Source.Checked:o}");
            Assert.NotEqual(Basis.Family, s.Source.Basis);
        });
    }

    [Fact]
    public void Links_only_to_official_hosts_and_only_from_what_was_read_there()
    {
        var linked = Sources().Where(s => s.Source.Url is not null).ToList();
        Assert.NotEmpty(linked);
        Assert.All(linked, s =>
        {
            Assert.True(s.Source.Basis is Basis.Statute or Basis.StateOffice, $"{s.Place} links from {s.Source.Basis}");
            // An address may end its host with the full stop of the root.
            var host = new Uri(s.Source.Url!).Host.TrimEnd('.');
            Assert.True(OfficialEndings.Any(e => host == e.TrimStart('.') || host.EndsWith(e[0] == '.' ? e : "." + e, StringComparison.Ordinal)), $"{s.Place} links to {host}");
        });
    }

    [Fact]
    public void Calls_nothing_a_requirement_inside_what_is_none() => Assert.All(
        Pathways.SelectMany(p => p.Pathway.AllRequirements.SelectMany(r => r.Parts.Select(part => (p.Place, Whole: r, Part: part)))),
        x => Assert.True(x.Part.Status == x.Whole.Status, $"{x.Place} {x.Part.Id} is {x.Part.Status} inside {x.Whole.Status}"));

    [Fact]
    public void Marks_what_stands_from_memory_to_be_confirmed()
    {
        var remembered = Sources().Where(s => s.Source.Basis == Basis.Memory).ToList();
        Assert.NotEmpty(remembered);
        Assert.All(remembered, s => Assert.True(s.Source.NeedsConfirming, s.Place));
    }

    private static void AssertUnique(string place, IEnumerable<string> ids)
    {
        var all = ids.ToList();
        Assert.True(all.Distinct().Count() == all.Count, $"{place}: {string.Join(", ", all.GroupBy(i => i).Where(g => g.Count() > 1).Select(g => g.Key))} twice");
    }

    private static IEnumerable<WithDuty> Withs(DueRule rule) => rule switch
    {
        WithDuty with => [with],
        LaterOf later => later.Of.SelectMany(Withs),
        EarlierOf earlier => earlier.Of.SelectMany(Withs),
        _ => [],
    };

    // Whether every duty that this one stands with is there and comes to an end without itself.
    private static bool Leads(Pathway pathway, Duty duty, IReadOnlyList<string> passed) =>
        !passed.Contains(duty.Id) && Withs(duty.Due).All(w => pathway.Duties.FirstOrDefault(d => d.Id == w.Duty) is { } next && Leads(pathway, next, [.. passed, duty.Id]));

    private static IEnumerable<(string Place, Source Source)> Sources() => Pathways.SelectMany(p => OfPathway(p.Pathway).Select(s => ($"{p.Place} {s.What}", s.Source)));

    private static IEnumerable<(string What, Source Source)> OfPathway(Pathway p) =>
    [
        ("itself", p.Source),
        ("ages", p.Ages.Source),
        .. p.Year is { } year ? [("year", year.Source)] : Array.Empty<(string, Source)>(),
        .. p.AllRequirements.Select(r => (r.Id, r.Source)),
        .. p.Subjects.Select(s => (s.Id, s.Source)),
        .. p.Duties.Select(d => (d.Id, d.Source)),
        .. p.Records.Select(r => (r.Id, r.Source)),
        .. p.Notes.Select(n => (n.Text, n.Source)),
    ];
}
