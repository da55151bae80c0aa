using CoopLessons.Core.Calendar;
using CoopLessons.Core.Families;

namespace CoopLessons.Core.Hours;

/// <summary>Minutes credited to one learner in one subject by one entry.</summary>
public sealed record Credit(Guid EntryId, DateOnly Date, Guid SubjectId, Minutes Minutes, Place Place);

/// <summary>A subject met in passing on a date: no minutes.</summary>
public sealed record Touch(Guid EntryId, DateOnly Date, Guid SubjectId);

/// <summary>
/// How one learner's hours are counted. No page, report or query adds minutes in another way.
/// <list type="number">
/// <item>Only entries dated inside the period count; both ends of the period are inside.</item>
/// <item>Only entries in which the learner took part count, with the learner's own minutes.</item>
/// <item>The learner's minutes are divided over the entry's subjects by their weights with the method of largest
/// remainders; equal remainders go to the subject that the family lists first.</item>
/// <item>The parts of an entry add up to its minutes exactly.</item>
/// <item>Waiting time (rising, baking, soaking, drying) is no part of an entry's minutes and is never credited.</item>
/// <item>A touch credits no minutes; it makes its day a day on which the subject was met.</item>
/// <item>Totals are sums of whole minutes, made before any rounding.</item>
/// <item>Entries of the learner that overlap in time are reported as a question and counted as written.</item>
/// <item>A day above sixteen hours is reported as a question and counted as written.</item>
/// </list>
/// </summary>
public sealed class HoursLedger
{
    private static readonly Minutes LongestPlainDay = new(16 * 60);
    private readonly List<Credit> _credits = [];
    private readonly List<Touch> _touches = [];
    private readonly List<LoggedEntry> _entries = [];

    private HoursLedger(Guid learnerId, IReadOnlyList<Subject> subjects, DayRange period)
    {
        LearnerId = learnerId;
        Subjects = subjects;
        Period = period;
    }

    /// <summary>Counts one learner's period.</summary>
    /// <param name="subjects">The family's subjects in the family's own order; every subject of an entry is among them.</param>
    /// <param name="log">The newest revision of each entry; removed entries left out by the caller.</param>
    /// <exception cref="ArgumentException">An entry names a subject that is not in <paramref name="subjects"/>.</exception>
    public static HoursLedger Of(Guid learnerId, IReadOnlyList<Subject> subjects, DayRange period, IEnumerable<LoggedEntry> log)
    {
        var ledger = new HoursLedger(learnerId, subjects, period);
        var order = new Dictionary<Guid, int>();
        for (var i = 0; i < subjects.Count; i++)
            order[subjects[i].Id] = i;
        foreach (var entry in log.OrderBy(e => e.Date).ThenBy(e => e.Start).ThenBy(e => e.Id))
            ledger.Count(entry, order);
        return ledger;
    }

    public Guid LearnerId { get; }
    public IReadOnlyList<Subject> Subjects { get; }
    public DayRange Period { get; }

    /// <summary>The learner's entries in the period, by date, start and id.</summary>
    public IReadOnlyList<LoggedEntry> Entries => _entries;
    public IReadOnlyList<Credit> Credits => _credits;
    public IReadOnlyList<Touch> Touches => _touches;

    public Minutes Total => SumOf(_ => true);

    public Minutes In(Guid subjectId) => SumOf(c => c.SubjectId == subjectId);

    public Minutes In(Guid subjectId, Month month) => SumOf(c => c.SubjectId == subjectId && month.Contains(c.Date));

    public Minutes In(Month month) => SumOf(c => month.Contains(c.Date));

    public Minutes At(Place place) => SumOf(c => c.Place == place);

    /// <summary>Minutes of each date that has any, for walks over a whole year.</summary>
    public IReadOnlyDictionary<DateOnly, Minutes> ByDate() => ByDate(_ => true);

    /// <summary>Minutes of each date that has any among the credits asked for.</summary>
    public IReadOnlyDictionary<DateOnly, Minutes> ByDate(Func<Credit, bool> which) =>
        _credits.Where(which).GroupBy(c => c.Date).ToDictionary(g => g.Key, g => g.Select(c => c.Minutes).Sum());

    /// <summary>Minutes of each entry that has any among the credits asked for.</summary>
    public IReadOnlyDictionary<Guid, Minutes> ByEntry(Func<Credit, bool> which) =>
        _credits.Where(c => c.Minutes > Minutes.Zero && which(c)).GroupBy(c => c.EntryId).ToDictionary(g => g.Key, g => g.Select(c => c.Minutes).Sum());

    /// <summary>The sum of the credits asked for.</summary>
    public Minutes SumOf(Func<Credit, bool> which) => _credits.Where(which).Select(c => c.Minutes).Sum();

    /// <summary>Days with credited minutes in the subject.</summary>
    public int StrictDays(Guid subjectId) =>
        _credits.Where(c => c.SubjectId == subjectId && c.Minutes > Minutes.Zero).Select(c => c.Date).Distinct().Count();

    /// <summary>Days with credited minutes in the subject or on which it was touched.</summary>
    public int BroadDays(Guid subjectId) =>
        _credits.Where(c => c.SubjectId == subjectId && c.Minutes > Minutes.Zero).Select(c => c.Date)
            .Concat(_touches.Where(t => t.SubjectId == subjectId).Select(t => t.Date)).Distinct().Count();

    /// <summary>What a reader would ask about, in date order: counted as written all the same.</summary>
    public IReadOnlyList<LedgerQuestion> Questions()
    {
        var questions = new List<LedgerQuestion>();
        foreach (var (date, minutes) in ByDate().Where(d => d.Value > LongestPlainDay))
            questions.Add(new LongDay(date, minutes));

        // By date and start, so the later of two entries begins the time that both share; none is longer than a day.
        var timed = _entries.Where(e => e.Start is not null).ToList();
        for (var i = 0; i < timed.Count; i++)
        {
            for (var j = i + 1; j < timed.Count && DaysBetween(timed[i], timed[j]) <= 1; j++)
            {
                var from = StartOf(timed[j]);
                var to = Math.Min(EndOf(timed[i]) - DaysBetween(timed[i], timed[j]) * 24 * 60, EndOf(timed[j]));
                if (from < to)
                    questions.Add(new CountedTwice(timed[j].Date, from, to, timed[i].Id, timed[j].Id));
            }
        }

        return [.. questions.OrderBy(q => q.Date)];
    }

    private void Count(LoggedEntry entry, Dictionary<Guid, int> order)
    {
        var time = entry.Learners.FirstOrDefault(l => l.LearnerId == LearnerId);
        if (!Period.Contains(entry.Date) || time is null)
            return;

        foreach (var subjectId in entry.Split.Select(s => s.SubjectId).Concat(entry.Touches))
        {
            if (!order.ContainsKey(subjectId))
                throw new ArgumentException($"Entry {entry.Id} names a subject that the family does not have.", nameof(entry));
        }

        _entries.Add(entry);
        var split = entry.Split.OrderBy(s => order[s.SubjectId]).ToList();
        var parts = LargestRemainder.Divide(time.Minutes.Value, [.. split.Select(s => s.Weight)]);
        for (var i = 0; i < split.Count; i++)
            _credits.Add(new Credit(entry.Id, entry.Date, split[i].SubjectId, new Minutes(parts[i]), entry.Place));
        foreach (var subjectId in entry.Touches)
            _touches.Add(new Touch(entry.Id, entry.Date, subjectId));
    }

    private Minutes MinutesOf(LoggedEntry entry) => entry.Learners.First(l => l.LearnerId == LearnerId).Minutes;

    private static int StartOf(LoggedEntry entry) => entry.Start!.Value.Hour * 60 + entry.Start.Value.Minute;

    private int EndOf(LoggedEntry entry) => StartOf(entry) + MinutesOf(entry).Value;

    private static int DaysBetween(LoggedEntry earlier, LoggedEntry later) => later.Date.DayNumber - earlier.Date.DayNumber;
}
