using System.Text.Json;
using System.Text.Json.Serialization;
using CoopLessons.Core.Hours;
using CoopLessons.Core.Log;
using CoopLessons.Data.Log;
using CoopLessons.Web.Pages.Today;

namespace CoopLessons.Web.Pages.Log;

/// <summary>Something that may be logged, as the page shows it and as a tap on it fills the form.</summary>
/// <param name="Facts">With the minutes and children that were named in what is typed.</param>
public sealed record LogOffer(LogCandidate Candidate, EntryFacts Facts, EntryWords Words, DateOnly Today)
{
    private static readonly JsonSerializerOptions s_brief = new() { DefaultIgnoreCondition = JsonIgnoreCondition.WhenWritingNull, PropertyNamingPolicy = JsonNamingPolicy.CamelCase };

    public string What => Candidate.What;

    public string Line => Words.SaveLine(Facts);

    /// <summary>Why it is offered; empty for what was merely done before.</summary>
    public string Why => Candidate.Session is { } session
        ? session.Date == Today ? "planned today" : $"planned on {session.Date.Weekday()}"
        : Candidate.Past?.IsUsualOn(Today) == true ? $"usual on {Today.Weekday()}s" : "";

    /// <summary>
    /// What a tap fills in: children and subjects by their place in the page's two lists, so that a page of many offers stays
    /// light.
    /// </summary>
    public string Fill(IReadOnlyList<Guid> learners, IReadOnlyList<Guid> subjects)
    {
        var common = EntryForm.CommonOf(Facts);
        var own = Facts.Times.Where(t => t.Minutes.Value != common).ToDictionary(t => Place(learners, t.LearnerId), t => t.Minutes.Value);
        return JsonSerializer.Serialize(
            new Filling(
                Candidate.Session?.Id, common, [.. Facts.Times.Select(t => Place(learners, t.LearnerId))], own.Count == 0 ? null : own,
                [.. Facts.Split.Select(s => new[] { Place(subjects, s.SubjectId), s.Weight })],
                Facts.Touches.Count == 0 ? null : [.. Facts.Touches.Select(t => Place(subjects, t))], Facts.Place == Core.Hours.Place.Home ? null : Facts.Place.ToString()),
            s_brief);
    }

    /// <summary>Where the form is opened filled, for a browser without scripts.</summary>
    public string Address(string? typed, DateOnly? date)
    {
        var of = Candidate.Session is { } session ? $"session={session.Id}" : $"what={Uri.EscapeDataString(What)}";
        return $"/log/new?{of}" + (typed is { Length: > 0 } ? $"&sentence={Uri.EscapeDataString(typed)}" : "") + (date is { } day ? $"&date={day.Iso()}" : "");
    }

    public static LogOffer Of(LogCandidate candidate, SaidEntry? said, EntryWords words, DateOnly today) =>
        new(candidate, Heard(new EntryFacts(today, null, candidate.What, candidate.Place, "", candidate.Times, candidate.Split, candidate.Touches), said), words, today);

    /// <summary>The facts with the minutes and the children that were named.</summary>
    public static EntryFacts Heard(EntryFacts facts, SaidEntry? said)
    {
        if (said is null)
            return facts;
        var times = facts.Times;
        if (said.Learners.Count > 0)
            times = [.. said.Learners.Select(l => facts.Times.FirstOrDefault(t => t.LearnerId == l) ?? new LearnerTime(l, new Minutes(EntryForm.CommonOf(facts))))];
        if (said.Minutes is { } minutes)
            times = [.. times.Select(t => new LearnerTime(t.LearnerId, new Minutes(minutes)))];
        return facts with { Times = times };
    }

    private static int Place(IReadOnlyList<Guid> all, Guid one)
    {
        for (var i = 0; i < all.Count; i++)
        {
            if (all[i] == one)
                return i;
        }

        return -1;
    }

    private sealed record Filling(Guid? Session, int Minutes, int[] Who, Dictionary<int, int>? Own, int[][] Counts, int[]? Touches, string? Place);
}

/// <summary>What may be logged, in the order in which it is shown.</summary>
/// <param name="Typed">As it stands in the field.</param>
/// <param name="Said">What is heard in it besides the thing itself; null where nothing is.</param>
/// <param name="Offers">Those that match; all of them where nothing is typed.</param>
/// <param name="Date">The day of the form where it is another than today.</param>
public sealed record LogOffers(string Typed, SaidEntry? Said, IReadOnlyList<LogOffer> Offers, EntryWords Words, DateOnly? Date)
{
    /// <summary>More than these would make the page heavy, and nobody reads them.</summary>
    public const int Most = 100;

    public IReadOnlyList<Guid> Learners { get; } = [.. Words.Learners.Select(l => l.Id)];
    public IReadOnlyList<Guid> Subjects { get; } = [.. Words.Subjects.Select(s => s.Id)];

    /// <summary>“40 min · Linnet”.</summary>
    public string? Heard => Said is not { UnderstoodAnything: true } said ? null : string.Join(
        " · ",
        [.. said.Minutes is { } minutes ? [DayWords.Length(minutes)] : Array.Empty<string>(), .. said.Learners.Count > 0 ? [DayWords.Names(said.Learners.Select(Words.Learner))] : Array.Empty<string>()]);

    /// <summary>Whether two lengths were named, of which none is taken.</summary>
    public bool Unclear => Said is { Minutes: null, Lengths.Count: > 0 };

    public static LogOffers Of(string typed, IReadOnlyList<LogCandidate> candidates, EntryWords words, DateOnly today, int minute, DateOnly? date)
    {
        var said = SaidEntry.Of(typed, [.. words.Learners.Where(l => !l.SetAside).Select(l => (l.Id, l.Name))]);
        // What is matched as it stands is meant as it stands: a child's name may be a word of the thing.
        var plain = LogProposals.Of(typed, candidates, today, minute);
        var heard = said.UnderstoodAnything ? said : null;
        var found = plain.Count > 0 || heard is null ? plain : LogProposals.Of(string.Join(' ', said.Rest), candidates, today, minute);
        return new LogOffers(typed, heard, [.. found.Take(Most).Select(c => LogOffer.Of(c, heard, words, today))], words, date);
    }
}
