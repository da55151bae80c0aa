using System.ComponentModel.DataAnnotations;
using CoopLessons.Core.Calendar;
using CoopLessons.Core.Prepare.Books;
using CoopLessons.Core.Units;
using CoopLessons.Data;
using CoopLessons.Data.Prepare;
using CoopLessons.Data.Schedule;
using CoopLessons.Web.Pages.Planning;
using Microsoft.AspNetCore.Mvc;
using Microsoft.EntityFrameworkCore;

namespace CoopLessons.Web.Pages.ReadingAloud;

/// <summary>What a parent writes about the evenings of a book.</summary>
public sealed class ReadingPlanInput : IValidatableObject
{
    [Required(ErrorMessage = "Write at least one chapter with its pages or minutes.")]
    [StringLength(20_000, ErrorMessage = "These are too many signs for a list of chapters.")]
    public string? Chapters { get; set; }

    [EnumDataType(typeof(BookMeasure), ErrorMessage = "Choose one of the two.")]
    public BookMeasure Measure { get; set; }

    [Required(ErrorMessage = "Say when reading begins.")]
    public DateOnly? First { get; set; }

    [Required(ErrorMessage = "Say on which day the book is to end.")]
    public DateOnly? Last { get; set; }

    [EnumDataType(typeof(ReadingDays), ErrorMessage = "Choose on which evenings you read.")]
    public ReadingDays On { get; set; }

    [MaxLength(7)]
    public List<DayOfWeek> Weekdays { get; set; } = [];

    [MaxLength(40)]
    public List<Guid> Learners { get; set; } = [];

    public Weekdays Chosen => Weekdays.Aggregate(Core.Calendar.Weekdays.None, (all, day) => all | WeekdaysReading.Of(day));

    public IEnumerable<ValidationResult> Validate(ValidationContext validationContext)
    {
        if (First is { Year: < 2000 or > 2200 })
            yield return new ValidationResult("Choose a day from the year 2000 on.", [nameof(First)]);
        if (Last < First)
            yield return new ValidationResult("The last day is on or after the first.", [nameof(Last)]);
        else if (First is { } first && Last > first.AddDays(ReadAloudPlan.MostDays - 1))
            yield return new ValidationResult("A book is read within a year; choose an earlier last day.", [nameof(Last)]);
        if (On == ReadingDays.Chosen && Weekdays.Count == 0)
            yield return new ValidationResult("Tick the weekdays on which you read.", [nameof(Weekdays)]);
        if (Weekdays.Any(d => !Enum.IsDefined(d)))
            yield return new ValidationResult("Choose among the seven weekdays.", [nameof(Weekdays)]);
        if (Learners.Count == 0)
            yield return new ValidationResult("Tick at least one child.", [nameof(Learners)]);
    }
}

/// <summary>The chapters of a book and the evenings on which it is read aloud.</summary>
public sealed class PlanModel(AppDb db, TimeProvider clock) : FamilyPage(db, clock)
{
    private const int UsualDays = 14;

    [BindProperty]
    public ReadingPlanInput Input { get; set; } = new();

    [BindProperty]
    public int Version { get; set; }

    public BookTitle Book { get; private set; } = null!;
    public ReadAloudPlan? Plan { get; private set; }
    public PlanChoices Choices { get; private set; } = PlanChoices.None;
    private BookMeeting? Heard { get; set; }

    public async Task<IActionResult> OnGetAsync(Guid bookId)
    {
        if (!await FindAsync(bookId))
            return NotFound();
        Version = Plan?.Version ?? 0;
        Input = new ReadingPlanInput
        {
            Chapters = ChapterText.Of(Book.Chapters),
            Measure = Book.Measure,
            First = Plan?.First ?? Today,
            Last = Plan?.Last ?? Today.AddDays(UsualDays - 1),
            On = Plan?.On ?? ReadingDays.EveryEvening,
            Weekdays = [.. Enum.GetValues<DayOfWeek>().Where(d => Plan?.Chosen.Holds(d) == true)],
            Learners = [.. Heard?.Learners ?? Choices.Taught.Select(l => l.Id)],
        };
        return Page();
    }

    public async Task<IActionResult> OnPostAsync(Guid bookId)
    {
        if (!await FindAsync(bookId) || !Choices.HasLearners(Input.Learners))
            return NotFound();
        var chapters = await CheckAsync(bookId);
        if (!ModelState.IsValid)
            return Again();
        var days = new DayRange(Input.First!.Value, Input.Last!.Value);
        Book.HasChapters(chapters);
        Book.Describe(Book.Facts with { Measure = Input.Measure });
        if (Plan is null)
        {
            Db.ReadAloudPlans.Add(new ReadAloudPlan(bookId, days, Input.On, Input.Chosen));
        }
        else
        {
            Plan.Run(days, Input.On, Input.Chosen);
            Expect(Plan, Version);
        }

        if (Heard is null)
            Db.BookMeetings.Add(new BookMeeting(Guid.CreateVersion7(), bookId, new MeetingFacts(Input.Learners, BookUse.Heard, days.First, null, false, "")));
        else
            Heard.Describe(Heard.Facts with { Learners = Input.Learners });
        if (!await SaveNewAsync())
        {
            if (!await FindAsync(bookId))
                return NotFound();
            Version = Plan?.Version ?? 0;
            ModelState.Remove(nameof(Version));
            return AgainAfterOthers();
        }

        Say($"The evenings of “{Book.Title}” are saved.");
        return LocalRedirect($"/week/reading/{bookId}");
    }

    /// <summary>The book is not read aloud any more; what was read of it stays.</summary>
    public async Task<IActionResult> OnPostStopAsync(Guid bookId)
    {
        ModelState.Clear();
        if (!await FindAsync(bookId))
            return NotFound();
        if (Plan is not null)
        {
            Db.Remove(Plan);
            if (!await SaveAsync())
                return LocalRedirect($"/week/reading/{bookId}/plan");
            Say($"“{Book.Title}” has no evenings any more. What was read of it stays.");
        }

        return LocalRedirect($"/week/books/{bookId}");
    }

    private async Task<IReadOnlyList<BookChapter>> CheckAsync(Guid bookId)
    {
        if (Input.Chapters is { Length: > 0 } text && !ChapterText.TryRead(text, out _, out var fault))
            ModelState.AddModelError("Input.Chapters", fault);
        if (!ModelState.IsValid)
            return [];
        ChapterText.TryRead(Input.Chapters, out var chapters, out _);
        var read = await Db.ReadingSittings.Where(s => s.BookId == bookId).Select(s => (int?)s.ToChapter).MaxAsync(Ct) ?? 0;
        if (chapters.Count == 0)
            ModelState.AddModelError("Input.Chapters", "Write at least one chapter with its pages or minutes.");
        else if (chapters.Count < read)
            ModelState.AddModelError("Input.Chapters", $"Chapter {read} was read already; these are only {chapters.Count}.");
        var plan = new ReadAloudPlan(bookId, new DayRange(Input.First!.Value, Input.Last!.Value), Input.On, Input.Chosen);
        if (!plan.EveningsIn(plan.Days, await TeachingDays.LoadAsync(Db, Ct)).Any())
            ModelState.AddModelError("Input.On", "No such evening lies between these days.");
        return chapters;
    }

    private async Task<bool> FindAsync(Guid id)
    {
        if (await Db.Books.SingleOrDefaultAsync(b => b.Id == id, Ct) is not { } book)
            return false;
        Book = book;
        Plan = await Db.ReadAloudPlans.SingleOrDefaultAsync(p => p.BookId == id, Ct);
        Choices = await PlanChoices.LoadAsync(Db, Ct);
        Heard = await Db.BookMeetings.Where(m => m.BookId == id && m.How == BookUse.Heard && m.EndedOn == null).OrderByDescending(m => m.BegunOn).ThenBy(m => m.Id).FirstOrDefaultAsync(Ct);
        return true;
    }
}
