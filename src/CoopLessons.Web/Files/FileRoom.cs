namespace CoopLessons.Web.Files;

/// <summary>
/// Where packets are made and files looked at: one at a time in this program, since each takes memory by the hundred
/// megabytes at worst. Few wait, and no family more often than its work asks for; whoever finds the room full, or the
/// family in it, is told to come back.
/// </summary>
public sealed class FileRoom : IDisposable
{
    /// <summary>How many may wait for their turn.</summary>
    public const int MostWaiting = 12;

    private readonly SemaphoreSlim _turn = new(1, 1);
    private readonly Lock _door = new();
    private readonly List<Guid> _inside = [];

    /// <summary>Waits for the turn; disposing of the answer gives it on. Null where too many wait already, or the family does.</summary>
    /// <param name="mostOfFamily">How often the family may be inside, this time included: photos come one after the other, a packet alone.</param>
    public async Task<IDisposable?> EnterAsync(Guid familyId, CancellationToken ct, int mostOfFamily = 1)
    {
        lock (_door)
        {
            if (_inside.Count > MostWaiting || _inside.Count(f => f == familyId) >= mostOfFamily)
                return null;
            _inside.Add(familyId);
        }

        return await TurnAsync(familyId, ct);
    }

    /// <summary>The same for long work that nobody stands and waits for: it is never told to come back. It enters anew for each file, so that others come between.</summary>
    public Task<IDisposable> EnterPatientlyAsync(Guid ownerId, CancellationToken ct)
    {
        lock (_door)
            _inside.Add(ownerId);
        return TurnAsync(ownerId, ct);
    }

    private async Task<IDisposable> TurnAsync(Guid ownerId, CancellationToken ct)
    {
        try
        {
            await _turn.WaitAsync(ct);
        }
        catch
        {
            Leave(ownerId);
            throw;
        }

        return new Turn(this, ownerId);
    }

    public void Dispose() => _turn.Dispose();

    private void Leave(Guid familyId)
    {
        lock (_door)
            _inside.Remove(familyId);
    }

    private sealed class Turn(FileRoom room, Guid familyId) : IDisposable
    {
        public void Dispose()
        {
            room.Leave(familyId);
            room._turn.Release();
        }
    }
}
