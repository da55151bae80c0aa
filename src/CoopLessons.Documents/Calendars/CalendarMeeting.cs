namespace CoopLessons.Documents.Calendars;

/// <summary>A meeting of a co-op as it stands in a calendar.</summary>
/// <param name="Key">Unlike every other in the calendar, and the same whenever the calendar is written again.</param>
/// <param name="Hours">From the first class to the end of the last; null where the co-op says no hours.</param>
/// <param name="Where">May be empty.</param>
/// <param name="Lines">What the event says of itself, one paragraph each.</param>
/// <param name="CalledOff">Why there is no meeting; null while it stands.</param>
/// <param name="Revision">Grows with each change of the meeting (RFC 5545 § 3.8.7.4), from 0.</param>
public sealed record CalendarMeeting(string Key, DateOnly On, (TimeOnly From, TimeOnly Until)? Hours, string Title, string Where, IReadOnlyList<string> Lines, string? CalledOff, int Revision);
