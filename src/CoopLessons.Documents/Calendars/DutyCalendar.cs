using System.Globalization;
using System.Security.Cryptography;
using System.Text;
using CoopLessons.Core.Requirements;
using Ical.Net;
using Ical.Net.CalendarComponents;
using Ical.Net.DataTypes;
using Ical.Net.Serialization;

namespace CoopLessons.Documents.Calendars;

/// <summary>What a family's calendar of due dates is written from.</summary>
/// <param name="Name">As the family calls it.</param>
/// <param name="Written">When, to the second; the same input gives the same bytes.</param>
public sealed record CalendarContent(string Name, DateTimeOffset Written, IReadOnlyList<CalendarDuty> Duties)
{
    public IReadOnlyList<CalendarMeeting> Meetings { get; init; } = [];
}

/// <summary>Due dates as iCalendar (RFC 5545): a whole-day event for each, which blocks nobody's time.</summary>
public static class DutyCalendar
{
    public const string Caution = "Law changes: confirm with the state's own text or office. This is no legal advice.";

    private const string Product = "-//CoopLessons//Duties//EN";

    /// <returns>UTF-8 without a byte order mark.</returns>
    public static byte[] Write(CalendarContent content)
    {
        var calendar = new Ical.Net.Calendar { ProductId = Product };
        calendar.AddProperty("X-WR-CALNAME", PlainText.OneLine(content.Name));
        foreach (var duty in content.Duties.Where(d => !d.Done).OrderBy(d => d.Due).ThenBy(d => d.Key, StringComparer.Ordinal))
            calendar.Events.Add(Event(duty, content.Written));
        foreach (var meeting in content.Meetings.OrderBy(m => m.On).ThenBy(m => m.Key, StringComparer.Ordinal))
            calendar.Events.Add(Event(meeting, content.Written));
        return ContentLines.Refold(new CalendarSerializer().SerializeToString(calendar)!);
    }

    private static CalendarEvent Event(CalendarDuty duty, DateTimeOffset written)
    {
        var title = PlainText.OneLine(duty.Title);
        var entry = new CalendarEvent
        {
            Uid = Uid(duty.Key),
            DtStamp = new CalDateTime(written.UtcDateTime),
            Start = new CalDateTime(duty.Due),
            End = new CalDateTime(duty.Due.AddDays(1)),
            Summary = title,
            Description = string.Join('\n', duty.Lines.Append(SourceLine(duty.Source)).Append(Caution).SelectMany(Paragraphs)),
            Status = duty.Tentative ? EventStatus.Tentative : EventStatus.Confirmed,
            Transparency = TransparencyType.Transparent,
        };
        if (duty.Lead is > 0 and var lead)
            entry.Alarms.Add(new Alarm { Action = AlarmAction.Display, Description = title, Trigger = new Trigger(Duration.FromDays(-lead)) });
        return entry;
    }

    private static CalendarEvent Event(CalendarMeeting meeting, DateTimeOffset written) => new()
    {
        Uid = Uid(meeting.Key),
        DtStamp = new CalDateTime(written.UtcDateTime),
        Sequence = meeting.Revision,
        // Without a zone (RFC 5545 § 3.3.5, form 1): whoever meets is where the clock on the wall says so.
        Start = meeting.Hours is { } from ? new CalDateTime(meeting.On, from.From, null) : new CalDateTime(meeting.On),
        End = meeting.Hours is { } until ? new CalDateTime(meeting.On, until.Until, null) : new CalDateTime(meeting.On.AddDays(1)),
        Summary = PlainText.OneLine(meeting.CalledOff is null ? meeting.Title : $"{meeting.Title}: no meeting"),
        Location = PlainText.OneLine(meeting.Where),
        Description = string.Join('\n', meeting.Lines.Append(meeting.CalledOff ?? "").Where(l => l.Length > 0).SelectMany(Paragraphs)),
        Status = meeting.CalledOff is null ? EventStatus.Confirmed : EventStatus.Cancelled,
        Transparency = meeting.CalledOff is null ? TransparencyType.Opaque : TransparencyType.Transparent,
    };

    private static IEnumerable<string> Paragraphs(string line) => PlainText.Clean(line).Split('\n').Select(PlainText.OneLine);

    private static string SourceLine(Source source) =>
        string.Create(CultureInfo.InvariantCulture, $"Source: {source.Cite} ({source.BasisWords}; {source.Checked:yyyy-MM-dd})")
        + (source.Confirm ? ". Confirm this." : "");

    // The key names a place and a child's id: readers of the link learn neither.
    private static string Uid(string key) => Convert.ToHexStringLower(SHA256.HashData(Encoding.UTF8.GetBytes(key)))[..40] + "@cooplessons";
}
