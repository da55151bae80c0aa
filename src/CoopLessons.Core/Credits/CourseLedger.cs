using CoopLessons.Core.Hours;

namespace CoopLessons.Core.Credits;

/// <summary>Minutes of the log in a course.</summary>
/// <param name="ByHand">A parent gave them to it; no rule had to.</param>
public sealed record CourseCredit(Credit Credit, bool ByHand);

/// <summary>Minutes that a course asks for and that another one has.</summary>
/// <param name="HeldBy">The course in which they are counted.</param>
public sealed record CountedInAnother(Guid HeldBy, Minutes Minutes);

/// <summary>What came to one course.</summary>
/// <param name="Credits">By date and entry, in the ledger's order.</param>
/// <param name="InAnother">In the order of the courses that have them.</param>
/// <param name="Elsewhere">Study outside the log.</param>
public sealed record CourseTotal(Guid CourseId, IReadOnlyList<CourseCredit> Credits, IReadOnlyList<CountedInAnother> InAnother, Minutes Elsewhere)
{
    public Minutes FromLog { get; } = Credits.Select(c => c.Credit.Minutes).Sum();

    public Minutes Total => FromLog + Elsewhere;
}

/// <summary>
/// Which minutes of one learner's log belong to which course.
/// <list type="number">
/// <item>A part of an entry (its minutes in one subject) goes to one course whole, or to none.</item>
/// <item>A part that a parent gave to a course by hand goes there, whatever rules ask for it; where several were given it, to the first of them in the parent's order.</item>
/// <item>Every other part goes to the first course, in the parent's order, whose rules ask for it.</item>
/// <item>A part that a parent took from a course by hand does not go to it.</item>
/// <item>The minutes of all courses from the log and the minutes of none add up to the ledger's total exactly.</item>
/// <item>What a course asks for and another has is told with both, never counted twice.</item>
/// <item>Study outside the log is added to its course alone and stands apart.</item>
/// </list>
/// </summary>
public sealed class CourseLedger
{
    private readonly Dictionary<Guid, CourseTotal> _byCourse;

    private CourseLedger(IReadOnlyList<CourseTotal> courses, IReadOnlyList<Credit> inNone)
    {
        Courses = courses;
        InNone = inNone;
        _byCourse = courses.ToDictionary(c => c.CourseId);
    }

    /// <param name="inOrder">The learner's courses in the parent's order, each once.</param>
    /// <param name="unitOfEntry">The unit of each entry that belongs to one.</param>
    /// <exception cref="ArgumentException">A course stands there twice.</exception>
    public static CourseLedger Of(HoursLedger ledger, IReadOnlyList<CourseClaim> inOrder, IReadOnlyDictionary<Guid, Guid> unitOfEntry)
    {
        var had = inOrder.ToDictionary(c => c.CourseId, _ => new List<CourseCredit>());
        var missed = new Dictionary<(Guid Asking, Guid Holding), int>();
        var inNone = new List<Credit>();
        foreach (var credit in ledger.Credits)
        {
            Guid? unit = unitOfEntry.TryGetValue(credit.EntryId, out var id) ? id : null;
            var asking = inOrder.Where(c => c.Asks(credit, unit)).ToList();
            if (asking.Count == 0)
            {
                inNone.Add(credit);
                continue;
            }

            var byHand = asking.Find(c => c.HasByHand(LogPart.Of(credit)));
            var holder = byHand ?? asking[0];
            had[holder.CourseId].Add(new CourseCredit(credit, byHand is not null));
            foreach (var other in asking.Where(c => c != holder))
                missed[(other.CourseId, holder.CourseId)] = missed.GetValueOrDefault((other.CourseId, holder.CourseId)) + credit.Minutes.Value;
        }

        return new CourseLedger(
            [.. inOrder.Select(c => new CourseTotal(
                c.CourseId, had[c.CourseId],
                [.. inOrder.Where(h => missed.ContainsKey((c.CourseId, h.CourseId))).Select(h => new CountedInAnother(h.CourseId, new Minutes(missed[(c.CourseId, h.CourseId)])))],
                c.Elsewhere.Select(s => s.Minutes).Sum()))],
            inNone);
    }

    /// <summary>In the parent's order.</summary>
    public IReadOnlyList<CourseTotal> Courses { get; }

    /// <summary>What no course asks for.</summary>
    public IReadOnlyList<Credit> InNone { get; }

    public Minutes MinutesInNone => InNone.Select(c => c.Minutes).Sum();

    public CourseTotal this[Guid courseId] => _byCourse[courseId];

    /// <summary>The course that has a part of the log; null for none.</summary>
    public Guid? HolderOf(LogPart part) => Courses.FirstOrDefault(c => c.Credits.Any(x => LogPart.Of(x.Credit) == part))?.CourseId;
}
