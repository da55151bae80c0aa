using CoopLessons.Data;
using CoopLessons.Data.Evidence;
using CoopLessons.Data.Tenancy;

namespace CoopLessons.Web.Pages.Pieces;

public static class SeenPieces
{
    /// <summary>The pieces that somebody may see: a guardian all of them, a helper those of the day and what they brought themselves.</summary>
    public static IQueryable<Piece> SeenPiecesOn(this AppDb db, DateOnly today)
    {
        var person = db.Current.PersonId;
        return db.Current.Role == Role.Guardian ? db.Pieces : db.Pieces.Where(p => p.Date == today || p.BroughtById == person);
    }

    /// <summary>Whether somebody may change and remove a piece that they see: a guardian any, a helper what they brought themselves.</summary>
    public static bool MayChange(this AppDb db, Piece piece) => db.Current.Role == Role.Guardian || piece.BroughtById == db.Current.PersonId;
}
