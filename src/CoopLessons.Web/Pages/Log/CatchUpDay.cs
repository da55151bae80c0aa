using System.Globalization;
using CoopLessons.Data.Evidence;
using CoopLessons.Data.Log;

namespace CoopLessons.Web.Pages.Log;

/// <summary>From where a line comes that may have been done.</summary>
public enum CatchUpKind { Planned, Appointment, Sitting, Begun, Usual }

/// <summary>Which line of which day, as a form carries it.</summary>
/// <param name="Source">The session, appointment, sitting or mark; of something usual, its last entry.</param>
public readonly record struct CatchUpKey(CatchUpKind Kind, DateOnly Date, Guid Source)
{
    public override string ToString() => string.Create(CultureInfo.InvariantCulture, $"{(int)Kind}{Date:yyyyMMdd}{Source:N}");

    public static bool TryParse(string? text, out CatchUpKey key)
    {
        key = default;
        if (text is not { Length: 41 } || text[0] - '0' is not (>= 0 and <= (int)CatchUpKind.Usual) || !Guid.TryParseExact(text[9..], "N", out var source)
            || !DateOnly.TryParseExact(text[1..9], "yyyyMMdd", CultureInfo.InvariantCulture, DateTimeStyles.None, out var date))
            return false;
        key = new CatchUpKey((CatchUpKind)(text[0] - '0'), date, source);
        return true;
    }
}

/// <summary>Something that may have been done on a day.</summary>
/// <param name="Facts">The entry that a “yes” writes.</param>
/// <param name="Why">Why it is offered, in a few words.</param>
public sealed record CatchUpLine(CatchUpKey Key, EntryFacts Facts, string Why)
{
    /// <summary>What “as planned, all of it” means: not what is merely usual.</summary>
    public bool IsPlanned => Key.Kind is not (CatchUpKind.Usual or CatchUpKind.Begun);
}

/// <summary>A day that may be given back.</summary>
/// <param name="Photos">Loose ones, by their time: they remind.</param>
/// <param name="Reminders">What else happened on that day, in words.</param>
public sealed record CatchUpDay(DateOnly Date, IReadOnlyList<CatchUpLine> Lines, IReadOnlyList<Piece> Photos, IReadOnlyList<string> Reminders);
