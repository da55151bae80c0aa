using CoopLessons.Core.Calendar;
using CoopLessons.Core.Families;
using CoopLessons.Core.Hours;
using CoopLessons.Core.Sealing;
using CoopLessons.Web.Tests.Documents;

namespace CoopLessons.Web.Tests.Sealing;

/// <summary>deploy/check-sealed-year, run as it is given out, with jq and sha256sum as the system brings them.</summary>
public sealed class The_script_that_recomputes_a_fingerprint : IDisposable
{
    // Every kind of sign that JSON's writers escape otherwise than each other.
    private const string Odd = "Wren “\"\\/” Nguyễn Ánh \ud83c\udf5e <&'> \u007f \u2028 \u2029 \u0001\u001f\b\f\n\r\t \ufeff \u00ad e\u0301 \ud83d\udc69\u200d\ud83c\udf3e";

    private static readonly Guid Child = Guid.Parse("0198a000-0000-7000-8000-000000000001");
    private readonly string _folder = Directory.CreateTempSubdirectory("sealed-").FullName;

    [TheoryBeside("bash", "jq", "sha256sum")]
    [InlineData("Wren")]
    [InlineData(Odd)]
    public async Task Prints_the_fingerprint_that_is_printed_on_papers(string name)
    {
        var record = Record(40, name);
        var (code, output, errors) = await RunAsync(Kept("record", record.Text));
        Assert.True(code == 0, output + errors);
        Assert.Equal(["sealed record: " + record.Fingerprint.Groups, "Everything holds."], Lines(output));
    }

    [FactBeside("jq")]
    public async Task The_recipe_of_one_line_says_the_same()
    {
        var record = Record(40, Odd);
        var (_, output, _) = await ReferenceProgram.Named("bash").Run("-c", $"jq -jcS . '{Kept("record", record.Text)}' | sha256sum");
        Assert.StartsWith(record.Fingerprint.Hex + " ", output, StringComparison.Ordinal);
        var (_, text, _) = await ReferenceProgram.Named("jq").Run("-jcS", ".", Kept("record", record.Text));
        Assert.Equal(record.Text, text);
    }

    [FactBeside("jq")]
    public async Task Holds_each_amendment_to_the_one_before_it_however_the_files_are_laid_out()
    {
        var (first, second, third) = Chain();
        var (_, pretty, _) = await ReferenceProgram.Named("jq").Run(".", Kept("plain", second.Text));
        string[] files = [Kept("record", first.Text), Kept("one", pretty), Kept("two", third.Text)];
        var (code, output, errors) = await RunAsync(["--is", third.Fingerprint.ShortForm, .. files]);
        Assert.True(code == 0, output + errors);
        Assert.Equal(
            ["sealed record: " + first.Fingerprint.Groups, "amendment 1: " + second.Fingerprint.Groups, "amendment 2: " + third.Fingerprint.Groups, "Everything holds."], Lines(output));
    }

    [FactBeside("jq")]
    public async Task Tells_a_changed_minute_a_missing_amendment_and_another_fingerprint()
    {
        var (first, second, third) = Chain();
        string[] files = [Kept("record", first.Text), Kept("one", second.Text), Kept("two", third.Text)];

        var changed = Kept("changed", first.Text.Replace("\"minutes\":40", "\"minutes\":41", StringComparison.Ordinal));
        var (code, output, _) = await RunAsync(changed, files[1]);
        Assert.Equal(1, code);
        Assert.Contains("one.json follows another fingerprint than the one before it.", output, StringComparison.Ordinal);

        (code, output, _) = await RunAsync(files[0], files[2]);
        Assert.Equal(1, code);
        Assert.Contains("two.json says that it is number 2, and number 1 was to come", output, StringComparison.Ordinal);

        (code, output, _) = await RunAsync("--is", first.Fingerprint.Groups, files[0], files[1]);
        Assert.Equal(1, code);
        Assert.Contains("The last is not the fingerprint that was given.", output, StringComparison.Ordinal);
    }

    [FactBeside("jq")]
    public async Task Says_what_it_cannot_read_and_how_it_is_called()
    {
        Assert.Equal(1, (await RunAsync(Kept("other", "{\"format\":2}"))).ExitCode);
        Assert.Equal(1, (await RunAsync(Kept("none", "no JSON"))).ExitCode);
        Assert.Equal(2, (await RunAsync(Path.Combine(_folder, "nowhere.json"))).ExitCode);
        Assert.Equal(2, (await RunAsync("--is", "abc", Kept("record", Record(40, "Wren").Text))).ExitCode);
        var (code, _, errors) = await RunAsync();
        Assert.Equal(2, code);
        Assert.Contains("check-sealed-year RECORD.json", errors, StringComparison.Ordinal);
    }

    public void Dispose() => Directory.Delete(_folder, recursive: true);

    private static (YearRecord Sealed, YearRecord First, YearRecord Second) Chain()
    {
        var at = new DateTime(2026, 7, 1, 12, 0, 0, DateTimeKind.Utc);
        var first = Record(40, Odd);
        var second = Record(41, Odd).Amending(first, Odd, "Iris", at)!;
        return (first, second, Record(45, Odd).Amending(second, "Once more", "Iris", at.AddDays(1))!);
    }

    private static YearRecord Record(int minutes, string name)
    {
        var subject = new Subject(Guid.Parse("0198a000-0000-7000-8000-000000000002"), name);
        var entry = new LoggedEntry(
            Guid.Parse("0198a000-0000-7000-8000-000000000003"), 1, new DateOnly(2026, 3, 3), new TimeOnly(9, 0), name, Place.Home,
            [new LearnerTime(Child, new Minutes(minutes))], [new SubjectWeight(subject.Id, 1)], []);
        var ledger = HoursLedger.Of(Child, [subject], new DayRange(new DateOnly(2025, 8, 1), new DateOnly(2026, 5, 31)), [entry]);
        var written = new DateTime(2026, 3, 3, 17, 4, 5, DateTimeKind.Utc);
        return new YearFacts(name, ledger, new Dictionary<Guid, EntryInstants> { [entry.Id] = new(null, written) }, new Dictionary<DateOnly, bool>(), [], [])
            .Record(new SealedHeading(name, name, name, 60, []));
    }

    private static Task<(int ExitCode, string Output, string Errors)> RunAsync(params string[] arguments) =>
        ReferenceProgram.Named("bash").Run([Script(), .. arguments]);

    // The tests run from a folder somewhere below that of the sources.
    private static string Script()
    {
        var folder = new DirectoryInfo(AppContext.BaseDirectory);
        while (folder is not null && !File.Exists(Path.Combine(folder.FullName, "CoopLessons.sln")))
            folder = folder.Parent;
        return Path.Combine(folder?.FullName ?? throw new DirectoryNotFoundException("The sources are not above the tests."), "deploy", "check-sealed-year");
    }

    private static string[] Lines(string output) => output.Split('\n', StringSplitOptions.RemoveEmptyEntries);

    private string Kept(string name, string text)
    {
        var file = Path.Combine(_folder, name + ".json");
        File.WriteAllText(file, text);
        return file;
    }
}
