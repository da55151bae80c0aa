using System.ComponentModel.DataAnnotations;
using CoopLessons.Data.Planning;
using CoopLessons.Web.Pages.Account;
using CoopLessons.Web.Pages.Today;
using Microsoft.AspNetCore.Mvc.ModelBinding;

namespace CoopLessons.Web.Pages.Planning;

/// <summary>What a parent writes about an appointment.</summary>
public sealed class AppointmentInput
{
    private static readonly DateOnly Earliest = new(2000, 1, 1);

    [Required(ErrorMessage = "Say what it is.")]
    [StringLength(Appointment.LongestTitle, ErrorMessage = "At most {1} signs here.")]
    [Visible]
    public string Title { get; set; } = "";

    [EnumDataType(typeof(AppointmentKind), ErrorMessage = "Choose what sort of thing it is.")]
    public AppointmentKind Kind { get; set; }

    [MaxLength(40)]
    public List<Guid> Learners { get; set; } = [];

    [MaxLength(40)]
    public List<Guid> Adults { get; set; } = [];

    public Guid? SubjectId { get; set; }

    [Required(ErrorMessage = "Say on which day it first takes place.")]
    public DateOnly? First { get; set; }

    [Required(ErrorMessage = "Say when it begins.")]
    public TimeOnly? Start { get; set; }

    [Required(ErrorMessage = "Say how many minutes it takes.")]
    [Range(5, 1439, ErrorMessage = "Give whole minutes from {1} to {2}.")]
    public int? Minutes { get; set; }

    [EnumDataType(typeof(RepeatHow), ErrorMessage = "Choose how it comes back.")]
    public RepeatHow How { get; set; }

    [MaxLength(7)]
    public List<DayOfWeek> Days { get; set; } = [];

    public DateOnly? Until { get; set; }

    [StringLength(RepeatRule.Longest, ErrorMessage = "A rule has at most {1} signs.")]
    public string? Rule { get; set; }

    /// <summary>Dates as ISO 8601 writes them, divided by spaces, commas or lines.</summary>
    [StringLength(2000, ErrorMessage = "At most {1} signs here.")]
    public string? Except { get; set; }

    public static AppointmentInput Of(Appointment appointment)
    {
        var choice = RepeatChoice.Of(appointment.Repeats);
        return new AppointmentInput
        {
            Title = appointment.Title,
            Kind = appointment.Kind,
            Learners = [.. appointment.Learners],
            Adults = [.. appointment.Adults],
            SubjectId = appointment.SubjectId,
            First = appointment.First,
            Start = DayWords.TimeOf(appointment.StartsAt),
            Minutes = appointment.Minutes,
            How = choice.How,
            Days = [.. choice.Days],
            Until = choice.Until,
            Rule = choice.Rule,
            Except = string.Join("\n", appointment.Except.Select(d => d.Iso())),
        };
    }

    /// <summary>The facts of a form that was found sound.</summary>
    public AppointmentFacts Read()
    {
        RepeatRule.TryRead(Choice().ToRule(), out var rule, out _);
        return new AppointmentFacts(Title, Kind, Learners, Adults, First!.Value, DayWords.OfDay(Start!.Value), Minutes!.Value, rule.Text, [.. Dates().OfType<DateOnly>()], SubjectId);
    }

    public void Check(ModelStateDictionary state)
    {
        void Fault(string field, string sentence) => state.AddModelError($"Input.{field}", sentence);
        if (First < Earliest || First > DayWords.Latest)
            Fault(nameof(First), "Choose a day between 2000 and 2200.");
        if (Start is { } start && Minutes is { } minutes and <= 1439 && DayWords.OfDay(start) + minutes > 1440)
            Fault(nameof(Minutes), "It would end after midnight. Write the rest as an appointment of the next day.");
        if (Learners.Count + Adults.Count == 0)
            Fault(nameof(Learners), "Tick at least one child or one grown-up.");
        var odd = Words().Where(w => !DayWords.TryRead(w, out _)).ToList();
        if (odd.Count > 0)
            Fault(nameof(Except), $"“{odd[0]}” is no date: write it like 2026-12-24.");
        else if (Words().Length > Appointment.MostExcept)
            Fault(nameof(Except), $"At most {Appointment.MostExcept} days can be left out; give it an end, and begin it anew afterwards.");
        if (state.IsValid)
            CheckRule(Fault);
    }

    private void CheckRule(Action<string, string> fault)
    {
        var first = First!.Value;
        if (How is RepeatHow.Weekly or RepeatHow.EveryOtherWeek && Days.Count == 0)
            fault(nameof(Days), "Tick at least one day of the week.");
        else if (How is RepeatHow.Weekly or RepeatHow.EveryOtherWeek && Until < first)
            fault(nameof(Until), "It ends on or after the first day.");
        else if (How == RepeatHow.OwnRule && string.IsNullOrWhiteSpace(Rule))
            fault(nameof(Rule), "Write a rule, such as FREQ=MONTHLY;BYDAY=1TH.");
        else if (!RepeatRule.TryRead(Choice().ToRule(), out var rule, out var sentence))
            fault(nameof(Rule), sentence);
        else if (rule.Next(first, first, 1) is not [var begins])
            fault(How == RepeatHow.OwnRule ? nameof(Rule) : nameof(Until), "By this it never takes place.");
        else if (begins != first)
            fault(nameof(First), $"By this it first takes place on {begins.InWords(first)}. Choose that day, or other days.");
    }

    private RepeatChoice Choice() => new(How, Days, Until, Rule ?? "");

    private string[] Words() => (Except ?? "").Split([' ', ',', ';', '\n', '\r', '\t'], StringSplitOptions.RemoveEmptyEntries);

    private IEnumerable<DateOnly?> Dates() => Words().Select(w => DayWords.TryRead(w, out var date) ? date : (DateOnly?)null);
}
