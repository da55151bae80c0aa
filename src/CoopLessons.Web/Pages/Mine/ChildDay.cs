using CoopLessons.Core.Calendar;
using CoopLessons.Core.Units;
using CoopLessons.Data;
using CoopLessons.Data.Families;
using CoopLessons.Data.Log;
using CoopLessons.Data.OwnLists;
using CoopLessons.Data.Planning;
using CoopLessons.Data.Schedule;
using CoopLessons.Web.Pages.Today;
using Microsoft.EntityFrameworkCore;

namespace CoopLessons.Web.Pages.Mine;

/// <summary>A child's own day: what is planned for this child, in order, and what the child said of it. No other child is in it.</summary>
public sealed class ChildDay
{
    /// <summary>So many days an answer to something of an earlier day is shown.</summary>
    private const int AnswersStay = 3;

    private readonly DateOnly _date;
    private readonly Learner _child;
    private readonly ReadingLevel _reading;
    private readonly Dictionary<Guid, FamilySubject> _subjects;
    private readonly Dictionary<Guid, string> _adults;

    private ChildDay(DateOnly date, Learner child, ReadingLevel reading, Dictionary<Guid, FamilySubject> subjects, Dictionary<Guid, string> adults, IReadOnlyList<string> grownUps) =>
        (_date, _child, _reading, _subjects, _adults, GrownUps) = (date, child, reading, subjects, adults, grownUps);

    public IReadOnlyList<Thing> Things { get; private set; } = [];

    /// <summary>What the child did besides, as the child said.</summary>
    public IReadOnlyList<ChildSaid> Besides { get; private set; } = [];

    /// <summary>Words to the child about things of earlier days.</summary>
    public IReadOnlyList<ChildSaid> Answers { get; private set; } = [];

    /// <summary>The family's grown-ups, by name.</summary>
    public IReadOnlyList<string> GrownUps { get; }

    public static async Task<ChildDay> LoadAsync(AppDb db, Learner child, ReadingLevel reading, DateOnly today, DateTime now, CancellationToken ct)
    {
        var subjects = await db.Subjects.AsNoTracking().ToDictionaryAsync(s => s.Id, ct);
        var adults = await db.TeachingAdults.AsNoTracking().Where(a => !a.SetAside).OrderBy(a => a.Order).ThenBy(a => a.Id).ToListAsync(ct);
        var members = await db.Memberships.AsNoTracking().OrderBy(m => m.Since).ThenBy(m => m.Name).Select(m => m.Name).ToListAsync(ct);
        var day = new ChildDay(today, child, reading, subjects, adults.ToDictionary(a => a.Id, a => a.Name), [.. adults.Select(a => a.Name).Concat(members).Distinct(StringComparer.CurrentCultureIgnoreCase)]);

        var said = await db.ChildrenSaid.AsNoTracking().Where(s => s.LearnerId == child.Id && s.Date == today).OrderBy(s => s.SaidAt).ThenBy(s => s.Id).ToListAsync(ct);
        var planned = await db.WorkAsync(db.PlannedSessions.AsNoTracking().Where(s => s.Date == today && (s.State == SessionState.Planned || s.State == SessionState.Done)), ct, today);
        var mine = planned.Where(w => w.Session.Learners.Contains(child.Id)).ToList();
        var entries = mine.Select(w => w.Session.EntryId).Concat(said.Select(s => s.EntryId)).OfType<Guid>().Distinct().ToList();
        var logged = (await db.Standing().Where(r => entries.Contains(r.EntryId) && r.Times.Any(t => t.LearnerId == child.Id)).Select(r => r.EntryId).ToListAsync(ct)).ToHashSet();
        var things = mine.Select(w => day.ThingOf(w, said.LastOrDefault(s => s.SessionId == w.Session.Id), logged));
        var fixedPoints = (await FixedPoint.InAsync(db, new DayRange(today, today), ct)).Where(f => f.Appointment.Learners.Count == 0 || f.Appointment.Learners.Contains(child.Id));
        day.Things = [.. fixedPoints.Select(f => day.ThingOf(f.Appointment)).Concat(things).OrderBy(t => t.At ?? int.MaxValue)];
        day.Besides = [.. said.Where(s => s.SessionId is null && s.State != SaidState.TakenBack)];
        var since = now.AddDays(-AnswersStay);
        day.Answers = await db.ChildrenSaid.AsNoTracking()
            .Where(s => s.LearnerId == child.Id && s.Date < today && s.State == SaidState.Declined && s.DecidedAt >= since).OrderBy(s => s.SaidAt).ToListAsync(ct);
        return day;
    }

    /// <summary>Whether something in it can hurt, or meets this child in a way that calls for a grown-up's eyes.</summary>
    public static bool NeedsGrownUp(PlannedWork work, Learner child, DateOnly date) => work.Doing.Activity is { } activity
        && (activity.Details.Hazards.Count > 0 || Cautions.Of([child.ToCautioned(date)], [], activity.Care).Any(c => c is not YoungerThanWritten));

    private Thing ThingOf(PlannedWork work, ChildSaid? said, HashSet<Guid> logged)
    {
        var doing = work.Doing;
        var leading = work.Split.Split.OrderByDescending(s => s.Weight).FirstOrDefault()?.SubjectId;
        var subject = leading is { } id ? _subjects.GetValueOrDefault(id) : null;
        var part = doing.Details.Variants.For(_child.WorkingAge(_date, leading))?.Does ?? "";
        var careful = NeedsGrownUp(work, _child, _date);
        return new Thing(
            work.Session.Id, work.Session.StartsAt, ThingWords.Icon(doing, subject?.Code ?? ""),
            _reading == ReadingLevel.Pictures ? ThingWords.Brief(doing, subject?.Name ?? "Lesson") : doing.Title,
            LinesOf(doing, part), With(work, careful), careful,
            IsIn(logged, work.Session.EntryId) || IsIn(logged, said?.EntryId) ? ThingState.Done : StateOf(said), said);
    }

    private Thing ThingOf(Appointment appointment) => new(
        null, appointment.StartsAt, ThingWords.Icon(appointment.Kind),
        _reading == ReadingLevel.Pictures ? ThingWords.Brief(appointment.Kind) : appointment.Title,
        [], "", false, ThingState.Fixed, null);

    private List<string> LinesOf(Doing doing, string part) => _reading switch
    {
        ReadingLevel.Pictures => [],
        ReadingLevel.ShortWords => ThingWords.FirstSentence(part.Length > 0 ? part : doing.Does) is { Length: > 0 } sentence ? [sentence] : [],
        _ => [.. Steps(part), .. Steps(doing.Does)],
    };

    private static string[] Steps(string text) => text.Split('\n', StringSplitOptions.RemoveEmptyEntries | StringSplitOptions.TrimEntries);

    // Who is there is said in the family's own names; a grown-up without a name is one all the same.
    private string With(PlannedWork work, bool careful)
    {
        if (work.Doing.Need == AdultNeed.Alone && !careful)
            return "";
        var name = work.Session.AdultId is { } id ? _adults.GetValueOrDefault(id) : null;
        return _reading == ReadingLevel.Pictures ? name is null ? "grown-up" : $"with {ThingWords.TwoWords(name).Split(' ')[0]}"
            : name is null ? "with a grown-up" : $"with {name}";
    }

    private static ThingState StateOf(ChildSaid? said) => said?.State switch
    {
        SaidState.Waiting => ThingState.Waiting,
        SaidState.Declined => ThingState.NotYet,
        // Confirmed, and taken out of the log afterwards, it is there to be done.
        _ => ThingState.Open,
    };

    private static bool IsIn(HashSet<Guid> logged, Guid? entryId) => entryId is { } id && logged.Contains(id);
}
