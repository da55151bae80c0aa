using CoopLessons.Core.Hours;
using CoopLessons.Data.Families;
using CoopLessons.Data.Log;
using Microsoft.EntityFrameworkCore;

namespace CoopLessons.Data.Coops.Days;

/// <summary>A class that a family's children were in and on which no parent has said a word yet.</summary>
/// <param name="Children">Those of the family.</param>
/// <param name="Met">The family's own subjects that the class's were met with, by name.</param>
/// <param name="Unmet">Names of the class's subjects that the family has none of.</param>
public sealed record BeenProposal(AttendanceTaken Taken, IReadOnlyList<Learner> Children, IReadOnlyList<FamilySubject> Met, IReadOnlyList<string> Unmet)
{
    public EntryFacts Facts(int minutes, IReadOnlyList<Guid> children, IReadOnlyList<Guid> subjects) =>
        new(Taken.On, null, Taken.Title, Place.Coop, "", [.. children.Select(c => new LearnerTime(c, new Minutes(minutes)))], [.. subjects.Select(s => new SubjectWeight(s, 1))], []);
}

/// <summary>What attendance becomes in a family: a proposal for its log, on which a parent says a word.</summary>
public static class BeenThere
{
    /// <summary>The last that was taken of each class at a meeting.</summary>
    public static async Task<IReadOnlyList<AttendanceTaken>> StandingAsync(AppDb db, IQueryable<AttendanceTaken> those, CancellationToken ct) =>
        [.. (await those.AsNoTracking().ToListAsync(ct)).GroupBy(a => (a.MeetingId, a.ClassId)).Select(g => g.OrderBy(a => a.TakenAt).ThenBy(a => a.Id).Last())];

    /// <summary>Everything that waits for a word, the oldest first.</summary>
    public static async Task<IReadOnlyList<BeenProposal>> WaitingAsync(AppDb db, Guid coopId, CancellationToken ct)
    {
        var taken = await StandingAsync(db, db.AttendancesTaken.Where(a => a.CoopId == coopId), ct);
        if (taken.Count == 0)
            return [];
        var children = await db.Learners.AsNoTracking().OrderBy(l => l.Order).ToListAsync(ct);
        var subjects = await db.Subjects.AsNoTracking().Where(s => !s.Retired).OrderBy(s => s.Order).ToListAsync(ct);
        var said = (await db.BeenWords.AsNoTracking().ToListAsync(ct)).Select(w => (w.MeetingId, w.ClassId, w.LearnerId)).ToHashSet();
        return
        [
            .. from t in taken
               let mine = children.Where(c => t.There.Contains(c.Id) && !said.Contains((t.MeetingId, t.ClassId, c.Id))).ToList()
               where mine.Count > 0
               orderby t.On, t.Title
               let met = t.Subjects.Select(name => (Name: name, Own: Meet(subjects, name))).ToList()
               select new BeenProposal(t, mine, [.. met.Select(m => m.Own).OfType<FamilySubject>().Distinct()], [.. met.Where(m => m.Own is null).Select(m => m.Name)])
        ];
    }

    private static FamilySubject? Meet(List<FamilySubject> own, string name) =>
        own.Find(s => string.Equals(s.Name, name, StringComparison.OrdinalIgnoreCase)) ?? own.Find(s => string.Equals(s.Code, name.Replace(' ', '-'), StringComparison.OrdinalIgnoreCase));
}
