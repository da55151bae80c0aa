namespace CoopLessons.Core.Coop.Rotas;

/// <summary>A rota as it was, for one that is to stay near to it.</summary>
/// <param name="firstFree">The first meeting, by number, that may change; those before it stay, whatever they break.</param>
internal sealed class RotaBefore(IReadOnlyCollection<RotaTurn> turns, int firstFree)
{
    private readonly HashSet<RotaTurn> _turns = [.. turns];

    public int FirstFree => firstFree;

    public bool Had(RotaTurn turn) => _turns.Contains(turn);

    public int Count(DateOnly meeting, Guid role) => _turns.Count(t => t.Meeting == meeting && t.Role == role);
}
