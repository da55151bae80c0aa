using System.Globalization;
using CoopLessons.Core.Prepare.Printing;
using CoopLessons.Data;
using CoopLessons.Data.Prepare.Printing;
using CoopLessons.Web.Pages.Today;
using Microsoft.AspNetCore.Mvc;
using Microsoft.EntityFrameworkCore;

namespace CoopLessons.Web.Pages.Packet;

/// <summary>What printing costs the family, on which paper and on how many sides of it.</summary>
public sealed class PricesModel(AppDb db, TimeProvider clock) : FamilyPage(db, clock)
{
    private const string NotUnderstood = "Give cents with at most one place after the point, such as 2.5.";

    public sealed class InputModel
    {
        public string? Grey { get; set; }
        public string? Colour { get; set; }
        public string? Sheet { get; set; }
        public PaperSize Paper { get; set; }
        public bool BothSides { get; set; }
    }

    [BindProperty]
    public InputModel Input { get; set; } = new();

    /// <summary>Of the row that was shown; -1 where there was none.</summary>
    [BindProperty]
    public int Version { get; set; } = -1;

    /// <summary>The week whose packet the page was opened from.</summary>
    public string? Back { get; private set; }

    public async Task OnGetAsync(string? back)
    {
        Remember(back);
        var row = await Db.PrintHabits.AsNoTracking().SingleOrDefaultAsync(Ct);
        var habits = row ?? PrintHabits.Usual;
        Version = row?.Version ?? -1;
        Input = new InputModel
        {
            Grey = PacketWords.Cents(habits.GreyTenths),
            Colour = PacketWords.Cents(habits.ColourTenths),
            Sheet = PacketWords.Cents(habits.PaperTenths),
            Paper = habits.Paper,
            BothSides = habits.BothSides,
        };
    }

    public async Task<IActionResult> OnPostAsync(string? back)
    {
        Remember(back);
        var prices = new PrintPrices(Tenths(nameof(Input.Grey), Input.Grey), Tenths(nameof(Input.Colour), Input.Colour), Tenths(nameof(Input.Sheet), Input.Sheet));
        if (!ModelState.IsValid)
            return Again();
        var row = await Db.PrintHabits.SingleOrDefaultAsync(Ct);
        if (row is null)
            Db.PrintHabits.Add(row = new PrintHabits());
        else
            Expect(row, Version);
        row.Describe(prices, Input.BothSides, Input.Paper);
        var isNew = Version < 0;
        if (isNew ? !await SaveNewAsync() : !await SaveAsync())
            return isNew ? AgainAfterOthers() : Again(StatusCodes.Status409Conflict);
        Say("How you print is saved.");
        return LocalRedirect(Back is null ? "/week/packet/prices" : $"/week/packet/{Back}");
    }

    private void Remember(string? back) => Back = DayWords.TryWeek(back, out var week) ? week.Iso : null;

    private int Tenths(string name, string? text)
    {
        text = (text ?? "").Trim().Replace(',', '.');
        if (!decimal.TryParse(text, NumberStyles.AllowDecimalPoint, CultureInfo.InvariantCulture, out var cents))
            ModelState.AddModelError($"Input.{name}", NotUnderstood);
        else if (cents > PrintPrices.Most / 10)
            ModelState.AddModelError($"Input.{name}", $"At most {PrintPrices.Most / 10} cents here.");
        else if (cents * 10 != decimal.Truncate(cents * 10))
            ModelState.AddModelError($"Input.{name}", NotUnderstood);
        else
            return (int)(cents * 10);
        return 0;
    }
}
