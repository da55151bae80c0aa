using System.Globalization;

namespace CoopLessons.Web.Phone;

/// <summary>What a phone kept while there was no network, as the headers of its sending tell it.</summary>
/// <param name="Id">Made once on the phone; a second sending has the same.</param>
/// <param name="At">When it was written on the phone, UTC, as the phone says; null where it went out at once.</param>
public sealed record KeptItem(Guid Id, DateTime? At)
{
    /// <summary>The id. An answer repeats it, so that nobody else's answer is taken for this server's.</summary>
    public const string Header = "Kept-Item";

    /// <summary>The family for which it was done.</summary>
    public const string FamilyHeader = "Kept-Family";

    /// <summary>The instant of writing, ISO 8601.</summary>
    public const string AtHeader = "Kept-At";

    // A phone that was off for a summer is believed; a clock from another decade is not.
    private static readonly TimeSpan Longest = TimeSpan.FromDays(400);

    /// <summary>Null for a request of a browser by itself.</summary>
    public static KeptItem? Of(HttpRequest request) =>
        Guid.TryParse(request.Headers[Header], out var id) && id != Guid.Empty ? new KeptItem(id, AtOf(request)) : null;

    /// <summary>When it was written as far as that can be: never after it arrived.</summary>
    public DateTime? WrittenBefore(DateTime now) => At is { } at && at > now - Longest ? at < now ? at : now : null;

    private static DateTime? AtOf(HttpRequest request) =>
        DateTime.TryParse(request.Headers[AtHeader], CultureInfo.InvariantCulture, DateTimeStyles.AdjustToUniversal | DateTimeStyles.AssumeUniversal, out var at) ? at : null;
}
