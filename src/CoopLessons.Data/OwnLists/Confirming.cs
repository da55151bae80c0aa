using CoopLessons.Core.Hours;
using CoopLessons.Data.Log;
using CoopLessons.Data.Schedule;
using Microsoft.EntityFrameworkCore;

namespace CoopLessons.Data.OwnLists;

/// <summary>What came of confirming what a child said.</summary>
public enum Confirmed
{
    Now,

    /// <summary>It was decided before. Nothing was changed.</summary>
    Before,

    /// <summary>Minutes or subjects are not known: a guardian fills them in.</summary>
    NeedsForm,

    /// <summary>Somebody changed the plan or the log in this moment. Nothing was written.</summary>
    Overtaken,
}

/// <summary>What a child said goes into the log, and out of it again.</summary>
public static class Confirming
{
    /// <summary>
    /// Logs what the child said as it was planned, for that child alone; where a sibling's entry says already that it was
    /// done, the child is added to it.
    /// </summary>
    /// <param name="said">Tracked.</param>
    /// <param name="entryId">Made with the page, so that a second sending is recognised.</param>
    public static async Task<Confirmed> ConfirmAsync(this AppDb db, ChildSaid said, Guid entryId, Author by, DateTime now, CancellationToken ct)
    {
        if (!said.IsWaiting || await db.KnowsEntryAsync(entryId, ct))
            return Confirmed.Before;
        var work = said.SessionId is { } id ? await db.WorkAsync(id, ct) : null;
        if (work is null)
            return Confirmed.NeedsForm;
        if (work.Session is { State: SessionState.Done, EntryId: { } done } && await db.EntryAsync(done, ct) is { Newest.Removed: false } standing)
        {
            var joins = standing.Newest.Facts.Times.All(t => t.LearnerId != said.LearnerId);
            if (joins)
                standing.Entry.Change(standing.Newest.Facts with { Times = [.. standing.Newest.Facts.Times, TimeOf(said, work)] }, by, now, "A child said so, too");
            said.Confirm(done, joins, by, now);
            await db.ShowAsync(said, done, ct);
        }
        else
        {
            if (work.Session.State == SessionState.Done || FactsOf(said, work) is not { } facts)
                return Confirmed.NeedsForm;
            db.LogEntries.Add(work.MarkDone(entryId, facts, by, now));
            said.Confirm(entryId, wrote: true, by, now);
            await db.ShowAsync(said, entryId, ct);
        }

        return await db.SaveOnceAsync(entryId, ct) switch
        {
            Written.Now => Confirmed.Now,
            Written.Before => Confirmed.Before,
            _ => await db.ChildrenSaid.AnyAsync(s => s.Id == said.Id && s.State != SaidState.Waiting, ct) ? Confirmed.Before : Confirmed.Overtaken,
        };
    }

    /// <summary>Takes a decision back: what it wrote into the log comes out, and what the child said waits again. Nothing is saved here.</summary>
    /// <param name="said">Tracked.</param>
    public static async Task UndoAsync(this AppDb db, ChildSaid said, Author by, DateTime now, CancellationToken ct)
    {
        if (said is { Wrote: true, EntryId: { } id } && await db.EntryAsync(id, ct) is { Newest.Removed: false } standing)
        {
            var others = standing.Newest.Facts.Times.Where(t => t.LearnerId != said.LearnerId).ToList();
            if (others.Count == standing.Newest.Facts.Times.Count)
            {
                // Somebody took the child out of it in the log already.
            }
            else if (others.Count > 0)
            {
                standing.Entry.Change(standing.Newest.Facts with { Times = others }, by, now, "What a child said was taken back");
            }
            else
            {
                standing.Entry.Remove(standing.Newest, by, now, "What a child said was taken back");
                if (standing.Entry.SessionId is { } sessionId && await db.WorkAsync(sessionId, ct) is { } work && work.Session.EntryId == id)
                    work.Undo();
            }
        }

        await db.ShowAsync(said, null, ct);
        said.WaitAgain();
    }

    /// <summary>What was brought with it belongs to the entry.</summary>
    public static async Task ShowAsync(this AppDb db, ChildSaid said, Guid? entryId, CancellationToken ct)
    {
        if (said.Pieces.Count == 0)
            return;
        var ids = said.Pieces.ToList();
        foreach (var piece in await db.Pieces.Where(p => ids.Contains(p.Id)).ToListAsync(ct))
            piece.Describe(piece.Facts with { EntryId = entryId });
    }

    private static EntryFacts? FactsOf(ChildSaid said, PlannedWork work)
    {
        if (work.Split.Split.Count == 0)
            return null;
        return new EntryFacts(said.Date, null, work.Title, Place.Home, said.Words, [TimeOf(said, work)], work.Split.Split, work.Split.Touches);
    }

    private static LearnerTime TimeOf(ChildSaid said, PlannedWork work) => new(said.LearnerId, new Minutes(said.Minutes ?? work.Minutes));
}
