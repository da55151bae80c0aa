using CoopLessons.Core.Hours;
using CsCheck;

namespace CoopLessons.Core.Tests;

/// <summary>Logs as a family might write them: a few weeks either side of New Year, one or two learners, one to four subjects an entry.</summary>
internal static class AnyLog
{
    private static readonly Gen<DateOnly> Dates = Gen.Int[-10, 40].Select(n => new DateOnly(2026, 12, 1).AddDays(n));

    private static readonly Gen<TimeOnly?> Starts =
        Gen.Select(Gen.Bool, Gen.Int[0, 1439], (known, minute) => known ? new TimeOnly(minute / 60, minute % 60) : (TimeOnly?)null);

    private static readonly Gen<SubjectWeight[]> Splits =
        from order in Gen.Shuffle(AlderLog.Subjects.ToArray())
        from count in Gen.Int[1, 4]
        from weights in Gen.Int[1, 9].Array[count]
        select order.Take(count).Select((subject, i) => new SubjectWeight(subject.Id, weights[i])).ToArray();

    private static readonly Gen<LearnerTime[]> Learners =
        from wren in Gen.Int[1, 1440]
        from finch in Gen.Int[1, 1440]
        from who in Gen.Int[0, 2]
        select who switch
        {
            0 => [new LearnerTime(AlderLog.Wren, new Minutes(wren))],
            1 => [new LearnerTime(AlderLog.Finch, new Minutes(finch))],
            _ => new[] { new LearnerTime(AlderLog.Finch, new Minutes(finch)), new LearnerTime(AlderLog.Wren, new Minutes(wren)) },
        };

    private static readonly Gen<LoggedEntry> Entries =
        from date in Dates
        from start in Starts
        from place in Gen.Enum<Place>()
        from learners in Learners
        from split in Splits
        from touched in Gen.Int[0, AlderLog.Subjects.Count - 1].Select(i => AlderLog.Subjects[i]).List[0, 2]
        select new LoggedEntry(Guid.Empty, 1, date, start, "Reading the mill ledger", place, learners, split,
            [.. touched.Select(s => s.Id).Distinct().Where(t => split.All(w => w.SubjectId != t))]);

    /// <summary>Up to forty entries, each with an id of its own.</summary>
    public static readonly Gen<LoggedEntry[]> Logs =
        Entries.Array[0, 40].Select(all => all.Select((entry, i) => entry with { Id = AlderLog.Id(i + 1) }).ToArray());

    /// <summary>A log beside the same log in another order.</summary>
    public static readonly Gen<(LoggedEntry[] Log, LoggedEntry[] Shuffled)> LogsTwice =
        from log in Logs
        from shuffled in Gen.Shuffle(log)
        select (log, shuffled);
}
