using CoopLessons.Data.Families;
using CoopLessons.Data.Tenancy;
using CoopLessons.Web.Tests.App;
using CoopLessons.Web.Tests.Records;
using Microsoft.EntityFrameworkCore;

namespace CoopLessons.Web.Tests.Commands;

[Collection(SharedServer.Name)]
public sealed class Hours_from_the_command_line(TestServer server)
{
    [Fact]
    public async Task Are_those_of_the_page_byte_for_byte()
    {
        var log = await LogAsync("Linnet");
        var run = await RunAsync(log.Family.Id.ToString(), "Linnet", "csv");
        var page = await log.Guardian.OpenAsync(log.FilePath("csv"));

        Assert.Equal(0, run.Code);
        // The day on which a report is made comes from the clock, which this test sets on the page alone.
        Assert.Equal(WithoutMadeOn(System.Text.Encoding.UTF8.GetString(await page.Content.ReadAsByteArrayAsync())), WithoutMadeOn(run.Text));
        var fingerprint = (await log.Guardian.GetAsync(log.RecordsPath())).QuerySelector("dl.facts code")!.TextContent;
        Assert.Equal([$"Linnet: 1:40 hours on 1 school day, fingerprint {fingerprint}"], run.ErrorLines);
    }

    [Theory]
    [InlineData("pdf", "%PDF-")]
    [InlineData("xlsx", "PK")]
    [InlineData("csv", "\uFEFFpart,")]
    public async Task Are_written_to_a_file_that_only_its_owner_reads(string format, string begins)
    {
        var log = await LogAsync("Linnet");
        var path = Path.Combine(server.Database.Folder, $"{Guid.NewGuid():N}.{format}");
        var run = await RunAsync(log.Family.Id.ToString(), log.Linnet.ToString(), format, "--out", path);

        Assert.True(run.Code == 0, run.Error);
        Assert.Empty(run.Output);
        Assert.StartsWith(begins, System.Text.Encoding.UTF8.GetString(await File.ReadAllBytesAsync(path)), StringComparison.Ordinal);
        if (!OperatingSystem.IsWindows())
            Assert.Equal(UnixFileMode.UserRead | UnixFileMode.UserWrite, File.GetUnixFileMode(path));
    }

    [Fact]
    public async Task Are_found_by_names_whatever_their_capitals()
    {
        var log = await LogAsync("Linnet");
        var name = await RenameAsync(log, $"Alder {Guid.NewGuid():N}");
        var run = await RunAsync(name.ToUpperInvariant(), "LINNET", "csv");
        Assert.True(run.Code == 0, run.Error);
        Assert.Contains("total,,,100,", run.Text, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Of_one_day_have_that_day_as_both_ends()
    {
        var log = await LogAsync("Linnet");
        var run = await ProgramRun.OfAsync(server.Database, "hours", "--family", log.Family.Id.ToString(), "--learner", "Linnet", "--from", "2026-03-02", "--to", "2026-03-02", "--format", "csv");
        Assert.True(run.Code == 0, run.Error);
        Assert.Contains("total,,,60,", run.Text, StringComparison.Ordinal);
        Assert.Contains("2 March 2026 to 2 March 2026", run.Text, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Of_an_unknown_family_name_those_there_are()
    {
        await LogAsync("Linnet");
        var run = await RunAsync("Nobody", "Linnet", "csv");
        run.AssertWrongUse("There is no family “Nobody”; there is ");
        (await RunAsync(Guid.NewGuid().ToString(), "Linnet", "csv")).AssertWrongUse("There is no family with the id");
    }

    [Fact]
    public async Task Of_a_name_that_two_families_bear_ask_for_an_id()
    {
        var (one, two) = (await LogAsync("Linnet"), await LogAsync("Linnet"));
        var name = await RenameAsync(one, $"Birch {Guid.NewGuid():N}");
        await RenameAsync(two, name);
        var run = await RunAsync(name, "Linnet", "csv");
        run.AssertWrongUse("fits 2 families; give the id:");
        Assert.Contains(one.Family.Id.ToString(), run.Error, StringComparison.Ordinal);
        Assert.Contains(two.Family.Id.ToString(), run.Error, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Of_an_unknown_or_doubled_learner_name_those_there_are()
    {
        var log = await LogAsync("Linnet", "Wren\nHeron\u001B[2J");
        var family = log.Family.Id.ToString();
        (await RunAsync(family, "Finch", "csv")).AssertWrongUse("There is no learner “Finch”; there is “Linnet”, “Wren Heron [2J”.");
        await log.Family.WithDbAsync(async db =>
        {
            db.Learners.Add(new Learner(Guid.CreateVersion7(), "linnet", new(2018, 1, 1), 2));
            await db.SaveChangesAsync();
        });
        (await RunAsync(family, "Linnet", "csv")).AssertWrongUse($"fits 2 learners; give the id: {log.Linnet}");
    }

    [Fact]
    public async Task Of_another_familys_learner_are_not_given_out()
    {
        var (mine, theirs) = (await LogAsync("Linnet"), await LogAsync("Linnet", "Robin"));
        (await RunAsync(mine.Family.Id.ToString(), theirs.Learners["Robin"].ToString(), "csv")).AssertWrongUse("There is no learner");
        (await RunAsync(mine.Family.Id.ToString(), "Robin", "csv")).AssertWrongUse("there is “Linnet”.");
    }

    [Fact]
    public async Task That_cannot_be_written_say_so()
    {
        var log = await LogAsync("Linnet");
        (await RunAsync(log.Family.Id.ToString(), "Linnet", "pdf", "--out", "/nowhere/at/all.pdf")).AssertWrongUse("cannot be written");
    }

    [Fact]
    public async Task Of_a_family_to_which_two_people_belong_are_found_once()
    {
        var log = await LogAsync("Linnet");
        var name = await RenameAsync(log, $"Cedar {Guid.NewGuid():N}");
        var second = await server.PersonAsync("Rowan");
        await log.Family.WithDbAsync(async db =>
        {
            db.Memberships.Add(new Membership(second.Id, second.Name, Role.Guardian, TestServer.Start.UtcDateTime));
            await db.SaveChangesAsync();
        });
        var run = await RunAsync(name, "Linnet", "csv");
        Assert.True(run.Code == 0, run.Error);
    }

    private async Task<KeptLog> LogAsync(params string[] learners)
    {
        var log = await KeptLog.OfAsync(server, learners);
        await log.WriteAsync(new(2026, 3, 2), 60, [("science", 1)]);
        await log.WriteAsync(new(2026, 3, 3), 40, [("science", 2), ("history", 1)]);
        return log;
    }

    private static async Task<string> RenameAsync(KeptLog log, string name)
    {
        await log.Family.WithDbAsync(async db =>
        {
            (await db.Families.SingleAsync()).Describe(name, "America/Chicago", "");
            await db.SaveChangesAsync();
        });
        return name;
    }

    private Task<ProgramRun> RunAsync(string family, string learner, string format, params string[] more) =>
        ProgramRun.OfAsync(server.Database, ["hours", "--family", family, "--learner", learner, "--from", "2025-07-01", "--to", "2026-06-30", "--format", format, .. more]);

    private static List<string> WithoutMadeOn(string csv) => [.. csv.Split("\r\n").Where(l => !l.StartsWith("about,made", StringComparison.Ordinal))];
}
