using System.Globalization;
using CoopLessons.Core.Calendar;
using CoopLessons.Core.Families;
using CoopLessons.Core.Hours;
using CoopLessons.Data;
using CoopLessons.Data.Families;
using CoopLessons.Data.Log;
using CoopLessons.Web.Pages.Today;
using Microsoft.EntityFrameworkCore;

namespace CoopLessons.Web.Pages.Log;

/// <summary>What one child was credited in one subject.</summary>
public sealed record CreditWords(string Learner, IReadOnlyList<(string Subject, int Minutes)> Parts, int Total);

/// <summary>The family's names, by which entries and their changes are told in words.</summary>
public sealed class EntryWords(IReadOnlyList<Learner> learners, IReadOnlyList<FamilySubject> subjects)
{
    public IReadOnlyList<Learner> Learners => learners;
    public IReadOnlyList<FamilySubject> Subjects => subjects;

    public static async Task<EntryWords> LoadAsync(AppDb db, CancellationToken ct) => new(
        await db.Learners.AsNoTracking().OrderBy(l => l.Order).ThenBy(l => l.Id).ToListAsync(ct),
        await db.Subjects.AsNoTracking().OrderBy(s => s.Order).ThenBy(s => s.Id).ToListAsync(ct));

    /// <summary>Rows for a form: everybody who is taught and every subject in use, and those that the facts name.</summary>
    public EntryForm Form(EntryFacts facts) => EntryForm.From(
        facts,
        [.. learners.Where(l => !l.SetAside || facts.Times.Any(t => t.LearnerId == l.Id))],
        InUse(facts.Split, facts.Touches));

    public IReadOnlyList<FamilySubject> InUse(IReadOnlyList<SubjectWeight> split, IReadOnlyList<Guid> touches) =>
        [.. subjects.Where(s => !s.Retired || split.Any(w => w.SubjectId == s.Id) || touches.Contains(s.Id))];

    public string Learner(Guid id) => learners.FirstOrDefault(l => l.Id == id)?.Name ?? "somebody";

    public string Subject(Guid id) => subjects.FirstOrDefault(s => s.Id == id)?.Name ?? "a subject";

    /// <summary>“40 min each”, “40 min”, or each child's own.</summary>
    public string Times(EntryFacts facts)
    {
        var times = InOrder(facts);
        if (times.Select(t => t.Minutes).Distinct().Count() > 1)
            return string.Join(", ", times.Select(t => $"{Learner(t.LearnerId)} {DayWords.Length(t.Minutes.Value)}"));
        return DayWords.Length(times[0].Minutes.Value) + (times.Count > 1 ? " each" : "");
    }

    public string Who(EntryFacts facts) => DayWords.Names(InOrder(facts).Select(t => Learner(t.LearnerId)));

    public string Split(EntryFacts facts) =>
        string.Join(", ", facts.Split.OrderBy(s => Order(s.SubjectId)).Select(s => string.Create(CultureInfo.InvariantCulture, $"{Subject(s.SubjectId)} {s.Weight}")));

    /// <summary>What saving will write, in one line: “Heron and Linnet, 40 min, science 2 · home arts 1”.</summary>
    public string SaveLine(EntryFacts facts) => facts.Times.Count == 0 ? "" :
        $"{Who(facts)}, {Times(facts)}, {string.Join(" · ", facts.Split.OrderBy(s => Order(s.SubjectId)).Select(s => string.Create(CultureInfo.InvariantCulture, $"{Subject(s.SubjectId)} {s.Weight}")))}";

    public string Touches(EntryFacts facts) => facts.Touches.Count == 0 ? "none" : string.Join(", ", facts.Touches.OrderBy(Order).Select(Subject));

    /// <summary>The minutes of each child in each subject, divided as the ledger divides them.</summary>
    public IReadOnlyList<CreditWords> Credits(LogRevision revision)
    {
        var entry = revision.ToCore();
        IReadOnlyList<Subject> own = [.. subjects.Select(s => s.ToCore())];
        return
        [
            .. InOrder(revision.Facts).Select(t =>
            {
                var ledger = HoursLedger.Of(t.LearnerId, own, new DayRange(entry.Date, entry.Date), [entry]);
                return new CreditWords(Learner(t.LearnerId), [.. ledger.Credits.Select(c => (Subject(c.SubjectId), c.Minutes.Value))], ledger.Total.Value);
            }),
        ];
    }

    /// <summary>What differs between two writings, each in a few words; empty where nothing does.</summary>
    public IReadOnlyList<string> Changes(EntryFacts before, EntryFacts after)
    {
        var changes = new List<string>();
        Tell("what", $"“{before.What}”", $"“{after.What}”");
        Tell("day", before.Date.ToString("dddd d MMMM yyyy", CultureInfo.InvariantCulture), after.Date.ToString("dddd d MMMM yyyy", CultureInfo.InvariantCulture));
        Tell("began at", Began(before), Began(after));
        TellTimes(before, after, changes);
        Tell("where", DayWords.Where(before.Place), DayWords.Where(after.Place));
        Tell("counts as", Split(before), Split(after));
        Tell("touches", Touches(before), Touches(after));
        if (before.Note != after.Note)
            changes.Add(before.Note.Length == 0 ? $"note added: “{after.Note}”" : after.Note.Length == 0 ? $"note taken out: “{before.Note}”" : $"note “{before.Note}” → “{after.Note}”");
        return changes;

        void Tell(string name, string old, string @new)
        {
            if (old != @new)
                changes.Add($"{name} {old} → {@new}");
        }
    }

    private void TellTimes(EntryFacts before, EntryFacts after, List<string> changes)
    {
        var old = before.Times.ToDictionary(t => t.LearnerId, t => t.Minutes.Value);
        var now = after.Times.ToDictionary(t => t.LearnerId, t => t.Minutes.Value);
        var same = old.Keys.ToHashSet().SetEquals(now.Keys);
        if (same && old.Values.Distinct().Count() == 1 && now.Values.Distinct().Count() == 1)
        {
            if (old.Values.First() != now.Values.First())
                changes.Add(string.Create(CultureInfo.InvariantCulture, $"minutes {old.Values.First()} → {now.Values.First()}"));
            return;
        }

        foreach (var learner in learners)
        {
            var (was, stays) = (old.TryGetValue(learner.Id, out var minutes), now.TryGetValue(learner.Id, out var later));
            if (was && stays && minutes != later)
                changes.Add(string.Create(CultureInfo.InvariantCulture, $"{learner.Name}'s minutes {minutes} → {later}"));
            else if (was && !stays)
                changes.Add(string.Create(CultureInfo.InvariantCulture, $"{learner.Name} taken out ({minutes} minutes)"));
            else if (!was && stays)
                changes.Add(string.Create(CultureInfo.InvariantCulture, $"{learner.Name} added ({later} minutes)"));
        }
    }

    private static string Began(EntryFacts facts) => facts.StartsAt is { } start ? DayWords.Clock(start) : "no time";

    private IReadOnlyList<LearnerTime> InOrder(EntryFacts facts) => [.. facts.Times.OrderBy(t => learners.ToList().FindIndex(l => l.Id == t.LearnerId))];

    private int Order(Guid subjectId) => subjects.FirstOrDefault(s => s.Id == subjectId)?.Order ?? int.MaxValue;
}
