using CoopLessons.Data.Evidence;
using CoopLessons.Web.Pages.Log;
using CoopLessons.Web.Pages.Today;

namespace CoopLessons.Web.Pages.Pieces;

/// <summary>Pieces side by side, each with a line below it.</summary>
/// <param name="Day">Whether the line says the day; else whose it is.</param>
public sealed record PieceList(IReadOnlyList<Piece> Pieces, EntryWords Words, bool Day)
{
    public string Under(Piece piece)
    {
        var first = Day ? piece.Date.ToString("ddd d MMM", System.Globalization.CultureInfo.InvariantCulture) : DayWords.Names(piece.Learners.Select(Words.Learner));
        return string.Join(" · ", new[] { first, piece.SubjectId is { } id ? Words.Subject(id) : "" }.Where(w => w.Length > 0));
    }
}
