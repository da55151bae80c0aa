using CoopLessons.Core.Requirements;

namespace CoopLessons.Web.Tests.Commands;

public sealed class The_catalog_checked : IDisposable
{
    private readonly string _folder = Directory.CreateTempSubdirectory("catalog").FullName;

    [Fact]
    public async Task Lists_every_figure_with_its_source_and_counts_them()
    {
        var run = await ProgramRun.OfAsync("check-catalog");
        Assert.True(run.Code == 0, run.Error);
        Assert.Empty(run.Error);
        var lines = run.Text.Split('\n', StringSplitOptions.RemoveEmptyEntries);
        var figures = lines.Where(l => l.Contains('\t', StringComparison.Ordinal)).Select(l => l.Split('\t')).ToList();
        Assert.All(figures, f => Assert.True(f.Length == 8 && f.All(part => part.Length > 0), string.Join('|', f)));
        Assert.Equal(
            Catalog.Of50AndDc.All.Sum(j => j.Pathways.Sum(p =>
                (p.Ages is { From: null, To: null } ? 0 : 1) + (p.Year is null ? 0 : 1) + p.AllRequirements.Count(r => r is not (AnyOf or AllOf or JudgedRequirement))
                + p.Duties.Count + p.Records.Count(r => r.KeepAlways || r.KeepYears is not null))),
            figures.Count);
        Assert.Equal($"{figures.Count} figures, all with a citation", lines[^1]);
        Assert.Equal(figures.Count, Sum(lines, "basis: "));
        Assert.Equal(figures.Count, Sum(lines, "status: "));
    }

    [Theory]
    // RSMo § 167.012.2(2), 24 P.S. § 13-1327.1(c), K.S.A. 72-3115, 8 NYCRR § 100.10(f)(2), as the catalog cites them.
    [InlineData("US-MO\thome-school\thours in core subjects at the regular home\t400 hours of core at home, from 7, under 16\trequired\tsummary by others, please confirm\t2026-11-25\tRSMo § 167.012.2(2)")]
    [InlineData("US-PA\thome-education\tschool days\t180 days, one of several\trequired\tstatute text\t2026-11-25\t24 P.S. § 13-1327.1(c)")]
    [InlineData("US-KS\tnaps\thours of instruction\t1,116 hours, grades 1-11, one of several\tderived from a general phrase\tstatute text\t2026-11-25\tK.S.A. 72-3115(b)")]
    [InlineData("US-NY\thome-instruction\thours of each quarter, grades 7 to 12\t247:30 hours in each of 4 terms, grades 7-12\tderived from a general phrase\tsummary by others\t2026-11-25\t8 NYCRR § 100.10(f)(2), (g)(1)")]
    [InlineData("US-NY\thome-instruction\tages of the duty\tfrom 6 by 1 December to 16 and the end of that year\trequired\tsummary by others, please confirm\t2026-11-25\tN.Y. Educ. Law § 3205")]
    [InlineData("US-NE\texempt-school\tthe law's year\tfrom 1 July\trequired\tsummary by others\t2026-11-25\t92 NAC 13 § 002.07")]
    public async Task Tells_of_a_figure_what_it_is_and_what_it_rests_on(string line) =>
        Assert.Contains(line, (await ProgramRun.OfAsync("check-catalog")).Text.Split('\n'));

    [Fact]
    public async Task Reads_a_folder_in_place_of_its_own_and_passes_over_the_schema_beside_the_files()
    {
        Write("us-wi.json", Own("us-wi.json"));
        Write("jurisdiction.schema.json", Catalog.SchemaText);
        var run = await RunAsync();
        Assert.True(run.Code == 0, run.Error);
        Assert.Matches(@"basis: statute text: \d+\n(basis: [^\n]+\n)*status: required: \d+\n\d+ figures, all with a citation\n$", run.Text);
    }

    [Fact]
    public async Task Names_the_file_and_the_place_of_a_figure_without_a_citation()
    {
        Write("us-mo.json", Own("us-mo.json"));
        var wisconsin = Own("us-wi.json");
        var requirements = wisconsin.IndexOf("\"requirements\"", StringComparison.Ordinal);
        Write("us-wi.json", wisconsin[..requirements] + wisconsin[requirements..].ReplaceFirst("\"cite\": \"Wis. Stat. § 118.165(1)(c)\", ", ""));
        var run = await RunAsync();
        Assert.Equal(1, run.Code);
        Assert.Empty(run.Output);
        Assert.Contains("us-wi.json: $.pathways[0].requirements[0]: the figure “hours” of “home-based-private” has no citation", run.ErrorLines);
        Assert.All(run.ErrorLines, l => Assert.StartsWith("us-wi.json: ", l, StringComparison.Ordinal));
    }

    [Theory]
    [InlineData("\"status\": \"required\"", "\"status\": \"binding\"", "/status: enum")]
    [InlineData("\"begins\": \"07-01\"", "\"begins\": \"7 July\"", "/pathways/0/year/begins: pattern")]
    [InlineData("\"checked\": \"2026-11-25\"", "\"checked\": \"2026-02-30\"", "/checked: format")]
    [InlineData("\"hours\": 875,", "\"hours\": 875, \"minutes\": 5,", "/pathways/0/requirements/0/minutes: has no place here")]
    [InlineData("\"kind\": \"hours\"", "\"kind\": \"weeks\"", "character 16: Read unrecognized type discriminator id 'weeks'.")]
    [InlineData("\"begins\": \"07-01\"", "\"begins\": \"06-31\"", "character 26: A date of every year is written MM-DD.")]
    public async Task Names_the_file_and_the_place_of_what_the_schema_does_not_know(string sound, string fault, string place)
    {
        Write("us-wi.json", Own("us-wi.json").ReplaceFirst(sound, fault));
        var run = await RunAsync();
        Assert.Equal(1, run.Code);
        Assert.Empty(run.Output);
        Assert.Contains(place, Assert.Single(run.ErrorLines), StringComparison.Ordinal);
        Assert.StartsWith("us-wi.json: ", run.Error, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("{ \"code\": ", "us-xx.json: line 1, character ")]
    [InlineData("", "us-xx.json: line 1, character 1: ")]
    [InlineData("null", "us-xx.json: The file holds nothing.")]
    [InlineData("[]", "us-xx.json: $: type")]
    public async Task Says_of_a_broken_file_where_it_breaks(string text, string begins)
    {
        Write("us-xx.json", text);
        var run = await RunAsync();
        Assert.Equal(1, run.Code);
        Assert.StartsWith(begins, Assert.Single(run.ErrorLines), StringComparison.Ordinal);
    }

    [Fact]
    public async Task Finds_nothing_to_check_in_an_empty_folder() => (await RunAsync()).AssertWrongUse("There are no catalog files (*.json) in");

    public void Dispose() => Directory.Delete(_folder, recursive: true);

    private static int Sum(string[] lines, string begins) =>
        lines.Where(l => l.StartsWith(begins, StringComparison.Ordinal)).Sum(l => int.Parse(l[(l.LastIndexOf(' ') + 1)..], System.Globalization.CultureInfo.InvariantCulture));

    private static string Own(string name) => Catalog.Files().Single(f => f.Name == name).Text;

    private void Write(string name, string text) => File.WriteAllText(Path.Combine(_folder, name), text);

    private Task<ProgramRun> RunAsync() => ProgramRun.OfAsync("check-catalog", "--from", _folder);
}

internal static class Replacing
{
    public static string ReplaceFirst(this string text, string old, string with)
    {
        var at = text.IndexOf(old, StringComparison.Ordinal);
        Assert.True(at >= 0, $"{old} does not stand in the file");
        return text[..at] + with + text[(at + old.Length)..];
    }
}
