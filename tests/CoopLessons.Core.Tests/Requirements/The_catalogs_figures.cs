// The catalog and the table it is held against (FiguresAToI, FiguresKToN, FiguresOToW) were written apart from each
// other, each from the statutes, rules and office documents named in it. Where they differed, a second reading of the
// statutes settled it; the rows concerned say so.
using CoopLessons.Core.Requirements;

namespace CoopLessons.Core.Tests.Requirements;

public sealed class The_catalogs_figures
{
    private static readonly PublishedFigure[] Table = [.. FiguresAToI.All, .. FiguresKToN.All, .. FiguresOToW.All];

    // ISO 3166-2:US: the 50 states and the District of Columbia (from memory).
    private const string Codes =
        "AL AK AZ AR CA CO CT DE DC FL GA HI ID IL IN IA KS KY LA ME MD MA MI MN MS MO MT NE NV NH NJ NM NY NC ND OH OK OR PA RI SC SD TN TX UT VT VA WA WV WI WY";

    public static TheoryData<string> Jurisdictions => [.. Codes.Split(' ').Select(c => "US-" + c)];

    [Theory]
    [MemberData(nameof(Jurisdictions))]
    public void Are_those_that_were_published(string code)
    {
        var published = Table.Where(f => f.Code == code).OrderBy(f => f.Pathway, StringComparer.Ordinal).Select(f => (f.Pathway, string.Join('\n', f.Figures.Order(StringComparer.Ordinal))));
        var catalog = Catalog.Of50AndDc[code]!.Pathways.OrderBy(p => p.Id, StringComparer.Ordinal).Select(p => (p.Id, string.Join('\n', CanonicalFigures.Of(p))));
        Assert.Equal(published, catalog);
    }

    [Theory]
    [MemberData(nameof(Jurisdictions))]
    public void Hold_for_the_ages_that_were_published(string code)
    {
        var published = Table.Where(f => f.Code == code).OrderBy(f => f.Pathway, StringComparer.Ordinal).Select(f => (f.Pathway, f.Ages));
        var catalog = Catalog.Of50AndDc[code]!.Pathways.OrderBy(p => p.Id, StringComparer.Ordinal).Select(p => (p.Id, CanonicalFigures.Ages(p.Ages)));
        Assert.Equal(published, catalog);
    }

    [Fact]
    public void Cover_50_states_and_the_District_of_Columbia()
    {
        var codes = Codes.Split(' ').Select(c => "US-" + c).Order(StringComparer.Ordinal).ToList();
        Assert.Equal(51, codes.Distinct().Count());
        Assert.Equal(codes, Catalog.Of50AndDc.All.Select(j => j.Code).Order(StringComparer.Ordinal));
        Assert.Equal(codes, Catalog.Files().Select(f => Path.GetFileNameWithoutExtension(f.Name).ToUpperInvariant()));
        Assert.Equal(codes, Table.Select(f => f.Code).Distinct().Order(StringComparer.Ordinal));
    }

    [Fact]
    public void Are_each_published_once() =>
        Assert.Equal(Table.Length, Table.Select(f => (f.Code, f.Pathway)).Distinct().Count());
}
