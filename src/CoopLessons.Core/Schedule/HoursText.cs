using System.Globalization;

namespace CoopLessons.Core.Schedule;

/// <summary>The hours of one day as a parent writes them: "8:30–12:00, 13:00–15:00".</summary>
public static class HoursText
{
    public static string Write(IReadOnlyList<Stretch> stretches) => string.Join(", ", stretches.Select(s => $"{Clock(s.From)}–{Clock(s.To)}"));

    /// <summary>
    /// Reads stretches divided by commas, each a time, a dash or "to", and a time; "8:30", "8.30" and "8" are times, from 0:00
    /// to 24:00. Nothing written is no hours.
    /// </summary>
    /// <param name="stretches">Ascending, however they were written; empty where there is a fault.</param>
    /// <param name="fault">A sentence that says what to write instead; empty where there is none.</param>
    public static bool TryRead(string? text, out IReadOnlyList<Stretch> stretches, out string fault)
    {
        stretches = [];
        var found = new List<Stretch>();
        foreach (var part in (text ?? "").Split([',', ';'], StringSplitOptions.TrimEntries | StringSplitOptions.RemoveEmptyEntries))
        {
            if (!TryStretch(part, out var stretch, out fault))
                return false;
            found.Add(stretch);
        }

        found.Sort((a, b) => a.From.CompareTo(b.From));
        fault = Together(found);
        if (fault.Length > 0)
            return false;
        stretches = found;
        return true;
    }

    private static bool TryStretch(string part, out Stretch stretch, out string fault)
    {
        (stretch, fault) = (default, "");
        var ends = part.Replace(" to ", "–", StringComparison.OrdinalIgnoreCase).Split(['–', '-', '—'], StringSplitOptions.TrimEntries);
        if (ends.Length != 2)
            fault = $"“{part}” is no stretch of time: write a beginning and an end, such as 8:30–12:00.";
        else if (!TryClock(ends[0], out var from))
            fault = NoTime(ends[0]);
        else if (!TryClock(ends[1], out var to))
            fault = NoTime(ends[1]);
        else if (to <= from)
            fault = $"{Clock(from)}–{Clock(to)} ends before it begins. Write afternoon hours as 13:00 and on.";
        else
            stretch = new Stretch(from, to);
        return fault.Length == 0;
    }

    private static string NoTime(string text) => $"“{text}” is no time of day: write it like 8:30, from 0:00 to 24:00.";

    private static string Together(List<Stretch> found)
    {
        if (found.Count > WeekHours.MostStretches)
            return $"A day may have at most {WeekHours.MostStretches} stretches; join some of them.";
        for (var i = 1; i < found.Count; i++)
        {
            if (found[i - 1].To > found[i].From)
                return $"{Clock(found[i - 1].From)}–{Clock(found[i - 1].To)} and {Clock(found[i].From)}–{Clock(found[i].To)} overlap: make one stretch of them, or part them.";
        }

        return "";
    }

    private static bool TryClock(string text, out int minutes)
    {
        minutes = 0;
        var parts = text.Split([':', '.']);
        if (parts.Length > 2 || !IsNumber(parts[0], 1, 2, out var hour) || hour > 24)
            return false;
        var minute = 0;
        if (parts.Length == 2 && (!IsNumber(parts[1], 2, 2, out minute) || minute > 59))
            return false;
        minutes = hour * 60 + minute;
        return minutes <= 1440;
    }

    private static bool IsNumber(string text, int least, int most, out int number)
    {
        number = 0;
        return text.Length >= least && text.Length <= most && int.TryParse(text, NumberStyles.None, CultureInfo.InvariantCulture, out number);
    }

    private static string Clock(int minutes) => string.Create(CultureInfo.InvariantCulture, $"{minutes / 60}:{minutes % 60:00}");
}
