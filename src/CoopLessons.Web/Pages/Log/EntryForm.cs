using System.ComponentModel.DataAnnotations;
using System.Globalization;
using CoopLessons.Core.Hours;
using CoopLessons.Data.Families;
using CoopLessons.Data.Log;
using CoopLessons.Web.Pages.Today;
using Microsoft.AspNetCore.Mvc.ModelBinding;
using Microsoft.AspNetCore.Mvc.ModelBinding.Validation;

namespace CoopLessons.Web.Pages.Log;

/// <summary>One child's row: there or not, and minutes of the child's own where they differ.</summary>
public sealed class WhoRow
{
    public Guid LearnerId { get; set; }

    public bool There { get; set; }

    [Range(1, 1440, ErrorMessage = "Give whole minutes from 1 to 1440, or leave this empty.")]
    public int? Own { get; set; }

    [BindNever]
    public string Name { get; set; } = "";
}

/// <summary>One subject's row: how much of the minutes it takes, or that it was met in passing.</summary>
public sealed class CountsRow
{
    public Guid SubjectId { get; set; }

    [Range(0, 100, ErrorMessage = "Give a whole number from 0 to 100, or leave this empty.")]
    public int? Weight { get; set; }

    public bool Touched { get; set; }

    [BindNever]
    public string Name { get; set; } = "";
}

/// <summary>What a parent fills in for one entry of the log: new, done with changes, or changed afterwards.</summary>
public sealed class EntryForm
{
    public const string Other = "other";
    public static readonly IReadOnlyList<int> Usual = [20, 30, 40, 60, 90];
    public static readonly DateOnly Earliest = new(2000, 1, 1);

    [Required(ErrorMessage = "Say in a few words what was done.")]
    [StringLength(LogRevision.LongestWhat, ErrorMessage = "At most {1} signs here; the rest can stand in the note.")]
    public string? What { get; set; }

    public List<WhoRow> Who { get; set; } = [];

    /// <summary>One of the usual lengths, or <see cref="Other"/>.</summary>
    public string? Length { get; set; }

    [Range(1, 1440, ErrorMessage = "Give whole minutes from 1 to 1440.")]
    public int? OtherLength { get; set; }

    /// <summary>The other length as the form came: one that was typed since wins over a chip that was set before.</summary>
    public int? OtherBefore { get; set; }

    [EnumDataType(typeof(Place), ErrorMessage = "Choose where it was.")]
    public Place Place { get; set; }

    public List<CountsRow> Counts { get; set; } = [];

    [Required(ErrorMessage = "Say on which day it was done.")]
    public DateOnly? Date { get; set; }

    public TimeOnly? Start { get; set; }

    [StringLength(LogRevision.LongestNote, ErrorMessage = "A note may have at most {1} signs.")]
    public string? Note { get; set; }

    /// <summary>Whether the subjects follow the words: a new entry counts as the last one of the same name did.</summary>
    [BindNever]
    public bool Suggests { get; set; }

    /// <summary>What may be meant, for a tap; null where the entry is one that is planned or written already.</summary>
    [BindNever]
    [ValidateNever]
    public LogOffers? Offers { get; set; }

    /// <summary>The form as the facts fill it, with rows for everybody and every subject.</summary>
    public static EntryForm From(EntryFacts facts, IReadOnlyList<Learner> learners, IReadOnlyList<FamilySubject> subjects)
    {
        var form = new EntryForm { What = facts.What, Place = facts.Place, Date = facts.Date, Start = DayWords.TimeOf(facts.StartsAt), Note = facts.Note };
        var common = CommonOf(facts);
        form.SetLength(common);
        form.Who = [.. learners.Select(l => Row(l, facts.Times.FirstOrDefault(t => t.LearnerId == l.Id), common))];
        form.Count(facts.Split, facts.Touches, subjects);
        return form;
    }

    /// <summary>The minutes of most children; of two lengths that are as frequent, the longer.</summary>
    public static int CommonOf(EntryFacts facts) =>
        facts.Times.GroupBy(t => t.Minutes.Value).OrderByDescending(g => g.Count()).ThenByDescending(g => g.Key).Select(g => g.Key).FirstOrDefault(LoggableThings.UnknownMinutes);

    /// <summary>Sets the subjects' rows.</summary>
    public void Count(IReadOnlyList<SubjectWeight> split, IReadOnlyList<Guid> touches, IReadOnlyList<FamilySubject> subjects) =>
        Counts = [.. subjects.Select(s => new CountsRow { SubjectId = s.Id, Name = s.Name, Weight = split.FirstOrDefault(w => w.SubjectId == s.Id)?.Weight, Touched = touches.Contains(s.Id) })];

    /// <summary>
    /// Names the rows that were posted, and adds those that were not. False where a row is nobody's of this family, or
    /// stands twice.
    /// </summary>
    public bool Name(IReadOnlyList<Learner> learners, IReadOnlyList<FamilySubject> subjects)
    {
        if (Who.DistinctBy(w => w.LearnerId).Count() != Who.Count || Counts.DistinctBy(c => c.SubjectId).Count() != Counts.Count)
            return false;
        foreach (var row in Who)
            row.Name = learners.FirstOrDefault(l => l.Id == row.LearnerId)?.Name ?? "";
        foreach (var row in Counts)
            row.Name = subjects.FirstOrDefault(s => s.Id == row.SubjectId)?.Name ?? "";
        Who.AddRange(learners.Where(l => !l.SetAside && Who.All(w => w.LearnerId != l.Id)).Select(l => Row(l, null, 0)).ToList());
        Counts.AddRange(subjects.Where(s => !s.Retired && Counts.All(c => c.SubjectId != s.Id)).Select(s => new CountsRow { SubjectId = s.Id, Name = s.Name }).ToList());
        return Who.All(w => w.Name.Length > 0) && Counts.All(c => c.Name.Length > 0);
    }

    /// <summary>Reads the facts; null, with the messages beside their fields, where something is missing or out of bounds.</summary>
    /// <param name="today">In the family's time zone: what is still to come cannot have been done.</param>
    public EntryFacts? Read(ModelStateDictionary state, string prefix, DateOnly today)
    {
        if (Date > today)
            state.AddModelError($"{prefix}.{nameof(Date)}", $"That day is still to come. Today is {today.InWords()}; log it once it is done.");
        if (Date < Earliest)
            state.AddModelError($"{prefix}.{nameof(Date)}", "Choose a day from the year 2000 on.");
        var minutes = Minutes(state, prefix);
        var there = Who.Where(w => w.There).ToList();
        if (there.Count == 0)
            state.AddModelError($"{prefix}.{nameof(Who)}", "Tick at least one child.");
        var split = Counts.Where(c => c.Weight > 0).Select(c => (c.SubjectId, Weight: c.Weight!.Value)).ToList();
        if (split.Count == 0)
            state.AddModelError($"{prefix}.{nameof(Counts)}", "Give at least one subject a share, such as 1.");
        if (!state.IsValid || Date is not { } date)
            return null;
        return new EntryFacts(
            date, Start is { } start ? DayWords.OfDay(start) : null, What!, Place, Note ?? "",
            [.. there.Select(w => new LearnerTime(w.LearnerId, new Minutes(w.Own ?? minutes)))],
            [.. split.Select(s => new SubjectWeight(s.SubjectId, s.Weight))],
            [.. Counts.Where(c => c.Touched && c.Weight is not > 0).Select(c => c.SubjectId)]);
    }

    private int Minutes(ModelStateDictionary state, string prefix)
    {
        if (OtherLength is { } typed && (Length == Other || typed != OtherBefore))
            return typed;
        if (int.TryParse(Length, NumberStyles.None, CultureInfo.InvariantCulture, out var minutes) && minutes is >= 1 and <= 1440)
            return minutes;
        if (state[$"{prefix}.{nameof(OtherLength)}"]?.Errors.Count is null or 0)
            state.AddModelError($"{prefix}.{nameof(OtherLength)}", "Say how long: whole minutes from 1 to 1440.");
        return 0;
    }

    private void SetLength(int minutes)
    {
        Length = Usual.Contains(minutes) ? minutes.ToString(CultureInfo.InvariantCulture) : Other;
        OtherLength = OtherBefore = Length == Other ? minutes : null;
    }

    private static WhoRow Row(Learner learner, LearnerTime? time, int common) => new()
    {
        LearnerId = learner.Id,
        Name = learner.Name,
        There = time is not null,
        Own = time is null || time.Minutes.Value == common ? null : time.Minutes.Value,
    };
}
