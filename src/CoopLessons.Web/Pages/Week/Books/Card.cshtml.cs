using System.ComponentModel.DataAnnotations;
using CoopLessons.Data;
using CoopLessons.Data.Prepare;
using CoopLessons.Web.Pages.Account;
using CoopLessons.Web.Pages.Planning;
using Microsoft.EntityFrameworkCore;

namespace CoopLessons.Web.Pages.Books;

/// <summary>What a parent writes about a library card.</summary>
public sealed class CardInput
{
    [Required(ErrorMessage = "Say what it is called.")]
    [StringLength(LibraryCard.LongestName, ErrorMessage = "At most {1} signs here.")]
    [Visible]
    public string Name { get; set; } = "";

    [Required(ErrorMessage = "Say for how many days a book stays.")]
    [Range(1, LibraryCard.MostLoanDays, ErrorMessage = "Give whole days from {1} to {2}.")]
    public int? LoanDays { get; set; } = LibraryCard.UsualLoanDays;

    [Required(ErrorMessage = "Say how often; 0 for not at all.")]
    [Range(0, LibraryCard.MostRenewals, ErrorMessage = "Give a number from {1} to {2}.")]
    public int? Renewals { get; set; } = LibraryCard.UsualRenewals;

    [Range(1, LibraryCard.MostAtOnce, ErrorMessage = "Give a number from {1} to {2}, or leave this empty.")]
    public int? MostBooks { get; set; }

    [Range(1, LibraryCard.MostAtOnce, ErrorMessage = "Give a number from {1} to {2}, or leave this empty.")]
    public int? MostHolds { get; set; }

    [Required(ErrorMessage = "Say how many days a hold takes; 0 where books are there at once.")]
    [Range(0, LibraryCard.MostHoldDays, ErrorMessage = "Give whole days from {1} to {2}.")]
    public int? HoldDays { get; set; } = LibraryCard.UsualHoldDays;

    public CardFacts Read() => new(Name, LoanDays!.Value, Renewals!.Value, MostBooks, MostHolds, HoldDays!.Value);
}

/// <summary>A library card and what it allows.</summary>
public sealed class CardModel(AppDb db, TimeProvider clock) : PlanThingPage<LibraryCard, CardInput>(db, clock)
{
    protected override string Overview => "/week/books/cards";

    protected override IQueryable<LibraryCard> Rows(Guid id) => Db.LibraryCards.Where(c => c.Id == id);

    protected override CardInput FormOf(LibraryCard row) => new()
    {
        Name = row.Name,
        LoanDays = row.LoanDays,
        Renewals = row.Renewals,
        MostBooks = row.MostBooks,
        MostHolds = row.MostHolds,
        HoldDays = row.HoldDays,
    };

    protected override string TitleOf(LibraryCard row) => row.Name;

    protected override bool NamesOwn() => true;

    protected override Task<LibraryCard> MakeAsync(Guid id) => Task.FromResult(new LibraryCard(id, Input.Read()));

    protected override void Write(LibraryCard row) => row.Describe(Input.Read());

    protected override async Task<IReadOnlyList<string>> BecomesAsync(LibraryCard row)
    {
        var books = await Db.Books.CountAsync(b => b.CardId == row.Id, Ct);
        return [books == 0 ? "No book hangs on it." : $"{(books == 1 ? "1 book that hangs on it stays" : $"{books} books that hang on it stay")} written down, without a card."];
    }

    protected override async Task LoosenAsync(LibraryCard row)
    {
        foreach (var book in await Db.Books.Where(b => b.CardId == row.Id).ToListAsync(Ct))
            book.LoseCard();
    }
}
