namespace CoopLessons.Web.Hosting;

/// <summary>Lets one request at a time claim a server on which nobody has signed up.</summary>
public sealed class FirstClaim : IDisposable
{
    private readonly SemaphoreSlim _turn = new(1, 1);

    /// <summary>Waits for the turn; disposing of the answer gives it on.</summary>
    public async Task<IDisposable> TakeAsync(CancellationToken ct)
    {
        await _turn.WaitAsync(ct);
        return new Turn(_turn);
    }

    public void Dispose() => _turn.Dispose();

    private sealed class Turn(SemaphoreSlim turn) : IDisposable
    {
        public void Dispose() => turn.Release();
    }
}
