using CoopLessons.Core.Calendar;

namespace CoopLessons.Core.Requirements.Standing;

/// <summary>Where one learner stands under one pathway in one school year: one sentence, and one line a figure.</summary>
/// <param name="Lines">What binds and what the family took as a goal, in the catalog's order.</param>
/// <param name="Others">Figures that bind nobody here: derived, disputed, for comparison, or under a condition.</param>
/// <param name="Verdict">The worst of the lines; <see cref="Verdict.NotAsked"/> where the pathway asks for no number.</param>
/// <param name="Sentence">The whole standing in one sentence or a few, with the citation of what decides it.</param>
/// <param name="Doubts">What a reader should confirm, each a sentence; empty where all figures were read in official text.</param>
public sealed record PathwayStanding(
    PathwaySpan Span,
    LegalWindow Window,
    IReadOnlyList<RequirementStanding> Lines,
    IReadOnlyList<RequirementStanding> Others,
    Verdict Verdict,
    string Sentence,
    IReadOnlyList<string> Doubts)
{
    /// <exception cref="ArgumentException">The ledger is of another learner.</exception>
    public static PathwayStanding Of(StandingQuestion asked, PathwaySpan span)
    {
        if (asked.Ledger.LearnerId != asked.Learner.Id)
            throw new ArgumentException("The ledger is of another learner.", nameof(asked));
        var window = LegalWindow.Of(asked.Learner, span, asked.School, asked.AsOf);
        var evaluation = new Evaluation(asked, span, window);
        var all = span.Pathway.Requirements.Select(r => evaluation.Of(r)).ToList();
        var lines = all.Where(l => l.Counts).ToList();
        var others = all.Where(l => !l.Counts).ToList();
        var verdict = lines.Select(l => l.Verdict).Worst();
        return new PathwayStanding(span, window, lines, others, verdict, PathwayWords.Sentence(asked.Learner, span, lines, others, verdict) + PathwayWords.NotBefore(window, verdict), PathwayWords.Doubts(lines));
    }

    /// <summary>The standing in a few words, such as "512 of 1,000 hours, on pace with 9 days to spare"; empty where nothing is asked.</summary>
    public string Brief => Deciding is { } line ? PathwayWords.InAFewWords(line) : "";

    /// <summary>The line that decides the verdict, or null where nothing is asked.</summary>
    public RequirementStanding? Deciding => Lines.FirstOrDefault(l => l.Verdict == Verdict && l.Verdict != Verdict.NotAsked);
}

internal static class PathwayWords
{
    public static string Sentence(LearnerFacts learner, PathwaySpan span, IReadOnlyList<RequirementStanding> lines, IReadOnlyList<RequirementStanding> others, Verdict verdict)
    {
        var asked = lines.Where(l => l.Verdict != Verdict.NotAsked).ToList();
        if (asked.Count == 0)
            return NothingAsked(learner, span, lines, others);
        var deciding = asked.Where(l => l.Verdict == verdict).ToList();
        if (verdict == Verdict.Met)
            return string.Join(" ", Told(deciding));
        var rest = asked.Where(l => l.Verdict is Verdict.Met).Select(l => Brief(l)).Where(b => b.Length > 0).ToList();
        var open = string.Join(" ", Told(deciding));
        var met = rest.Count > 0 ? $"Met: {string.Join("; ", rest)}." : "";
        // What no log can decide stands behind the numbers that it does decide.
        var told = met.Length == 0 ? open : deciding.Any(HasNumbers) ? $"{open} {met}" : $"{met} For you to judge: {open}";
        return asked.Any(HasNumbers) || Compared(others) is not { } compared ? told : $"{told} {Beside(compared)}";
    }

    public static string InAFewWords(RequirementStanding line)
    {
        // Of alternatives, the one that stands best.
        while (line.Parts.FirstOrDefault(p => p.Part is null && p.Verdict == line.Verdict) is { } part)
            line = part;
        if (line is not { Measured: { } measured, Target: { } target })
            return $"{line.Requirement.Name}: {line.Verdict.Words()}";
        var spare = line.Verdict == Verdict.OnPace ? StandingWords.Spare(line.Forecast!.Outlook?.SpareDays) : "";
        return $"{measured.Figure} of {target.Figure} {StandingWords.Counted(line.Requirement, target.Value)}, {line.Verdict.Words()}{spare}";
    }

    /// <summary>Why a log holds more than counts, where a whole year is asked: a part of one names its reasons itself.</summary>
    public static string NotBefore(LegalWindow window, Verdict verdict) =>
        window.IsPartial || window.Counted == window.Asked || verdict is Verdict.Met or Verdict.NotAsked ? "" : $" {Capital(window.Why[^1])}.";

    public static IReadOnlyList<string> Doubts(IReadOnlyList<RequirementStanding> lines) =>
    [
        .. lines.Where(l => l.Verdict != Verdict.NotAsked && l.Requirement.Source.NeedsConfirming)
            .GroupBy(l => l.Requirement.Source.Basis == Basis.Memory)
            .Select(g => $"{Capital(StandingWords.Together([.. g.Select(l => l.Requirement.Name)]))}: {(g.Key ? "from memory" : "not found in official text, or readings differ")}. Confirm with the state's office."),
    ];

    private static string NothingAsked(LearnerFacts learner, PathwaySpan span, IReadOnlyList<RequirementStanding> lines, IReadOnlyList<RequirementStanding> others)
    {
        if (lines.Count > 0 && lines.All(l => l.Window.Asked is null))
            return lines[0].Why;
        var compared = Compared(others);
        var number = $"no {(compared is null ? "" : "binding ")}number of days or hours";
        var open = span.Code.Length == 0 ? $"Your own pathway gives {learner.Name} {number}"
            : $"{span.Place} gives {learner.Name} {number} {(lines.Count > 0 ? "in this grade" : "under this pathway")}";
        return compared is null ? $"{open}." : $"{open}; it is for you to judge. {Beside(compared)}";
    }

    // Where no number binds, the first that can be compared with says more than none.
    private static RequirementStanding? Compared(IReadOnlyList<RequirementStanding> others) =>
        others.FirstOrDefault(o => o.Verdict != Verdict.NotAsked && HasNumbers(o));

    private static bool HasNumbers(RequirementStanding line) => line.Measured is not null || line.Parts.Any(p => p.Measured is not null);

    private static string Beside(RequirementStanding compared) => $"Beside {StatusWords(compared.Requirement)}: {Cited(compared)}";

    // Several figures may have the same to say, such as that no grade is set: it is said once, with all that it rests on.
    private static IEnumerable<string> Told(List<RequirementStanding> lines) =>
        lines.Count > 1 && lines.All(l => l.ProRated is not null && l.Window.Asked == lines[0].Window.Asked) ? [InPart(lines)]
        : lines.GroupBy(l => l.Why).Select(same => Cited(same.Key, Cites(same)));

    // Where only a part of the year is asked, the reason is the same for every figure.
    private static string InPart(List<RequirementStanding> lines)
    {
        var figures = lines.Select(l => $"{Brief(l)}, or {l.ProRated!.Value.Figure} cut down to those days");
        return $"{StandingWords.OnlyAPart(lines[0].Window)} {string.Join("; ", figures)} ({Cites(lines)}). Cutting down is arithmetic, not law.";
    }

    private static string Cites(IEnumerable<RequirementStanding> lines) => string.Join("; ", lines.Select(l => l.Requirement.Source.Cite).Distinct());

    private static string Cited(RequirementStanding line) => Cited(line.Why, line.Requirement.Source.Cite);

    /// <summary>The line's sentence with its citation in front of the last full stop of its first sentence.</summary>
    private static string Cited(string why, string cite)
    {
        var end = why.IndexOf(". ", StringComparison.Ordinal);
        var first = end < 0 ? why.TrimEnd('.') : why[..end];
        var after = end < 0 ? "" : why[(end + 1)..];
        return $"{first} ({cite}).{after}";
    }

    private static string Brief(RequirementStanding line) => line.Measured is { } measured && line.Target is { } target
        ? $"{measured.Figure} of {target.Figure} {StandingWords.Counted(line.Requirement, target.Value)}"
        : line.Requirement.Name;

    private static string StatusWords(Requirement figure) => figure.Status switch
    {
        FigureStatus.Required => $"a figure that binds where {figure.When}",
        FigureStatus.Derived => "a figure derived from a general phrase",
        FigureStatus.Disputed => "a disputed figure",
        _ => "a figure that binds others",
    };

    private static string Capital(string text) => text.Length == 0 ? text : char.ToUpperInvariant(text[0]) + text[1..];
}
