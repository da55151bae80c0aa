using CoopLessons.Core.Calendar;
using CoopLessons.Core.Hours;
using CoopLessons.Data;
using CoopLessons.Data.Log;
using Microsoft.AspNetCore.Mvc;
using Microsoft.EntityFrameworkCore;

namespace CoopLessons.Web.Pages.Records;

/// <summary>One entry of the list.</summary>
/// <param name="Credited">Minutes in what is asked for; null where the subject was only met in passing.</param>
/// <param name="InAll">The learner's minutes in the whole entry.</param>
/// <param name="Written">The newest writing; null where it was changed while this page was made.</param>
public sealed record EntryLine(LoggedEntry Entry, Minutes? Credited, Minutes InAll, string Who, LogRevision? Written);

/// <summary>The entries that make a number: their minutes add up to it exactly.</summary>
public sealed class EntriesModel(AppDb db, TimeProvider clock) : LearnerYearPage(db, clock)
{
    /// <summary>With more entries than this, one month is shown at a time.</summary>
    public const int LongestList = 200;

    [BindProperty(SupportsGet = true, Name = "subject")]
    public Guid? SubjectId { get; set; }

    [BindProperty(SupportsGet = true, Name = "month")]
    public string? MonthText { get; set; }

    [BindProperty(SupportsGet = true, Name = "place")]
    public string? PlaceText { get; set; }

    [BindProperty(SupportsGet = true, Name = "date")]
    public string? DateText { get; set; }

    /// <summary>Which month of a long list is shown.</summary>
    [BindProperty(SupportsGet = true, Name = "show")]
    public string? ShowText { get; set; }

    public EntriesFilter Filter { get; private set; } = new(null, null, null, null);
    public string What { get; private set; } = "";
    public Minutes Sum { get; private set; }
    public int Count { get; private set; }
    public IReadOnlyList<EntryLine> Lines { get; private set; } = [];
    public IReadOnlyList<EntryLine> Touched { get; private set; } = [];

    /// <summary>The months of a list that is too long for one page; empty for others.</summary>
    public IReadOnlyList<Month> Months { get; private set; } = [];
    public Month? Shown { get; private set; }

    public async Task<IActionResult> OnGetAsync()
    {
        if (!await FindAsync() || Log is null || EntriesFilter.Read(SubjectId, MonthText, PlaceText, DateText) is not { } filter)
            return NotFound();
        var subject = Log.Ledger.Subjects.FirstOrDefault(s => s.Id == filter.Subject);
        if (filter.Subject is not null && subject is null)
            return NotFound();

        Filter = filter;
        What = string.Join(", ", new[]
        {
            subject?.Name ?? "all subjects",
            filter.Month is { } month ? RecordWords.Of(month) : null,
            filter.Date is { } date ? RecordWords.Of(date) : null,
            filter.Place is { } place ? RecordWords.Of(place) : null,
        }.OfType<string>());
        var credits = Log.Ledger.Credits.Where(filter.Holds).ToLookup(c => c.EntryId);
        var placed = Log.Ledger.Entries.ToDictionary(e => e.Id, e => e.Place);
        var touches = Log.Ledger.Touches.Where(t => filter.Holds(t, placed[t.EntryId])).Select(t => t.EntryId).ToHashSet();
        Sum = credits.SelectMany(c => c).Select(c => c.Minutes).Sum();
        var entries = Log.Ledger.Entries.Where(e => credits.Contains(e.Id) || touches.Contains(e.Id)).ToList();
        Count = entries.Count;
        if (Count > LongestList && !Turn(entries))
            return NotFound();

        var shown = entries.Where(e => Shown is not { } only || only.Contains(e.Date)).ToList();
        var lines = await LinesAsync(shown, credits);
        Lines = [.. lines.Where(l => l.Credited is not null)];
        Touched = [.. lines.Where(l => l.Credited is null)];
        return Page();
    }

    public Minutes SumShown => Lines.Select(l => l.Credited!.Value).Sum();

    /// <summary>The month before or after the one shown, or null at an end.</summary>
    public Month? Beside(int step)
    {
        var at = Months.Index().FirstOrDefault(m => m.Item == Shown).Index + step;
        return Shown is null || at < 0 || at >= Months.Count ? null : Months[at];
    }

    public string Address(Month show) =>
        EntriesFilter.Address(Url, Learner!.Id, Year!.Id, Filter.Subject, Filter.Month, Filter.Place, Filter.Date, show);

    /// <summary>When it was written, where that was another day than the one on which it was done.</summary>
    public string? WrittenOn(EntryLine line) =>
        line.Written is { } w && DateOnly.FromDateTime(Family.Local(w.OnPhoneAt ?? w.WrittenAt).DateTime) is var day && day != line.Entry.Date
            ? $"written on {RecordWords.Of(day)} by {w.AuthorName}"
            : null;

    private bool Turn(List<LoggedEntry> entries)
    {
        Months = [.. entries.Select(e => Month.Of(e.Date)).Distinct().Order()];
        Shown = Months[^1];
        if (ShowText is null)
            return true;
        if (!Month.TryParse(ShowText, out var asked) || !Months.Contains(asked))
            return false;
        Shown = asked;
        return true;
    }

    private async Task<List<EntryLine>> LinesAsync(List<LoggedEntry> entries, ILookup<Guid, Credit> credits)
    {
        if (entries.Count == 0)
            return [];
        var days = new DayRange(entries[0].Date, entries[^1].Date);
        var written = await Db.LogRevisions.AsNoTracking()
            .Where(r => r.Number == r.Entry.Newest && r.Date >= days.First && r.Date <= days.Last).ToDictionaryAsync(r => r.EntryId, Ct);
        return [.. entries.Select(e => new EntryLine(
            e,
            credits.Contains(e.Id) ? credits[e.Id].Select(c => c.Minutes).Sum() : null,
            e.Learners.First(l => l.LearnerId == Learner!.Id).Minutes,
            string.Join(", ", Learners.Where(l => e.Learners.Any(t => t.LearnerId == l.Id)).Select(l => l.Name)),
            written.GetValueOrDefault(e.Id)))];
    }
}
