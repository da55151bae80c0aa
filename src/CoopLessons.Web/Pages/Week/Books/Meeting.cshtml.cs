using System.ComponentModel.DataAnnotations;
using CoopLessons.Core.Units;
using CoopLessons.Data;
using CoopLessons.Data.Prepare;
using CoopLessons.Web.Pages.Planning;
using Microsoft.AspNetCore.Mvc;
using Microsoft.AspNetCore.Mvc.Filters;
using Microsoft.EntityFrameworkCore;

namespace CoopLessons.Web.Pages.Books;

/// <summary>What a parent writes about children who meet a book.</summary>
public sealed class MeetingInput : IValidatableObject
{
    [MaxLength(40)]
    public List<Guid> Learners { get; set; } = [];

    [EnumDataType(typeof(BookUse), ErrorMessage = "Choose how it is met.")]
    public BookUse How { get; set; } = BookUse.ReadAlone;

    [Required(ErrorMessage = "Say when it was begun.")]
    public DateOnly? BegunOn { get; set; }

    public DateOnly? EndedOn { get; set; }

    public bool Unfinished { get; set; }

    [StringLength(BookMeeting.LongestNote, ErrorMessage = "A note has at most {1} signs.")]
    public string? Note { get; set; }

    public MeetingFacts Read() => new(Learners, How, BegunOn!.Value, EndedOn, Unfinished, Note ?? "");

    public IEnumerable<ValidationResult> Validate(ValidationContext validationContext)
    {
        if (Learners.Count == 0)
            yield return new ValidationResult("Tick at least one child.", [nameof(Learners)]);
        if (BegunOn is { Year: < 2000 or > 2200 })
            yield return new ValidationResult("Choose a day from the year 2000 on.", [nameof(BegunOn)]);
        if (EndedOn is { Year: > 2200 } || EndedOn < BegunOn)
            yield return new ValidationResult("It cannot end before it was begun.", [nameof(EndedOn)]);
        if (Unfinished && EndedOn is null)
            yield return new ValidationResult("Say on which day it was put away.", [nameof(EndedOn)]);
    }
}

/// <summary>Children who meet a book: a line of their reading lists.</summary>
public sealed class MeetingModel(AppDb db, TimeProvider clock) : PlanThingPage<BookMeeting, MeetingInput>(db, clock)
{
    [BindProperty(SupportsGet = true)]
    public Guid BookId { get; set; }

    public BookTitle Book { get; private set; } = null!;

    public override async Task OnPageHandlerExecutionAsync(PageHandlerExecutingContext context, PageHandlerExecutionDelegate next)
    {
        if (await Db.Books.AsNoTracking().SingleOrDefaultAsync(b => b.Id == BookId, Ct) is not { } book)
        {
            context.Result = NotFound();
            return;
        }

        Book = book;
        await base.OnPageHandlerExecutionAsync(context, next);
    }

    protected override string Overview => $"/week/books/{BookId}";

    protected override IQueryable<BookMeeting> Rows(Guid id) => Db.BookMeetings.Where(m => m.Id == id && m.BookId == BookId);

    protected override MeetingInput FormOf(BookMeeting row) => new()
    {
        Learners = [.. row.Learners],
        How = row.How,
        BegunOn = row.BegunOn,
        EndedOn = row.EndedOn,
        Unfinished = row.Unfinished,
        Note = row.Note,
    };

    protected override string TitleOf(BookMeeting row) => Book.Title;

    protected override bool NamesOwn() => Choices.HasLearners(Input.Learners);

    protected override Task BeginAsync()
    {
        Input = new MeetingInput { BegunOn = Today };
        return Task.CompletedTask;
    }

    protected override Task<BookMeeting> MakeAsync(Guid id) => Task.FromResult(new BookMeeting(id, BookId, Input.Read()));

    protected override void Write(BookMeeting row) => row.Describe(Input.Read());

    protected override Task<IReadOnlyList<string>> BecomesAsync(BookMeeting row) =>
        Task.FromResult<IReadOnlyList<string>>(["This line goes from the children’s reading lists. The book itself stays."]);
}
