using CoopLessons.Core.Calendar;
using CoopLessons.Data;
using CoopLessons.Data.Evidence;
using CoopLessons.Data.Families;
using CoopLessons.Web.Pages.Log;
using CoopLessons.Web.Pages.Pieces;
using Microsoft.AspNetCore.Mvc;
using Microsoft.EntityFrameworkCore;

namespace CoopLessons.Web.Pages.Records;

/// <summary>A month of a child's photos and files, in the order of its days.</summary>
public sealed record MonthOfWork(Month Month, PieceList List);

/// <summary>What a child made and did, as photos and files show it, by month; the newest month first.</summary>
public sealed class GalleryModel(AppDb db, TimeProvider clock) : FamilyPage(db, clock)
{
    // From here on no further month is begun; the rest stands on the next page.
    private const int Enough = 60;

    public Learner Learner { get; private set; } = null!;
    public IReadOnlyList<Learner> Learners { get; private set; } = [];

    /// <summary>Subjects of which something is there, in the family's order.</summary>
    public IReadOnlyList<FamilySubject> Subjects { get; private set; } = [];
    public IReadOnlyList<MonthOfWork> Months { get; private set; } = [];

    /// <summary>How many there are with what is asked for.</summary>
    public int Count { get; private set; }
    public int SetAsideCount { get; private set; }

    /// <summary>The month from which the next page goes on; null on the last one.</summary>
    public Month? Earlier { get; private set; }

    /// <summary>Pieces of any child, removed not long ago.</summary>
    public PieceList Removed { get; private set; } = null!;

    [BindProperty(SupportsGet = true)]
    public Guid? Subject { get; set; }

    /// <summary>Those alone that are set aside for the portfolio.</summary>
    [BindProperty(SupportsGet = true)]
    public bool Aside { get; set; }

    public async Task<IActionResult> OnGetAsync(Guid learner, string? until)
    {
        Month? last = null;
        if (until is not null)
        {
            if (!Month.TryParse(until, out var month))
                return NotFound();
            last = month;
        }

        var words = await EntryWords.LoadAsync(Db, Ct);
        if (!ModelState.IsValid || words.Learners.FirstOrDefault(l => l.Id == learner) is not { } found || (Subject is { } subject && words.Subjects.All(s => s.Id != subject)))
            return NotFound();
        (Learner, Learners) = (found, [.. words.Learners.OrderBy(l => l.SetAside)]);
        // Whose a piece is stands in a list of its own row, which the database does not search.
        var told = await Db.StandingPieces().Select(p => new { p.Id, p.Date, p.Learners, p.SubjectId, p.SetAside }).ToListAsync(Ct);
        var mine = told.Where(p => p.Learners.Contains(learner)).ToList();
        Subjects = [.. words.Subjects.Where(s => s.Id == Subject || mine.Exists(p => p.SubjectId == s.Id))];
        SetAsideCount = mine.Count(p => p.SetAside);
        mine = mine.FindAll(p => (Subject is null || p.SubjectId == Subject) && (!Aside || p.SetAside));
        Count = mine.Count;
        var months = mine.GroupBy(p => Month.Of(p.Date)).Where(m => last is null || m.Key.CompareTo(last.Value) <= 0).OrderByDescending(m => m.Key).ToList();
        var (shown, ids) = (0, new List<Guid>());
        while (shown < months.Count && ids.Count < Enough)
            ids.AddRange(months[shown++].Select(p => p.Id));
        Earlier = shown < months.Count ? months[shown].Key : null;
        var pieces = (await Db.Pieces.AsNoTracking().Where(p => ids.Contains(p.Id)).ToListAsync(Ct)).ToLookup(p => Month.Of(p.Date));
        Months = [.. months.Take(shown).Select(m => new MonthOfWork(m.Key, new PieceList([.. pieces[m.Key].OrderBy(p => p.Date).ThenBy(p => p.TakenAt ?? int.MaxValue).ThenBy(p => p.Id)], words, Day: true)))];
        Removed = new PieceList(await Db.RemovedPiecesAsync(Now, Ct), words, Day: true);
        return Page();
    }

    /// <summary>This page with another subject, or with those set aside alone, or not.</summary>
    public string With(Guid? subject, bool aside, Month? until = null) =>
        Url.Page("/Records/Gallery", new { learner = Learner.Id, subject, aside = aside ? true : (bool?)null, until = until?.ToString() })!;
}
