using CoopLessons.Core.Units;

namespace CoopLessons.Core.Schedule;

/// <summary>What can be done about a week that asks for too much.</summary>
public enum RemedyKind
{
    /// <summary>Somebody is beside instead of having the hands in it: nothing is lost, an adult's hands are free.</summary>
    Beside,

    LeaveOut,
}

/// <summary>One change to one activity, and what it brings.</summary>
/// <param name="Relief">Minutes that it takes off what is over; more than 0.</param>
/// <param name="Lost">Minutes of the activity that are then not done; 0 where it is only done otherwise.</param>
/// <param name="IsEnough">Whether it alone brings the demand within the capacity.</param>
public sealed record Remedy(Guid DemandId, string Title, RemedyKind Kind, int Relief, int Lost, bool IsEnough);

/// <summary>Demand beside capacity, in minutes of one week.</summary>
/// <param name="LearnerId">Null for the adults' hands together.</param>
/// <param name="Remedies">
/// Empty where nothing is over. Those that are enough come first, the fewest minutes lost before others; then those that
/// are not, the most relief first.
/// </param>
public sealed record FitLine(Guid? LearnerId, string Name, int FromUnits, int FromCourses, int FromLoops, int Capacity, IReadOnlyList<Remedy> Remedies)
{
    public int Demand => FromUnits + FromCourses + FromLoops;

    public int Over => Math.Max(0, Demand - Capacity);

    public int Spare => Math.Max(0, Capacity - Demand);

    /// <summary>Whether this line is fuller than another: more demand for each minute of capacity. Without capacity, any demand is fullest.</summary>
    public bool IsFullerThan(FitLine other) => Demand > 0
        && (other.Demand == 0
            || (long)Demand * other.Capacity > (long)other.Demand * Capacity
            || (Capacity == 0 && other.Capacity == 0 && Demand > other.Demand));
}

/// <summary>
/// Whether a week's work fits on paper, before anything has an hour: what is asked of each learner, and of the adults'
/// hands together, against the minutes that each has.
/// <para>
/// It is a necessary condition and not a sufficient one. A learner is in one place at a time and one pair of hands holds
/// one thing, so a week with more minutes than room can never be laid out. A week within its room may still have no
/// layout: the minutes may lie in stretches that are too short, at hours when child and adult are not free together, or
/// in the wrong order. Somebody beside may serve two at once, which only a layout can tell, so that being beside is held
/// against nothing here.
/// </para>
/// </summary>
public sealed record Fit(IReadOnlyList<FitLine> Learners, FitLine Hands)
{
    public IEnumerable<FitLine> Lines => Learners.Append(Hands);

    /// <summary>On paper: see the type.</summary>
    public bool Fits => Lines.All(l => l.Over == 0);

    /// <summary>The line with the most demand for each minute of capacity, learners before hands where two are alike.</summary>
    public FitLine Fullest => Lines.Aggregate((fullest, line) => line.IsFullerThan(fullest) ? line : fullest);

    /// <param name="learners">In the order in which they are shown. A demand's learner who is not among them is passed over.</param>
    /// <param name="adults">Those who teach; their minutes are added up.</param>
    /// <exception cref="ArgumentException">Two demands have one id, or minutes are negative.</exception>
    public static Fit Of(IReadOnlyList<Demand> demands, IReadOnlyList<Room> learners, IReadOnlyList<Room> adults)
    {
        if (demands.Select(d => d.Id).Distinct().Count() != demands.Count)
            throw new ArgumentException("A demand stands twice.", nameof(demands));
        if (demands.Any(d => d.Minutes < 0 || d.LookMinutes < 0))
            throw new ArgumentException("A demand asks for less than no minutes.", nameof(demands));
        return new Fit(
            [.. learners.Select(l => Line(l.Id, l.Name, l.Minutes, [.. demands.Where(d => d.Learners.Contains(l.Id)).Select(d => (d, d.OfLearner))]))],
            Line(null, "", adults.Sum(a => a.Minutes), [.. demands.Select(d => (d, d.OfHands))]));
    }

    /// <summary>The place, from 0, of the week whose fullest line is fullest; the earliest where several are. The list is not empty.</summary>
    public static int FullestOf(IReadOnlyList<Fit> weeks)
    {
        var fullest = 0;
        for (var i = 1; i < weeks.Count; i++)
        {
            if (weeks[i].Fullest.IsFullerThan(weeks[fullest].Fullest))
                fullest = i;
        }

        return fullest;
    }

    private static FitLine Line(Guid? learner, string name, int capacity, List<(Demand Demand, int Minutes)> asked)
    {
        int From(DemandOrigin origin) => asked.Where(a => a.Demand.Origin == origin).Sum(a => a.Minutes);
        var line = new FitLine(learner, name, From(DemandOrigin.Unit), From(DemandOrigin.Course), From(DemandOrigin.Loop), capacity, []);
        return line.Over == 0 ? line : line with { Remedies = Remedies(line, asked) };
    }

    // Courses and loops go on from week to week and are changed where they are kept; what can go for once is an activity.
    private static List<Remedy> Remedies(FitLine line, List<(Demand Demand, int Minutes)> asked)
    {
        var all = new List<Remedy>();
        foreach (var (demand, minutes) in asked.Where(a => a.Demand.Origin == DemandOrigin.Unit && a.Minutes > 0))
        {
            all.Add(new Remedy(demand.Id, demand.Title, RemedyKind.LeaveOut, minutes, demand.OfLearner, minutes >= line.Over));
            if (line.LearnerId is null && demand is { Need: AdultNeed.HandsOn, Minutes: > 0 })
                all.Add(new Remedy(demand.Id, demand.Title, RemedyKind.Beside, demand.Minutes, 0, demand.Minutes >= line.Over));
        }

        return
        [
            .. all.Where(r => r.IsEnough).OrderBy(r => r.Lost).ThenBy(r => r.Relief).ThenBy(r => r.Title, StringComparer.Ordinal).ThenBy(r => r.DemandId),
            .. all.Where(r => !r.IsEnough).OrderByDescending(r => r.Relief).ThenBy(r => r.Lost).ThenBy(r => r.Title, StringComparer.Ordinal).ThenBy(r => r.DemandId),
        ];
    }
}
