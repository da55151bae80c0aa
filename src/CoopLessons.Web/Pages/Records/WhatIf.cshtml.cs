using System.ComponentModel.DataAnnotations;
using CoopLessons.Core.Calendar;
using CoopLessons.Core.Requirements;
using CoopLessons.Core.Requirements.Standing;
using CoopLessons.Data;
using CoopLessons.Data.Hours;
using CoopLessons.Data.Requirements;
using Microsoft.AspNetCore.Mvc;
using Microsoft.AspNetCore.Mvc.ModelBinding;

namespace CoopLessons.Web.Pages.Records;

/// <summary>A column of the comparison.</summary>
public sealed record SupposedStanding(string Heading, IReadOnlyList<PathwayStanding> Standings);

/// <summary>The same log read under another rule or another calendar, side by side. Nothing is kept of it.</summary>
public sealed class WhatIfModel(AppDb db, TimeProvider clock) : StandingPage(db, clock)
{
    /// <summary>More would not stand side by side.</summary>
    public const int MostPathways = 4;

    [BindProperty(SupportsGet = true)]
    public SupposedInput Input { get; set; } = new();

    public IReadOnlyList<SupposedStanding> Columns { get; private set; } = [];

    public IReadOnlyList<KnownPathway> Choices { get; private set; } = [];

    public async Task<IActionResult> OnGetAsync()
    {
        if (!await FindStandingAsync() || Learner is null || Year is null || Log is null)
            return NotFound();
        var known = await KnownPathways.LoadAsync(Db, Ct);
        Choices = known.All;
        Input.Under.RemoveAll(string.IsNullOrEmpty);
        var others = Input.Under.Distinct().Select(u => Choices.FirstOrDefault(c => SupposedInput.KeyOf(c) == u)).OfType<KnownPathway>().Take(MostPathways).ToList();
        Check(others);
        if (!ModelState.IsValid)
            return Again();

        DayRange? away = Input is { AwayFrom: { } first, AwayTo: { } last } ? new DayRange(first, last) : null;
        var supposed = others.Count == 0
            ? [(Told(null, away), new Supposition(away, null, null))]
            : others.Select(o => (Told(o, away), new Supposition(away, Other(o, known), Input.Since))).ToList();
        var log = await LogForAsync(supposed.Select(s => s.Item2));
        Columns =
        [
            new SupposedStanding("As it is", Standing!.Standings),
            .. away is null && others.Count == 0 ? [] : supposed.Select(s => new SupposedStanding(s.Item1, s.Item2.Of(Question(log), Standing.Law.Spans))),
        ];
        return Page();
    }

    private void Check(List<KnownPathway> others)
    {
        if (others.Count != Input.Under.Distinct().Count())
            ModelState.AddModelError("Input.Under", $"Choose at most {MostPathways} pathways from the list.");
        if (IsSound(nameof(Input.AwayFrom)) && IsSound(nameof(Input.AwayTo)))
            CheckAway();
        if (Input.Since is { } since && !Year!.Days.Contains(since))
            ModelState.AddModelError("Input.Since", $"Choose a day of {Year.Name}.");
        if (Input.Since is not null && Input.Under.Count == 0)
            ModelState.AddModelError("Input.Under", "Choose the pathway that would hold from that day.");
    }

    private void CheckAway()
    {
        if (Input.AwayFrom is null != Input.AwayTo is null)
            ModelState.AddModelError(Input.AwayFrom is null ? "Input.AwayFrom" : "Input.AwayTo", "Give both the first and the last day away.");
        else if (Input.AwayTo < Input.AwayFrom)
            ModelState.AddModelError("Input.AwayTo", "The last day away lies before the first.");
        else if (Input is { AwayFrom: { } first, AwayTo: { } last } && !Year!.Days.Overlaps(new DayRange(first, last)))
            ModelState.AddModelError("Input.AwayFrom", $"These days lie outside {Year.Name}.");
    }

    private bool IsSound(string field) => ModelState.GetFieldValidationState($"Input.{field}") != ModelValidationState.Invalid;

    private OtherPathway Other(KnownPathway known, KnownPathways all) => new(
        known.Code, known.Place, known.Pathway,
        Standing!.Law.Spans.Any(s => s.Code == known.Code) ? SpanReason.Changes : SpanReason.Moves,
        new PathwayChoices(new HashSet<string>(), new Dictionary<string, decimal>(), all.SubjectsOf(known.Code, known.Pathway)));

    private string Told(KnownPathway? other, DayRange? away)
    {
        var parts = new List<string>();
        if (other is not null)
            parts.Add($"{other.Place}, {other.Pathway.Name}{(Input.Since is { } since ? $", from {RecordWords.Of(since)}" : "")}");
        if (away is { } days)
            parts.Add($"away {StandingWords.Days(days)}");
        return string.Join("; ", parts);
    }

    private async Task<LearnerYear> LogForAsync(IEnumerable<Supposition> supposed)
    {
        var reach = LegalWindow.Reach(supposed.SelectMany(s => s.Spans(Standing!.Law.Spans, Year!.Days)).Concat(Standing!.Law.InYear), Year!.Days);
        return reach == Log!.Ledger.Period ? Log : (await LearnerYear.LoadAsync(Db, Learner!.Id, reach, Ct))!;
    }

    private StandingQuestion Question(LearnerYear log) => Standing!.Question with { Ledger = log.Ledger, Marks = log.Marks };

    public sealed class SupposedInput : IValidatableObject
    {
        /// <summary>Pathways by <see cref="KeyOf"/>.</summary>
        public List<string> Under { get; set; } = [];

        public DateOnly? Since { get; set; }
        public DateOnly? AwayFrom { get; set; }
        public DateOnly? AwayTo { get; set; }

        public static string KeyOf(KnownPathway pathway) => $"{pathway.Code}/{pathway.Pathway.Id}";

        public IEnumerable<ValidationResult> Validate(ValidationContext validationContext)
        {
            foreach (var (date, name) in new[] { (Since, nameof(Since)), (AwayFrom, nameof(AwayFrom)), (AwayTo, nameof(AwayTo)) })
            {
                if (date is { Year: < 1900 or > 2200 })
                    yield return new ValidationResult("Write a year between 1900 and 2200.", [name]);
            }
        }
    }
}
