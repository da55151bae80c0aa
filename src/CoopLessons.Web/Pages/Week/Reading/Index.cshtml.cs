using System.ComponentModel.DataAnnotations;
using CoopLessons.Core.Prepare.Books;
using CoopLessons.Core.Units;
using CoopLessons.Data;
using CoopLessons.Data.Families;
using CoopLessons.Data.Prepare;
using CoopLessons.Web.Pages.Today;
using Microsoft.AspNetCore.Mvc;
using Microsoft.EntityFrameworkCore;

namespace CoopLessons.Web.Pages.ReadingAloud;

/// <summary>What was read aloud on a day.</summary>
public sealed class SittingInput
{
    [Required(ErrorMessage = "Say on which day it was read.")]
    public DateOnly? Date { get; set; }

    [Required(ErrorMessage = "Say with which chapter it began.")]
    [Range(1, ChapterText.MostChapters, ErrorMessage = "Give a chapter from {1} to {2}.")]
    public int? From { get; set; }

    [Required(ErrorMessage = "Say with which chapter it ended.")]
    [Range(1, ChapterText.MostChapters, ErrorMessage = "Give a chapter from {1} to {2}.")]
    public int? To { get; set; }

    [Range(1, ReadingSitting.MostMinutes, ErrorMessage = "Give whole minutes from {1} to {2}, or leave this empty.")]
    public int? Minutes { get; set; }
}

/// <summary>A book that is read aloud: the evenings that are left with their chapters, and what was read, in one tap.</summary>
public sealed class IndexModel(AppDb db, TimeProvider clock) : FamilyPage(db, clock)
{
    private const int MostPaces = 5;

    [BindProperty]
    public SittingInput Input { get; set; } = new();

    /// <summary>Made with the page, so that a tap sent twice is one sitting.</summary>
    [BindProperty]
    public Guid NewId { get; set; }

    public BookTitle Book { get; private set; } = null!;

    /// <summary>Null where no evenings were chosen yet, or no chapters written.</summary>
    public ReadAloud? Reading { get; private set; }

    public IReadOnlyList<Learner> Hearers { get; private set; } = [];

    /// <summary>When the book ends with so many chapters each evening.</summary>
    public IReadOnlyList<(int Chapters, DateOnly Ends)> Paces { get; private set; } = [];

    public async Task<IActionResult> OnGetAsync(Guid bookId)
    {
        if (!await FindAsync(bookId))
            return NotFound();
        NewId = Guid.CreateVersion7();
        Propose();
        return Page();
    }

    public async Task<IActionResult> OnPostAsync(Guid bookId)
    {
        if (!await FindAsync(bookId))
            return NotFound();
        if (NewId == Guid.Empty)
            return BadRequest();
        if (await Db.ReadingSittings.AnyAsync(s => s.Id == NewId, Ct))
            return LocalRedirect($"/week/reading/{bookId}");
        Check();
        if (!ModelState.IsValid)
            return Again();
        var (from, to, date) = (Input.From!.Value, Input.To!.Value, Input.Date!.Value);
        Db.ReadingSittings.Add(new ReadingSitting(NewId, bookId, date, from, to, Input.Minutes));
        var read = Reading!.Now.Left.All(c => c.Number >= from && c.Number <= to);
        foreach (var meeting in read ? await HeardAsync(bookId, true) : [])
            meeting.Finish(date);
        if (!await SaveNewAsync() && !await Db.ReadingSittings.AnyAsync(s => s.Id == NewId, Ct))
        {
            await FindAsync(bookId);
            return AgainAfterOthers();
        }

        Say(read ? $"“{Book.Title}” is read to the end." : $"{Capital(LengthWords.Chapters(Enumerable.Range(from, to - from + 1)))} of “{Book.Title}” {(from == to ? "is" : "are")} read.");
        return LocalRedirect($"/week/reading/{bookId}");
    }

    /// <summary>Not read after all.</summary>
    public async Task<IActionResult> OnPostTakeBackAsync(Guid bookId, Guid sittingId)
    {
        ModelState.Clear();
        if (!await FindAsync(bookId) || await Db.ReadingSittings.SingleOrDefaultAsync(s => s.Id == sittingId && s.BookId == bookId, Ct) is not { } sitting)
            return NotFound();
        Db.Remove(sitting);
        if (Reading?.Now.IsRead == true)
        {
            foreach (var meeting in (await HeardAsync(bookId, false)).Where(m => m is { EndedOn: not null, Unfinished: false }))
                meeting.Describe(meeting.Facts with { EndedOn = null });
        }

        if (!await SaveAsync())
        {
            await FindAsync(bookId);
            Propose();
            return Again(StatusCodes.Status409Conflict);
        }

        Say($"{Capital(LengthWords.Chapters(Enumerable.Range(sitting.FromChapter, sitting.ToChapter - sitting.FromChapter + 1)))} {(sitting.FromChapter == sitting.ToChapter ? "is" : "are")} to be read again.");
        return LocalRedirect($"/week/reading/{bookId}");
    }

    public string Minutes(int tenths) => $"about {DayWords.Length(Reading!.MinutesFor(tenths))}";

    /// <summary>Those whose reading aloud is known to go on, or the last that ended.</summary>
    private async Task<IReadOnlyList<BookMeeting>> HeardAsync(Guid bookId, bool open)
    {
        var heard = await Db.BookMeetings.Where(m => m.BookId == bookId && m.How == BookUse.Heard).OrderByDescending(m => m.BegunOn).ThenBy(m => m.Id).ToListAsync(Ct);
        return open ? [.. heard.Where(m => m.EndedOn is null)] : [.. heard.Take(1)];
    }

    private void Check()
    {
        if (Reading is null)
            ModelState.AddModelError("", "Write the chapters and choose the evenings first.");
        if (Input.Date > Today)
            ModelState.AddModelError("Input.Date", $"That day is still to come. Today is {Today.InWords()}.");
        if (Input.Date is { Year: < 2000 })
            ModelState.AddModelError("Input.Date", "Choose a day from the year 2000 on.");
        if (Input.To < Input.From)
            ModelState.AddModelError("Input.To", "The last chapter comes after the first.");
        if (Input.To > Book.Chapters.Count)
            ModelState.AddModelError("Input.To", $"The book has {(Book.Chapters.Count == 1 ? "1 chapter" : $"{Book.Chapters.Count} chapters")}.");
    }

    private void Propose()
    {
        if (Reading is not { Now.IsRead: false } reading)
            return;
        var next = reading.Now.Next?.Planned.Chapters ?? [reading.Now.Left[0]];
        // Where chapters were read out of order, only those up to the first that was read.
        var last = next.TakeWhile((c, i) => c.Number == next[0].Number + i).Last();
        Input = new SittingInput { Date = Today, From = next[0].Number, To = last.Number };
    }

    private async Task<bool> FindAsync(Guid id)
    {
        if (await Db.Books.AsNoTracking().SingleOrDefaultAsync(b => b.Id == id, Ct) is not { } book)
            return false;
        Book = book;
        Reading = await ReadAloud.LoadAsync(Db, id, Today, Ct);
        var heard = await HeardAsync(id, false);
        Hearers = [.. (await Db.Learners.AsNoTracking().OrderBy(l => l.Order).ThenBy(l => l.Id).ToListAsync(Ct)).Where(l => heard.Any(m => m.Learners.Contains(l.Id)))];
        var paces = Reading is null ? [] : Enumerable.Range(1, MostPaces).Select(n => (n, Reading.Now.EndsWith(n))).Where(p => p.Item2 is not null).Select(p => (p.n, p.Item2!.Value)).ToList();
        // One more chapter an evening than are left changes nothing.
        Paces = [.. paces.Where((p, i) => i == 0 || p.Item2 != paces[i - 1].Item2)];
        return true;
    }

    private static string Capital(string text) => char.ToUpperInvariant(text[0]) + text[1..];
}
