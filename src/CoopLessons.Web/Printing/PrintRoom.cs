namespace CoopLessons.Web.Printing;

/// <summary>
/// Where packets are made and files looked at: one at a time in this program, since each takes memory by the hundred
/// megabytes at worst. Few wait, and no family more than once; whoever finds the room full, or the family in it, is told
/// to come back.
/// </summary>
public sealed class PrintRoom : IDisposable
{
    /// <summary>How many may wait for their turn.</summary>
    public const int MostWaiting = 12;

    private readonly SemaphoreSlim _turn = new(1, 1);
    private readonly Lock _door = new();
    private readonly HashSet<Guid> _inside = [];

    /// <summary>Waits for the turn; disposing of the answer gives it on. Null where too many wait already, or the family is inside.</summary>
    public async Task<IDisposable?> EnterAsync(Guid familyId, CancellationToken ct)
    {
        lock (_door)
        {
            if (_inside.Count > MostWaiting || !_inside.Add(familyId))
                return null;
        }

        try
        {
            await _turn.WaitAsync(ct);
        }
        catch
        {
            Leave(familyId);
            throw;
        }

        return new Turn(this, familyId);
    }

    public void Dispose() => _turn.Dispose();

    private void Leave(Guid familyId)
    {
        lock (_door)
            _inside.Remove(familyId);
    }

    private sealed class Turn(PrintRoom room, Guid familyId) : IDisposable
    {
        public void Dispose()
        {
            room.Leave(familyId);
            room._turn.Release();
        }
    }
}
