using System.Text.Json;
using CoopLessons.Documents.Calendars;
using Xunit;
using static CoopLessons.Web.Tests.Documents.SampleDuties;

namespace CoopLessons.Web.Tests.Documents;

public class Due_dates_in_a_calendar_beside_other_readers
{
    private const string Script = """
        import datetime, json, sys
        import vobject

        calendar = vobject.readOne(open(sys.argv[1], encoding="utf-8", newline="").read())
        calendar.validate(raiseException=True)
        events = []
        for event in calendar.contents.get("vevent", []):
            start, end = event.dtstart.value, event.dtend.value
            assert type(start) is datetime.date and type(end) is datetime.date, "not a whole day"
            events.append({
                "uid": event.uid.value,
                "start": start.isoformat(),
                "days": (end - start).days,
                "stamp": event.dtstamp.value.isoformat(),
                "summary": event.summary.value,
                "description": event.description.value,
                "transp": event.transp.value,
                "lead": [alarm.trigger.value.days for alarm in event.contents.get("valarm", [])],
            })
        json.dump({"name": calendar.contents["x-wr-calname"][0].value, "events": events}, sys.stdout)
        """;

    private sealed record Read(string Name, IReadOnlyList<ReadEvent> Events);

    private sealed record ReadEvent(string Uid, string Start, int Days, string Stamp, string Summary, string Description, string Transp, IReadOnlyList<int> Lead);

    // Reference program: the vobject package of Python (Debian's python3-vobject), which shares no code with the writer and
    // checks that every component has what RFC 5545 requires of it.
    [FactBesidePython("vobject")]
    public async Task Another_parser_reads_the_days_and_the_reminder()
    {
        var read = await ByPython(Content(Notice, Notice with { Key = "other", Due = new DateOnly(2028, 2, 29), Lead = null }));

        Assert.Equal(["2027-07-01", "2028-02-29"], read.Events.Select(e => e.Start));
        Assert.All(read.Events, e => Assert.Equal((1, "2026-11-25T15:30:15+00:00", "TRANSPARENT"), (e.Days, e.Stamp, e.Transp)));
        Assert.Equal([-7], read.Events[0].Lead);
        Assert.Empty(read.Events[1].Lead);
    }

    // The same reference program, beside texts that could break a file.
    [FactBesidePython("vobject")]
    public async Task Another_parser_reads_every_text_as_it_was()
    {
        var content = Hostile();
        var read = await ByPython(content);

        Assert.Equal(content.Name, read.Name);
        Assert.Equal(content.Duties.Select(d => d.Title.Replace('\n', ' ')), read.Events.Select(e => e.Summary));
        Assert.Equal(content.Duties.Select(d => d.Lines[0]), read.Events.Select(e => e.Description[..e.Description.IndexOf("\nSource: ", StringComparison.Ordinal)]));
        Assert.Equal(content.Duties.Count, read.Events.Select(e => e.Uid).Distinct().Count());
    }

    private static async Task<Read> ByPython(CalendarContent content)
    {
        using var bench = new Workbench();
        var script = bench.Put("read.py", System.Text.Encoding.UTF8.GetBytes(Script));
        var (code, output, errors) = await Python.With("vobject").Run("-X", "utf8", script, bench.Put("duties.ics", DutyCalendar.Write(content)));
        Assert.True(code == 0, errors);
        return JsonSerializer.Deserialize<Read>(output, JsonSerializerOptions.Web)!;
    }
}
