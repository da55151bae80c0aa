using System.ComponentModel.DataAnnotations;
using CoopLessons.Data;
using CoopLessons.Data.Prepare;
using Microsoft.AspNetCore.Mvc;
using Microsoft.EntityFrameworkCore;

namespace CoopLessons.Web.Pages.Books;

/// <summary>The taps that a loan offers.</summary>
/// <param name="OnTheTrip">Shown on the list of the library trip, which is shown again after a tap.</param>
public sealed record LoanTaps(BookTitle Book, bool OnTheTrip);

/// <summary>The days of a loan as the parent sets them.</summary>
public sealed class LoanInput : IValidatableObject
{
    public DateOnly? HoldPlacedOn { get; set; }
    public DateOnly? FetchedOn { get; set; }
    public DateOnly? DueOn { get; set; }

    [Required(ErrorMessage = "Say how often; 0 for not yet.")]
    [Range(0, LibraryCard.MostRenewals, ErrorMessage = "Give a number from {1} to {2}.")]
    public int? Renewed { get; set; }

    public DateOnly? ReturnedOn { get; set; }

    public BookLoan Read() => new(HoldPlacedOn, FetchedOn, DueOn, Renewed ?? 0, ReturnedOn);

    public IEnumerable<ValidationResult> Validate(ValidationContext validationContext)
    {
        foreach (var (day, field) in new[] { (HoldPlacedOn, nameof(HoldPlacedOn)), (FetchedOn, nameof(FetchedOn)), (DueOn, nameof(DueOn)), (ReturnedOn, nameof(ReturnedOn)) })
        {
            if (day is { Year: < 2000 or > 2200 })
                yield return new ValidationResult("Choose a day from the year 2000 on.", [field]);
        }

        if (FetchedOn < HoldPlacedOn)
            yield return new ValidationResult("It cannot be here before the hold was placed.", [nameof(FetchedOn)]);
        if (DueOn is not null && FetchedOn is null)
            yield return new ValidationResult("Say when it came; only a book that is here is due.", [nameof(FetchedOn)]);
        if (DueOn < FetchedOn)
            yield return new ValidationResult("It cannot be due before it came.", [nameof(DueOn)]);
        if (ReturnedOn is not null && FetchedOn is null)
            yield return new ValidationResult("Say when it came; only a book that was here is taken back.", [nameof(FetchedOn)]);
        if (ReturnedOn < FetchedOn)
            yield return new ValidationResult("It cannot go back before it came.", [nameof(ReturnedOn)]);
    }
}

/// <summary>A loan: hold, fetched, due, renewed, taken back; each in one tap, or day by day.</summary>
public sealed class LoanModel(AppDb db, TimeProvider clock) : FamilyPage(db, clock)
{
    [BindProperty]
    public LoanInput Input { get; set; } = new();

    [BindProperty]
    public int Version { get; set; }

    public BookTitle Book { get; private set; } = null!;
    public LibraryCard? Card { get; private set; }

    public async Task<IActionResult> OnGetAsync(Guid bookId)
    {
        if (!await FindAsync(bookId))
            return NotFound();
        Fill();
        return Page();
    }

    public async Task<IActionResult> OnPostAsync(Guid bookId)
    {
        if (!await FindAsync(bookId))
            return NotFound();
        if (!ModelState.IsValid)
            return Again();
        Book.SetLoan(Input.Read());
        Expect(Book, Version);
        if (!await SaveAsync())
        {
            if (!await FindAsync(bookId))
                return NotFound();
            Version = Book.Version;
            ModelState.Remove(nameof(Version));
            return Again(StatusCodes.Status409Conflict);
        }

        Say($"“{Book.Title}” is saved.");
        return LocalRedirect($"/week/books/{bookId}");
    }

    public Task<IActionResult> OnPostHoldAsync(Guid bookId, bool trip) => TapAsync(bookId, trip, () =>
    {
        if (Book.Source != BookSource.Library || Book.IsOut || Book.IsOnHold)
            return null;
        Book.PlaceHold(Today);
        return $"A hold on “{Book.Title}” is placed.";
    });

    public Task<IActionResult> OnPostFetchAsync(Guid bookId, bool trip) => TapAsync(bookId, trip, () =>
    {
        if (!Book.IsLent || Book.IsOut)
            return null;
        Book.Fetch(Today, Book.Source == BookSource.Library ? Card?.LoanDays ?? LibraryCard.UsualLoanDays : null);
        return $"“{Book.Title}” is here" + (Book.DueOn is { } due ? $", {BookWords.DueOn(due, Today)}." : ".");
    });

    public Task<IActionResult> OnPostRenewAsync(Guid bookId, bool trip) => TapAsync(bookId, trip, () =>
    {
        if (!Book.IsOut)
            return null;
        var most = Card?.Renewals ?? LibraryCard.UsualRenewals;
        if (Book.Renewed >= most)
        {
            ModelState.AddModelError("Input.Renewed", most == 0 ? "This card allows no renewals." : $"This card allows {(most == 1 ? "1 renewal" : $"{most} renewals")}, and {(most == 1 ? "it is" : "all are")} used. Write the day here if the library gave you more time.");
            return null;
        }

        Book.Renew(Today, Card?.LoanDays ?? LibraryCard.UsualLoanDays);
        return $"“{Book.Title}” is renewed, {BookWords.DueOn(Book.DueOn!.Value, Today)}.";
    });

    public Task<IActionResult> OnPostReturnAsync(Guid bookId, bool trip) => TapAsync(bookId, trip, () =>
    {
        if (!Book.IsOut)
            return null;
        Book.Return(Today);
        return $"“{Book.Title}” is taken back.";
    });

    /// <summary>A book that was to be bought is the family's own.</summary>
    public Task<IActionResult> OnPostBoughtAsync(Guid bookId, bool trip) => TapAsync(bookId, trip, () =>
    {
        if (Book.Source != BookSource.ToBuy)
            return null;
        Book.Describe(Book.Facts with { Source = BookSource.Own });
        return $"“{Book.Title}” is your own.";
    });

    /// <param name="change">Changes the book and says so; null where there was nothing to change.</param>
    private async Task<IActionResult> TapAsync(Guid bookId, bool trip, Func<string?> change)
    {
        // The fields of the other form did not come with a tap.
        var version = Version;
        ModelState.Clear();
        if (!await FindAsync(bookId))
            return NotFound();
        // A tap sent twice, or after somebody else's, changes nothing more.
        if (Book.Version == version)
        {
            var said = change();
            if (!ModelState.IsValid)
            {
                Fill();
                return Again();
            }

            if (!await SaveAsync())
            {
                await FindAsync(bookId);
                Fill();
                return Again(StatusCodes.Status409Conflict);
            }

            if (said is not null)
                Say(said);
        }

        return LocalRedirect(trip ? "/week/books/trip" : $"/week/books/{bookId}");
    }

    private void Fill()
    {
        Version = Book.Version;
        Input = new LoanInput { HoldPlacedOn = Book.HoldPlacedOn, FetchedOn = Book.FetchedOn, DueOn = Book.DueOn, Renewed = Book.Renewed, ReturnedOn = Book.ReturnedOn };
    }

    private async Task<bool> FindAsync(Guid id)
    {
        if (await Db.Books.SingleOrDefaultAsync(b => b.Id == id, Ct) is not { } book)
            return false;
        Book = book;
        Card = book.CardId is { } card ? await Db.LibraryCards.AsNoTracking().SingleOrDefaultAsync(c => c.Id == card, Ct) : null;
        return true;
    }
}
