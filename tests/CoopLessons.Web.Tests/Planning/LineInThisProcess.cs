using System.Collections.Concurrent;
using CoopLessons.Core.Schedule;
using CoopLessons.Web.Hosting;
using CoopLessons.Web.Planning;
using Microsoft.Extensions.Logging;
using Microsoft.Extensions.Time.Testing;

namespace CoopLessons.Web.Tests.Planning;

/// <summary>A line of layouts with its worker and a clock that stands.</summary>
internal sealed class LineInThisProcess : IAsyncDisposable, ILogger<LayoutWork>
{
    private readonly LayoutWork _work;

    public LineInThisProcess(int mostInLine = 32)
    {
        Line = new LayoutLine(new ServerSettings { LayoutsInLine = mostInLine }, Clock);
        _work = new LayoutWork(Line, this);
    }

    public static Guid Alder { get; } = new("a1de0000-0000-7000-8000-000000000001");
    public static Guid Birch { get; } = new("b19c0000-0000-7000-8000-000000000002");

    public FakeTimeProvider Clock { get; } = new(new DateTimeOffset(2026, 3, 12, 15, 0, 0, TimeSpan.Zero));
    public LayoutLine Line { get; }
    public ConcurrentQueue<Exception> Logged { get; } = [];

    public Task StartAsync() => _work.StartAsync(CancellationToken.None);

    public Task StopAsync() => _work.StopAsync(CancellationToken.None);

    /// <summary>A job that begins and ends when the test says so.</summary>
    public Held Hold(Guid family, string key)
    {
        var held = new Held();
        held.Id = Line.Ask(family, key, held.WorkAsync) ?? throw new InvalidOperationException("The line is full.");
        return held;
    }

    public JobStanding Of(Guid family, Guid id) => Line.Find(family, id) ?? throw new InvalidOperationException("The job is not known.");

    public Task OverAsync(Guid family, Guid id) => Line.WaitAsync(family, id, CancellationToken.None);

    public async ValueTask DisposeAsync()
    {
        await StopAsync();
        _work.Dispose();
    }

    public IDisposable? BeginScope<TState>(TState state)
        where TState : notnull => null;

    public bool IsEnabled(LogLevel logLevel) => true;

    public void Log<TState>(LogLevel logLevel, EventId eventId, TState state, Exception? exception, Func<TState, Exception?, string> formatter)
    {
        if (exception is not null)
            Logged.Enqueue(exception);
    }

    internal sealed class Held
    {
        private readonly TaskCompletionSource<string> _end = new(TaskCreationOptions.RunContinuationsAsynchronously);
        private readonly TaskCompletionSource _begun = new(TaskCreationOptions.RunContinuationsAsynchronously);
        private readonly TaskCompletionSource _stopped = new(TaskCreationOptions.RunContinuationsAsynchronously);

        public Guid Id { get; set; }
        public Task Begun => _begun.Task;
        public Task Stopped => _stopped.Task;
        public IProgress<LayoutProgress>? Progress { get; private set; }

        public void End(string result) => _end.SetResult(result);

        public void Fail(Exception fault) => _end.SetException(fault);

        public async Task<string> WorkAsync(IProgress<LayoutProgress> progress, CancellationToken ct)
        {
            Progress = progress;
            _begun.SetResult();
            try
            {
                return await _end.Task.WaitAsync(ct);
            }
            catch (OperationCanceledException)
            {
                _stopped.SetResult();
                throw;
            }
        }
    }
}
