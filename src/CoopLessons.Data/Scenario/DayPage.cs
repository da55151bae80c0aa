using System.Text;
using CoopLessons.Core.Hours;

namespace CoopLessons.Data.Scenario;

/// <summary>One day of one family, filled from morning to night: nobody is in two places at once.</summary>
internal sealed class DayPage(Household house, DateOnly date, Pace pace, Chance chance)
{
    private const int Bedtime = 22 * 60;
    private readonly Dictionary<Guid, int> _free = [];
    private readonly List<Line> _lines = [];

    public DateOnly Date { get; } = date;
    public IReadOnlyList<Line> Lines => _lines;
    public Chance Chance { get; } = chance;

    public int Short(Pupil pupil) => pace.Short(pupil);

    /// <summary>
    /// Writes what some children did together, not before a time and not before all of them are free. Passed over where
    /// nobody took part or, unless it was planned, where the day is over.
    /// </summary>
    public void Write(int notBefore, string what, string untitled, Place place, string note, IReadOnlyList<(Pupil Pupil, int Minutes)> who,
        IReadOnlyList<SubjectWeight> split, IReadOnlyList<Guid> touches, int timedIn = 45, PlacedActivity? placed = null)
    {
        if (who.Count == 0)
            return;
        var from = Math.Max(notBefore, who.Max(w => _free.GetValueOrDefault(w.Pupil.Id)));
        from = (from + 4) / 5 * 5;
        var to = from + who.Max(w => w.Minutes);
        if (to > Bedtime && placed is null)
            return;
        foreach (var (pupil, minutes) in who)
        {
            _free[pupil.Id] = from + minutes;
            pace.Credit(pupil.Id, minutes);
        }

        _lines.Add(new Line(
            Date, from, to, Chance.In(timedIn), what, untitled, place, note,
            [.. who.Select(w => new LearnerTime(w.Pupil.Id, new Minutes(w.Minutes)))], split, touches, placed));
    }

    /// <summary>Writes an entry as it is told, whatever else the day holds.</summary>
    public void Write(CoopExtra extra)
    {
        var who = house.Children.Where(c => extra.Children.Contains(c.Child.Name)).ToList();
        foreach (var pupil in who)
            pace.Credit(pupil.Id, extra.Minutes);
        var from = extra.StartsAt is { } at ? Minute(at) : 10 * 60;
        _lines.Add(new Line(
            Date, from, from + extra.Minutes, extra.StartsAt is not null, extra.What, extra.What, extra.Place, extra.Note ?? "",
            [.. who.Select(p => new LearnerTime(p.Id, new Minutes(extra.Minutes)))], house.Split(extra.Split), house.Touches(extra.Touches ?? []), null));
    }

    /// <summary>
    /// How long each of a group took part: mostly all as long, now and then the youngest shorter or the eldest longer.
    /// </summary>
    public IReadOnlyList<(Pupil Pupil, int Minutes)> Times(IReadOnlyList<Pupil> pupils, int minutes)
    {
        var plain = Math.Max(10, minutes + Chance.Of([-5, 0, 0, 0, 0, 5, 10]));
        var times = pupils.Select(p => (Pupil: p, Minutes: plain)).ToList();
        if (times.Count < 2 || plain < 20)
            return times;
        if (Chance.In(22))
            times[^1] = (times[^1].Pupil, Math.Max(10, plain * 2 / 3 / 5 * 5));
        else if (Chance.In(12))
            times[0] = (times[0].Pupil, plain + 15);
        return times;
    }

    /// <summary>Replaces each word in braces by one of the co-op's words of that name.</summary>
    public string Told(string text, Pupil? pupil = null)
    {
        var told = new StringBuilder();
        var at = 0;
        while (text.IndexOf('{', at) is var open && open >= 0)
        {
            var close = text.IndexOf('}', open);
            told.Append(text, at, open - at).Append(Word(text[(open + 1)..close], pupil));
            at = close + 1;
        }

        told.Append(text, at, text.Length - at);
        told[0] = char.ToUpperInvariant(told[0]);
        return told.ToString();
    }

    public static int Minute(TimeOnly time) => (time.Hour * 60) + time.Minute;

    private string Word(string name, Pupil? pupil)
    {
        if (name == "instrument")
            return pupil?.Child.Instrument ?? "";
        if (name == "lesson")
            return $"lesson {pace.DaysBegun}";
        var words = house.Coop.Words[name];
        if (!house.Coop.SlowWords.TryGetValue(name, out var days))
            return Chance.Of(words);
        var begun = (house.Number * 5) + (pupil is null ? 0 : house.Children.Index().Single(c => c.Item == pupil).Index * 7);
        return words[((Date.DayNumber / days) + begun) % words.Count];
    }
}
