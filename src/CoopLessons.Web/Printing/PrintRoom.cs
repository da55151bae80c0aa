namespace CoopLessons.Web.Printing;

/// <summary>
/// Where packets are made and files looked at: one at a time in this program, since each takes memory by the hundred
/// megabytes at worst. Few wait; whoever finds the room full is told to come back.
/// </summary>
public sealed class PrintRoom : IDisposable
{
    /// <summary>How many may wait for their turn.</summary>
    public const int MostWaiting = 12;

    private readonly SemaphoreSlim _turn = new(1, 1);
    private int _inside;

    /// <summary>Waits for the turn; disposing of the answer gives it on. Null where too many wait already.</summary>
    public async Task<IDisposable?> EnterAsync(CancellationToken ct)
    {
        if (Interlocked.Increment(ref _inside) > MostWaiting + 1)
        {
            Interlocked.Decrement(ref _inside);
            return null;
        }

        try
        {
            await _turn.WaitAsync(ct);
        }
        catch
        {
            Interlocked.Decrement(ref _inside);
            throw;
        }

        return new Turn(this);
    }

    public void Dispose() => _turn.Dispose();

    private sealed class Turn(PrintRoom room) : IDisposable
    {
        public void Dispose()
        {
            Interlocked.Decrement(ref room._inside);
            room._turn.Release();
        }
    }
}
