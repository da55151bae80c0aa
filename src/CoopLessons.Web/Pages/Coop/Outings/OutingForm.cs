using System.ComponentModel.DataAnnotations;
using System.Globalization;
using CoopLessons.Data.Coops.Days;
using CoopLessons.Web.Pages.Account;
using CoopLessons.Web.Pages.Today;
using Microsoft.AspNetCore.Mvc.ModelBinding;

namespace CoopLessons.Web.Pages.Coops;

/// <summary>What somebody fills in for an outing.</summary>
public sealed class OutingForm
{
    private const decimal MostMoney = 10_000;

    public Guid NewId { get; set; }
    public int Version { get; set; }

    [Required(ErrorMessage = "Give the outing a name.")]
    [StringLength(CoopOuting.LongestName, ErrorMessage = "A name has at most {1} signs.")]
    [Visible]
    public string? Name { get; set; }

    [Required(ErrorMessage = "Choose a day.")]
    public DateOnly? On { get; set; }

    [Required(ErrorMessage = "Say where it goes.")]
    [StringLength(CoopOuting.LongestPlace, ErrorMessage = "At most {1} signs here.")]
    public string? Where { get; set; }

    [Required(ErrorMessage = "Say where everybody meets.")]
    [StringLength(CoopOuting.LongestPlace, ErrorMessage = "At most {1} signs here.")]
    public string? MeetAt { get; set; }

    [Required(ErrorMessage = "Say when everybody meets.")]
    public TimeOnly? From { get; set; }

    [Required(ErrorMessage = "Say when it is over.")]
    public TimeOnly? Back { get; set; }

    [StringLength(CoopOuting.LongestNote, ErrorMessage = "At most {1} signs here.")]
    public string? Note { get; set; }

    [Required(ErrorMessage = "Say how many days before, from 0 to 60.")]
    [Range(0, 60, ErrorMessage = "Say how many days before, from 0 to 60.")]
    public int? CancelDays { get; set; } = 3;

    /// <summary>“4.50”; empty for nothing.</summary>
    public string? Child { get; set; }

    public string? Adult { get; set; }

    [Range(1, 100, ErrorMessage = "Give a number from 1 to 100, or leave this empty.")]
    public int? ChildrenPerFreeAdult { get; set; }

    public static OutingForm Of(CoopOuting known) => new()
    {
        Version = known.Version,
        Name = known.Name,
        On = known.On,
        Where = known.Where,
        MeetAt = known.MeetAt,
        From = known.From,
        Back = known.Back,
        Note = known.Note,
        CancelDays = known.CancelDays,
        Child = Core.Coop.CoopWords.Money(known.ChildCents),
        Adult = Core.Coop.CoopWords.Money(known.AdultCents),
        ChildrenPerFreeAdult = known.ChildrenPerFreeAdult,
    };

    /// <summary>Null where something is missing or wrong, with a message beside its field.</summary>
    /// <param name="earliest">The first day that it may be on.</param>
    public OutingFacts? Read(ModelStateDictionary state, DateOnly earliest)
    {
        if (On is { } on && (on < earliest || on > DayWords.Latest))
            state.AddModelError("Input.On", "Choose a day that is still to come.");
        if (Back <= From)
            state.AddModelError("Input.Back", "It is over after it begins.");
        var (child, adult) = (Cents(Child, nameof(Child), state), Cents(Adult, nameof(Adult), state));
        return state.IsValid
            ? new(Name!.Trim(), On!.Value, Where!.Trim(), MeetAt!.Trim(), From!.Value, Back!.Value, Note?.Trim() ?? "", CancelDays!.Value, child, adult, ChildrenPerFreeAdult)
            : null;
    }

    private static int Cents(string? text, string field, ModelStateDictionary state)
    {
        if (string.IsNullOrWhiteSpace(text))
            return 0;
        if (decimal.TryParse(text.Trim(), NumberStyles.AllowDecimalPoint, CultureInfo.InvariantCulture, out var money) && money is >= 0 and <= MostMoney && decimal.Round(money, 2) == money)
            return (int)(money * 100);
        state.AddModelError($"Input.{field}", "Give an amount such as 4.50, or leave this empty.");
        return 0;
    }
}
