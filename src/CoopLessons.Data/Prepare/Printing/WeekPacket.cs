using CoopLessons.Core.Prepare.Printing;
using CoopLessons.Core.Units;
using CoopLessons.Data.Families;
using CoopLessons.Data.Files;
using CoopLessons.Data.Units;
using Microsoft.EntityFrameworkCore;

namespace CoopLessons.Data.Prepare.Printing;

/// <summary>A printable of the week with its file.</summary>
/// <param name="Pieces">One for each choice that is for somebody, in the order of the choices.</param>
public sealed record PacketEntry(ReadyActivity Ready, PrintSource Source, StoredFile File, IReadOnlyList<PacketPiece> Pieces);

/// <summary>What a subject prints, by day and as the unit orders it.</summary>
public sealed record PacketPart(FamilySubject Subject, IReadOnlyList<PacketEntry> Entries)
{
    public PacketSection Section => new(Subject.Id, [.. Entries.SelectMany(e => e.Pieces)]);
}

/// <summary>A printable that an activity of the week asks for and that has no file yet.</summary>
public sealed record MissingPrint(ReadyActivity Ready, Printable Printable);

/// <summary>What is to be printed for a week, and what of it lies on paper already.</summary>
/// <param name="Parts">In the family's order of subjects; those alone that print something.</param>
/// <param name="Printed">The packet as it was last printed; null where none was.</param>
public sealed record WeekPacket(ReadyWeek Week, PrintHabits Habits, IReadOnlyList<PacketPart> Parts, IReadOnlyList<MissingPrint> Missing, PrintedPacket? Printed)
{
    public IReadOnlyList<PacketSection> Sections => [.. Parts.Select(p => p.Section)];

    /// <summary>What is not on paper yet; all of it where no packet was printed.</summary>
    public IReadOnlyList<PacketSection> Changed => Printed is null ? Sections : PacketChange.Since(Printed.Copies, Sections);

    public static async Task<WeekPacket> LoadAsync(AppDb db, ReadyWeek week, CancellationToken ct)
    {
        var ids = week.Activities.Select(a => a.Activity.Id).ToList();
        var subjects = await db.Subjects.AsNoTracking().OrderBy(s => s.Order).ThenBy(s => s.Id).ToListAsync(ct);
        var told = await db.PrintSources.AsNoTracking().Where(s => ids.Contains(s.ActivityId)).ToListAsync(ct);
        var hashes = told.Select(s => s.Hash).Distinct().ToList();
        var files = await db.StoredFiles.AsNoTracking().Where(f => hashes.Contains(f.Hash)).ToDictionaryAsync(f => f.Hash, ct);
        // A file that was exchanged between the two readings is missing in this one.
        var sources = told.Where(s => files.ContainsKey(s.Hash)).ToLookup(s => s.ActivityId);
        var iso = week.Week.Iso;
        var entries = week.Activities.SelectMany(a => InOrder(a.Activity, sources[a.Activity.Id]).Select(s => (Subject: HeaviestOf(a, subjects), Entry: Entry(a, s, files[s.Hash], HeaviestOf(a, subjects), week)))).ToList();
        return new WeekPacket(
            week,
            await db.PrintHabits.AsNoTracking().SingleOrDefaultAsync(ct) ?? PrintHabits.Usual,
            [.. subjects.Select(s => new PacketPart(s, [.. entries.Where(e => e.Subject.Id == s.Id).Select(e => e.Entry)])).Where(p => p.Entries.Count > 0)],
            [.. week.Activities.SelectMany(a => a.Activity.Details.Printables.Where(p => sources[a.Activity.Id].All(s => s.Printable != p.Title)).Select(p => new MissingPrint(a, p)))],
            await db.PrintedPackets.AsNoTracking().Where(p => p.Week == iso).OrderByDescending(p => p.PrintedAt).ThenByDescending(p => p.Id).FirstOrDefaultAsync(ct));
    }

    /// <summary>The packet without the printables whose file is not there; they are missing then.</summary>
    /// <param name="isThere">Told a file's hash.</param>
    public WeekPacket WithFiles(Func<string, bool> isThere)
    {
        var gone = Parts.SelectMany(p => p.Entries).Where(e => !isThere(e.File.Hash)).ToList();
        return gone.Count == 0 ? this : this with
        {
            Parts = [.. Parts.Select(p => p with { Entries = [.. p.Entries.Except(gone)] }).Where(p => p.Entries.Count > 0)],
            Missing = [.. Missing, .. gone.Select(e => new MissingPrint(e.Ready, e.Ready.Activity.Details.Printables.FirstOrDefault(p => p.Title == e.Source.Printable) ?? new Printable(e.Source.Printable, e.File.Pages)))],
        };
    }

    /// <summary>The sources of an activity as it asks for them, those of one's own after them by title.</summary>
    public static IEnumerable<PrintSource> InOrder(Activity activity, IEnumerable<PrintSource> sources)
    {
        var asked = activity.Details.Printables.Select((p, i) => (p.Title, Index: i)).DistinctBy(p => p.Title).ToDictionary(p => p.Title, p => p.Index);
        return sources.OrderBy(s => asked.GetValueOrDefault(s.Printable, int.MaxValue)).ThenBy(s => s.Printable, StringComparer.Ordinal);
    }

    /// <summary>The subject under which an activity stands: the heaviest that the family takes, the earlier in its order of two as heavy.</summary>
    private static FamilySubject HeaviestOf(ReadyActivity ready, IReadOnlyList<FamilySubject> subjects)
    {
        var weights = ready.Activity.Split(ready.Unit.LeftOut)?.Split ?? ready.Activity.Details.Weights;
        return subjects.MaxBy(s => weights.FirstOrDefault(w => w.SubjectId == s.Id)?.Weight ?? 0) ?? throw new InvalidOperationException("The family has no subjects.");
    }

    private static PacketEntry Entry(ReadyActivity ready, PrintSource source, StoredFile file, FamilySubject subject, ReadyWeek week)
    {
        var day = ready.DayIn(week.Week);
        var learners = ready.Learners.Select(l => (new PacketLearner(l.Id, l.Name), l.WorkingAge(day, subject.Id))).ToList();
        var pieces = new List<PacketPiece>();
        foreach (var choice in source.Choices)
        {
            if (PageRanges.TryRead(choice.Pages, out var ranges, out _) && ranges.TryIn(file.Pages, out var pages, out _) && choice.CopiesFor(learners) is { Count: > 0 } copies)
                pieces.Add(new PacketPiece(source.ActivityId, source.Printable, source.Hash, pages, choice.Colour, choice.Up, copies));
        }

        return new PacketEntry(ready, source, file, pieces);
    }
}
