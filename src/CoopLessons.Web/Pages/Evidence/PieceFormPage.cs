using System.ComponentModel.DataAnnotations;
using System.Globalization;
using CoopLessons.Data;
using CoopLessons.Data.Evidence;
using CoopLessons.Data.Families;
using CoopLessons.Data.Log;
using CoopLessons.Documents.Uploads;
using CoopLessons.Web.Evidence;
using CoopLessons.Web.Pages.Log;
using CoopLessons.Web.Pages.Today;
using Microsoft.AspNetCore.Mvc;
using Microsoft.EntityFrameworkCore;

namespace CoopLessons.Web.Pages.Pieces;

/// <summary>A form in which something is said of pieces: the same fields wherever they are brought or changed.</summary>
public abstract class PieceFormPage(AppDb db, TimeProvider clock) : FamilyPage(db, clock)
{
    private LogRevision? _entry;

    /// <summary>The day of the work. Left empty it is the entry's, else the one that the photo tells, else today.</summary>
    [BindProperty]
    public DateOnly? Date { get; set; }

    /// <summary>When the phone says that the file was made: <c>2026-03-12T09:05</c>, by the phone's own clock.</summary>
    [BindProperty]
    [StringLength(40)]
    public string? Taken { get; set; }

    [BindProperty]
    public List<Guid> Learners { get; set; } = [];

    [BindProperty]
    public Guid? SubjectId { get; set; }

    [BindProperty]
    public Guid? EntryId { get; set; }

    [BindProperty]
    [StringLength(Piece.LongestCaption, ErrorMessage = "At most {1} signs here; the rest can stand in the entry’s note.")]
    public string? Caption { get; set; }

    [BindProperty]
    public bool FacesOut { get; set; }

    [BindProperty]
    public bool SetAside { get; set; }

    public EntryWords Words { get; private set; } = null!;

    /// <summary>What the entry says to which the pieces belong; null for none.</summary>
    public LogRevision? Entry => _entry;

    public IEnumerable<Learner> LearnersOffered => Words.Learners.Where(l => !l.SetAside || Learners.Contains(l.Id));

    public IEnumerable<FamilySubject> SubjectsOffered => Words.Subjects.Where(s => !s.Retired || s.Id == SubjectId);

    /// <summary>False where a child, a subject or an entry is named that the family does not have.</summary>
    protected async Task<bool> FindAsync()
    {
        Words = await EntryWords.LoadAsync(Db, Ct);
        if (EntryId is { } id)
        {
            if (await Db.EntryAsync(id, Ct) is { } found)
                _entry = found.Newest;
            // What two phones wrote of the same session became one entry: the photos of both belong to it.
            else if (await Db.LogRevisions.Where(r => r.SentAs == id).Select(r => (Guid?)r.EntryId).FirstOrDefaultAsync(Ct) is { } joined && await Db.EntryAsync(joined, Ct) is { } one)
                (EntryId, _entry) = (joined, one.Newest);
            else
                return false;
        }

        return Learners.TrueForAll(l => Words.Learners.Any(k => k.Id == l)) && (SubjectId is not { } subject || Words.Subjects.Any(s => s.Id == subject));
    }

    /// <summary>Tells, beside their fields, what cannot be.</summary>
    protected void Check()
    {
        if (Date > Today)
            ModelState.AddModelError(nameof(Date), $"That day is still to come. Today is {Today.InWords()}.");
        else if (Date < EntryForm.Earliest)
            ModelState.AddModelError(nameof(Date), "Choose a day from the year 2000 on.");
    }

    /// <summary>What is said of a piece; what was left unsaid follows from the entry, then from the file itself.</summary>
    /// <returns>With the minute of its day at which it was taken, where file or phone tell one of that day.</returns>
    protected (PieceFacts Facts, int? TakenAt) FactsOf(EvidenceVerdict verdict)
    {
        DateTime? phone = DateTime.TryParseExact(Taken, ["yyyy-MM-dd'T'HH:mm", "yyyy-MM-dd'T'HH:mm:ss"], CultureInfo.InvariantCulture, DateTimeStyles.None, out var read) ? read : null;
        var date = Date ?? _entry?.Date ?? DayOf(verdict.TakenAt) ?? DayOf(phone) ?? Today;
        var at = new[] { verdict.TakenAt, phone }.FirstOrDefault(t => t is { } known && DateOnly.FromDateTime(known) == date);
        var said = _entry?.Facts;
        return (new PieceFacts(
            date,
            Learners.Count > 0 || said is null ? Learners : [.. said.Times.Select(t => t.LearnerId)],
            SubjectId ?? said?.Split.MaxBy(s => s.Weight)?.SubjectId,
            EntryId, Caption ?? "", FacesOut, SetAside), at is { } minute ? DayWords.OfDay(TimeOnly.FromDateTime(minute)) : null);
    }

    // A camera whose clock was never set tells a day that nobody would believe.
    private DateOnly? DayOf(DateTime? taken) =>
        taken is { } at && DateOnly.FromDateTime(at) is var day && day <= Today && day >= EntryForm.Earliest ? day : null;
}
