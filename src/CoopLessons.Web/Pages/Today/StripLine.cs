using CoopLessons.Core.Schedule;
using CoopLessons.Core.Units;
using CoopLessons.Data.Families;
using CoopLessons.Data.Log;
using CoopLessons.Data.Schedule;

namespace CoopLessons.Web.Pages.Today;

/// <summary>A waiting time that follows a line.</summary>
/// <param name="For">What is waited for, in the activity's words.</param>
/// <param name="Since">The day on which it was, or is to be, begun.</param>
/// <param name="EndsOn">The day on which somebody must look, or null where no time is known yet.</param>
/// <param name="EndsAt">Minutes after that day's midnight.</param>
public sealed record Wait(string For, int Minutes, DateOnly Since, DateOnly? EndsOn, int EndsAt)
{
    /// <summary>The moment to look, as it stands on the day on which it ends.</summary>
    public Look LookOf(PlannedWork work) => new(work.Session.Id, EndsAt, work.Title, For, Since == EndsOn ? null : Since);
}

/// <summary>What one child does at the child's own level.</summary>
public sealed record Part(string Learner, string Does);

/// <summary>The entry that says a line was done, as far as the line shows it.</summary>
/// <param name="Revision">Number of the writing that the line shows.</param>
/// <param name="By">Who wrote it, or null where it was the reader.</param>
public sealed record Deed(Guid EntryId, int Revision, string? By, string Length, IReadOnlyList<Learner> Learners);

/// <summary>One planned thing on the day's strip.</summary>
public sealed record StripLine(DateOnly Date, PlannedWork Work, IReadOnlyList<Learner> Learners, IReadOnlyList<Learner> All, Deed? Deed, Wait? Wait)
{
    public PlannedSession Session => Work.Session;
    public Doing Doing => Work.Doing;

    /// <summary>Minted with the page: a second sending of its form is known by it.</summary>
    public Guid NewEntryId { get; } = Guid.CreateVersion7();

    /// <summary>The teaching day to which it can be moved.</summary>
    public DateOnly Next { get; init; }

    /// <summary>Whether the date has come, so that it can be done.</summary>
    public bool HasCome { get; init; }

    /// <summary>Shows names before titles, as somebody needs who does not live with the plan.</summary>
    public bool NamesFirst { get; init; }

    /// <summary>Changed a moment ago: offers the way back in place.</summary>
    public bool Just { get; init; }

    /// <summary>Why what was asked for was not done.</summary>
    public string? Fault { get; init; }

    public bool IsGone => Session.Date != Date || Session.State == SessionState.LetGo;
    public bool IsDone => !IsGone && Session.State == SessionState.Done;
    public bool IsNotDone => !IsGone && Session.State == SessionState.NotDone;
    public bool IsOpen => !IsGone && Session.State == SessionState.Planned;

    /// <summary>Somebody is ill, and this rests: it asks for nothing.</summary>
    public bool Rests { get; init; }

    /// <summary>Somebody is ill, and this goes on all the same.</summary>
    public bool IsSpared { get; init; }

    /// <summary>The spell that concerns it.</summary>
    public Guid? Spell { get; init; }

    public string Who => DayWords.Who(Deed?.Learners ?? Learners, NamesFirst ? [] : All);
    public string Length => Deed?.Length ?? DayWords.Length(Doing.Minutes);

    /// <summary>When its waiting time ends on this very day: minutes after midnight.</summary>
    public int? LooksAt => Wait?.EndsOn == Date && (IsOpen && !Rests || IsDone) ? Wait.EndsAt : null;

    /// <summary>The look that belongs to the line's waiting time, hidden while nobody need look today.</summary>
    public Look Look => Wait!.LookOf(Work) with { Hidden = LooksAt is null, Swapped = Just };

    /// <summary>What is done on the day while this line's wait runs; the line says it there.</summary>
    public IReadOnlyList<string> Meanwhile { get; init; } = [];

    /// <summary>From its planned start to its planned end; null where no hour is known.</summary>
    public Stretch? Hours => Session.StartsAt is { } at ? new Stretch(at, at + Work.Minutes) : null;

    /// <summary>The part of its waiting time that lies on this day, where that is known.</summary>
    public Stretch? Waiting => LooksAt is { } looks && Hours is { } hours && hours.To < looks ? new Stretch(hours.To, looks) : null;

    /// <summary>Whether the day is gone by.</summary>
    public bool IsPast { get; init; }

    /// <summary>Where the activity meets the children who take part, and those who are in the house.</summary>
    public IReadOnlyList<Caution> Cautions => Doing.Activity is { } activity
        ? Core.Units.Cautions.Of([.. Learners.Select(l => l.ToCautioned(Date))], [.. All.Where(l => l.BirthDate <= Date).Select(l => l.ToCautioned(Date))], activity.Care)
        : [];

    /// <summary>Learners of whom the parent wrote something beyond the nine allergens, where anything is eaten or touched.</summary>
    public IEnumerable<Learner> OtherAllergies => Doing.Details.Ingredients.Count > 0 ? Learners.Where(l => l.AllergyNote.Length > 0) : [];

    public IReadOnlyList<Part> Parts
    {
        get
        {
            var leading = Work.Split.Split.OrderByDescending(s => s.Weight).FirstOrDefault()?.SubjectId;
            return
            [
                .. Learners.Select(l => (l.Name, Variant: Doing.Details.Variants.For(l.WorkingAge(Date, leading))))
                    .Where(p => p.Variant is not null).Select(p => new Part(p.Name, p.Variant!.Does)),
            ];
        }
    }

    /// <summary>What stands in the strip after something was done to the line, for the ear and for the bar with the way back.</summary>
    public string Outcome =>
        Session.Date != Date ? $"{Doing.Title} is moved to {Session.Date.InWords()}."
        : Session.State switch
        {
            SessionState.Done => $"{Doing.Title} is done.",
            SessionState.NotDone => $"{Doing.Title} is not done.",
            SessionState.LetGo => $"{Doing.Title} is let go.",
            _ => $"{Doing.Title} is planned again.",
        };

    /// <summary>
    /// The waiting time after a session, where its activity has one. It begins where the written start and minutes end,
    /// else where the planned ones do, else when the line was ticked off on its own day. Once the line is done its day is
    /// the one that was written; an hour planned for another day then tells nothing.
    /// </summary>
    public static Wait? WaitOf(PlannedWork work, LogRevision? deed, Family family)
    {
        var (session, doing) = (work.Session, work.Doing);
        if (doing.WaitingMinutes == 0)
            return null;
        var date = deed?.Date ?? session.Date;
        var begins = deed?.StartsAt is { } started ? started + deed.Times.Max(t => t.Minutes)
            : session.StartsAt is { } planned && date == session.Date ? planned + doing.Minutes
            : deed is null ? null : TickedAt(deed, family);
        if (deed is null && session.LooksAt is { } looks && begins is not null)
            return new Wait(doing.WaitingFor, doing.WaitingMinutes, date, date, looks);
        if (begins is not { } from)
            return new Wait(doing.WaitingFor, doing.WaitingMinutes, date, null, 0);
        var end = from + doing.WaitingMinutes;
        return new Wait(doing.WaitingFor, doing.WaitingMinutes, date, date.AddDays(end / 1440), end % 1440);
    }

    private static int? TickedAt(LogRevision deed, Family family)
    {
        var local = family.Local(new DateTimeOffset(deed.OnPhoneAt ?? deed.WrittenAt, TimeSpan.Zero)).DateTime;
        return DateOnly.FromDateTime(local) == deed.Date ? DayWords.OfDay(TimeOnly.FromDateTime(local)) : null;
    }

    /// <summary>What the entry adds to the line.</summary>
    public static Deed DeedOf(LogRevision revision, Guid? reader, IReadOnlyList<Learner> learners)
    {
        var there = learners.Where(l => revision.Times.Any(t => t.LearnerId == l.Id)).ToList();
        var (least, most) = (revision.Times.Min(t => t.Minutes), revision.Times.Max(t => t.Minutes));
        var length = least == most ? DayWords.Length(most) : $"{DayWords.Length(least)} to {DayWords.Length(most)}";
        return new Deed(revision.EntryId, revision.Number, revision.AuthorId == reader ? null : revision.AuthorName, length, there);
    }
}

/// <summary>The moment at which somebody must look.</summary>
/// <param name="SessionId">The line that waits.</param>
/// <param name="At">Minutes after midnight.</param>
/// <param name="Since">The earlier day on which it began, or null for the day itself.</param>
public sealed record Look(Guid SessionId, int At, string Title, string For, DateOnly? Since)
{
    /// <summary>Nobody need look: the line was not done, or its time is not known yet. Its place is kept for a swap.</summary>
    public bool Hidden { get; init; }

    /// <summary>Sent beside the line, to be put where it stands.</summary>
    public bool Swapped { get; init; }
}
