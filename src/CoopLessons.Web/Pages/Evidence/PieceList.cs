using CoopLessons.Data.Evidence;
using CoopLessons.Web.Evidence;
using CoopLessons.Web.Pages.Log;
using CoopLessons.Web.Pages.Today;

namespace CoopLessons.Web.Pages.Pieces;

/// <summary>Pieces side by side, each with a line below it.</summary>
/// <param name="Day">Whether the line says the day; else whose it is.</param>
public sealed record PieceList(IReadOnlyList<Piece> Pieces, EntryWords Words, bool Day)
{
    public string Under(Piece piece)
    {
        // In the family's order, whatever the order in which they were ticked.
        var whose = Words.Learners.Where(l => piece.Learners.Contains(l.Id)).Select(l => l.Name);
        var first = Day ? piece.Date.ToString("ddd d MMM", System.Globalization.CultureInfo.InvariantCulture) : DayWords.Names(whose);
        var said = string.Join(" · ", new[] { first, piece.SubjectId is { } id ? Words.Subject(id) : "" }.Where(w => w.Length > 0));
        return said.Length > 0 || piece.Caption.Length > 0 ? said : PieceWords.Capital(PieceWords.Kind(piece.Kind));
    }
}
