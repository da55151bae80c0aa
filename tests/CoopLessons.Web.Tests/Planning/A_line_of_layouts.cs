using CoopLessons.Core.Schedule;
using CoopLessons.Web.Hosting;
using CoopLessons.Web.Planning;
using CoopLessons.Web.Tests.App;
using Microsoft.Extensions.Configuration;
using Microsoft.Extensions.DependencyInjection;
using static CoopLessons.Web.Tests.Planning.LineInThisProcess;

namespace CoopLessons.Web.Tests.Planning;

public sealed class A_line_of_layouts : IAsyncLifetime
{
    private readonly LineInThisProcess _here = new();

    public Task InitializeAsync() => _here.StartAsync();

    public Task DisposeAsync() => _here.DisposeAsync().AsTask();

    [Fact]
    public async Task Does_one_after_the_other_in_the_order_of_asking()
    {
        var (first, second, third) = (_here.Hold(Alder, "2026-W11"), _here.Hold(Birch, "2026-W11"), _here.Hold(Alder, "2026-W12"));
        await first.Begun;
        Assert.Equal((JobState.Running, 0), (_here.Of(Alder, first.Id).State, _here.Of(Alder, first.Id).Place));
        Assert.Equal((JobState.Waiting, 1), (_here.Of(Birch, second.Id).State, _here.Of(Birch, second.Id).Place));
        Assert.Equal((JobState.Waiting, 2), (_here.Of(Alder, third.Id).State, _here.Of(Alder, third.Id).Place));

        first.End("laid out");
        await second.Begun;
        Assert.Equal((JobState.Done, "laid out", 1.0), (_here.Of(Alder, first.Id).State, _here.Of(Alder, first.Id).Result, _here.Of(Alder, first.Id).Share));
        Assert.Equal(1, _here.Of(Alder, third.Id).Place);
        Assert.False(third.Begun.IsCompleted);
    }

    [Fact]
    public async Task Tells_how_far_it_is_and_never_falls_back()
    {
        var job = _here.Hold(Alder, "2026-W11");
        await job.Begun;
        Assert.Equal("This is being laid out.", JobWords.Of(_here.Of(Alder, job.Id)));
        job.Progress!.Report(new LayoutProgress("Placing everything", .5));
        job.Progress.Report(new LayoutProgress("Calming the days", .25));
        var standing = _here.Of(Alder, job.Id);
        Assert.Equal(("Calming the days", .5, "Calming the days."), (standing.Step, standing.Share, JobWords.Of(standing)));
        job.Progress.Report(new LayoutProgress("Calming the days", 7));
        Assert.Equal(1, _here.Of(Alder, job.Id).Share);
    }

    [Fact]
    public async Task Shows_a_job_to_its_own_family_alone()
    {
        var job = _here.Hold(Alder, "2026-W11");
        await job.Begun;
        Assert.Null(_here.Line.Find(Birch, job.Id));
        Assert.Null(_here.Line.Newest(Birch, "2026-W11"));
        Assert.False(_here.Line.Cancel(Birch, job.Id));
        Assert.True(_here.OverAsync(Birch, job.Id).IsCompletedSuccessfully);
        Assert.Equal(JobState.Running, _here.Of(Alder, job.Id).State);
    }

    [Fact]
    public async Task Gives_the_place_of_one_that_waits_to_a_newer_one_of_the_same_key()
    {
        var running = _here.Hold(Birch, "2026-W11");
        await running.Begun;
        var (older, behind) = (_here.Hold(Alder, "2026-W11"), _here.Hold(Birch, "2026-W12"));
        var newer = _here.Hold(Alder, "2026-W11");
        Assert.Equal((JobState.Dropped, newer.Id), (_here.Of(Alder, older.Id).State, _here.Of(Alder, older.Id).ReplacedBy));
        Assert.Equal((1, 2), (_here.Of(Alder, newer.Id).Place, _here.Of(Birch, behind.Id).Place));
        Assert.Equal(newer.Id, _here.Line.Newest(Alder, "2026-W11")!.Id);
        Assert.Contains("once more", JobWords.Of(_here.Of(Alder, older.Id)), StringComparison.Ordinal);

        running.End("");
        await newer.Begun;
        Assert.False(older.Begun.IsCompleted);
    }

    [Fact]
    public async Task Stops_one_that_runs_for_a_newer_one_of_the_same_key()
    {
        var older = _here.Hold(Alder, "2026-W11");
        await older.Begun;
        var newer = _here.Hold(Alder, "2026-W11");
        await older.Stopped;
        await newer.Begun;
        newer.End("the newer");
        await _here.OverAsync(Alder, newer.Id);
        Assert.Equal((JobState.Dropped, newer.Id, null), (_here.Of(Alder, older.Id).State, _here.Of(Alder, older.Id).ReplacedBy, _here.Of(Alder, older.Id).Result));
        Assert.Equal("the newer", _here.Line.Newest(Alder, "2026-W11")!.Result);
    }

    [Fact]
    public async Task Leaves_other_weeks_and_other_families_alone_when_a_newer_one_comes()
    {
        var (alder, birch) = (_here.Hold(Alder, "2026-W11"), _here.Hold(Birch, "2026-W11"));
        await alder.Begun;
        _here.Hold(Alder, "2026-W12");
        Assert.Equal((JobState.Running, JobState.Waiting), (_here.Of(Alder, alder.Id).State, _here.Of(Birch, birch.Id).State));
    }

    [Fact]
    public async Task Lets_one_be_called_off_while_it_runs_or_waits()
    {
        var (running, waiting, next) = (_here.Hold(Alder, "a"), _here.Hold(Alder, "b"), _here.Hold(Birch, "c"));
        await running.Begun;
        Assert.True(_here.Line.Cancel(Alder, waiting.Id));
        Assert.True(_here.Line.Cancel(Alder, running.Id));
        await running.Stopped;
        await next.Begun;
        Assert.False(waiting.Begun.IsCompleted);
        Assert.All([running.Id, waiting.Id], id => Assert.Equal("This was called off.", JobWords.Of(_here.Of(Alder, id))));
        Assert.Empty(_here.Logged);
    }

    [Fact]
    public async Task Leaves_what_is_done_as_it_is_when_it_is_called_off()
    {
        var job = _here.Hold(Alder, "a");
        job.End("laid out");
        await _here.OverAsync(Alder, job.Id);
        Assert.True(_here.Line.Cancel(Alder, job.Id));
        Assert.Equal(JobState.Done, _here.Of(Alder, job.Id).State);
    }

    [Fact]
    public async Task Says_that_one_failed_and_writes_why_to_the_log_only()
    {
        var (failing, next) = (_here.Hold(Alder, "a"), _here.Hold(Alder, "b"));
        failing.Fail(new InvalidOperationException("a cycle of lessons"));
        await next.Begun;
        var standing = _here.Of(Alder, failing.Id);
        Assert.Equal((JobState.Failed, JobWords.Failed), (standing.State, JobWords.Of(standing)));
        Assert.DoesNotContain("cycle", standing.Fault, StringComparison.Ordinal);
        Assert.Equal("a cycle of lessons", Assert.Single(_here.Logged).Message);
    }

    [Fact]
    public async Task Takes_a_cancelled_wait_that_nobody_asked_for_as_a_failure()
    {
        var job = _here.Hold(Alder, "a");
        job.Fail(new OperationCanceledException("a database gave up"));
        await _here.OverAsync(Alder, job.Id);
        Assert.Equal(JobState.Failed, _here.Of(Alder, job.Id).State);
    }

    [Fact]
    public async Task Forgets_what_is_over_after_an_hour()
    {
        var job = _here.Hold(Alder, "a");
        job.End("laid out");
        await _here.OverAsync(Alder, job.Id);
        _here.Clock.Advance(LayoutLine.Kept - TimeSpan.FromSeconds(1));
        Assert.NotNull(_here.Line.Find(Alder, job.Id));
        _here.Clock.Advance(TimeSpan.FromSeconds(1));
        Assert.Null(_here.Line.Find(Alder, job.Id));
        Assert.Equal(JobWords.Forgotten, JobWords.Of(_here.Line.Find(Alder, job.Id)));
    }

    [Fact]
    public async Task Forgets_the_oldest_where_too_much_is_over_and_never_what_is_open()
    {
        var open = _here.Hold(Birch, "open");
        await open.Begun;
        var dropped = new List<Guid>();
        for (var i = 0; i < LayoutLine.MostKept + 2; i++)
        {
            dropped.Add(_here.Hold(Alder, "a").Id);
            _here.Line.Cancel(Alder, dropped[^1]);
        }

        Assert.Equal(dropped[2..], dropped.Where(id => _here.Line.Find(Alder, id) is not null));
        Assert.Equal(JobState.Running, _here.Of(Birch, open.Id).State);
    }

    [Fact]
    public async Task Is_stopped_with_the_server()
    {
        var (running, waiting) = (_here.Hold(Alder, "a"), _here.Hold(Alder, "b"));
        await running.Begun;
        await _here.StopAsync();
        await running.Stopped;
        Assert.Equal(JobState.Dropped, _here.Of(Alder, running.Id).State);
        Assert.False(waiting.Begun.IsCompleted);
    }
}

public sealed class A_full_line_of_layouts
{
    [Fact]
    public async Task Refuses_one_more_and_takes_it_when_there_is_room()
    {
        await using var here = new LineInThisProcess(mostInLine: 2);
        await here.StartAsync();
        var running = here.Hold(Alder, "a");
        await running.Begun;
        var (next, last) = (here.Hold(Alder, "b"), here.Hold(Birch, "a"));
        Assert.Null(here.Line.Ask<object>(Birch, "b", (_, _) => throw new InvalidOperationException()));
        Assert.Null(here.Line.Newest(Birch, "b"));

        // One that is asked for again takes the old one's place and needs no other.
        Assert.Equal(1, here.Of(Alder, here.Hold(Alder, "b").Id).Place);
        Assert.Equal(JobState.Dropped, here.Of(Alder, next.Id).State);
        here.Line.Cancel(Birch, last.Id);
        Assert.Equal(2, here.Of(Birch, here.Hold(Birch, "b").Id).Place);
    }

    [Fact]
    public void Is_refused_in_words_that_say_what_to_do() => Assert.Contains("Ask again", JobWords.Busy, StringComparison.Ordinal);
}

public sealed class The_length_of_the_line
{
    private static ServerSettings From(string length) => ServerSettings.From(
        new ConfigurationBuilder().AddInMemoryCollection([new("CoopLessons:LayoutsInLine", length)]).Build());

    [Fact]
    public void Is_the_host_s_to_set() => Assert.Equal(5, From("5").LayoutsInLine);

    [Theory]
    [InlineData("0")]
    [InlineData("1001")]
    [InlineData("many")]
    public void Is_refused_by_name_where_no_line_could_be_so_long(string length) =>
        Assert.Contains("LayoutsInLine", Assert.Throws<SettingUnfitException>(() => From(length)).Message, StringComparison.Ordinal);
}

[Collection(PlanningServer.Name)]
public sealed class The_line_of_a_server(TestServer server)
{
    [Fact]
    public async Task Is_worked_on_while_the_server_runs()
    {
        var line = server.Services.GetRequiredService<LayoutLine>();
        var family = Guid.CreateVersion7();
        var id = line.Ask(family, "a", (_, _) => Task.FromResult("laid out"))!.Value;
        await line.WaitAsync(family, id, CancellationToken.None);
        Assert.Equal("laid out", line.Find(family, id)!.Result);
    }
}
