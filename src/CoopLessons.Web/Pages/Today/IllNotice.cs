using CoopLessons.Data.Families;
using CoopLessons.Data.Schedule;

namespace CoopLessons.Web.Pages.Today;

/// <summary>That somebody is ill, as a day says it.</summary>
/// <param name="Changes">Whether the reader may end the spell or change it.</param>
public sealed record IllNotice(IllSpell Spell, IReadOnlyList<Learner> Learners, DateOnly Today, bool Changes)
{
    /// <summary>Said wherever a spell is shown: the program knows nothing about illness.</summary>
    public const string Caution = "What an illness needs, your family's doctor says; when somebody may come again, the co-op's own rule on sickness.";

    /// <summary>“We are ill”, or whose names.</summary>
    public string Who => Spell.Learners.Count == 0 ? "We are ill" : Names is [var one] ? $"{one} is ill" : $"{DayWords.Names(Names)} are ill";

    public string Since => Spell.From == Today ? "from today on" : Spell.To is { } last && last == Spell.From ? $"on {Spell.From.InWords(Today)}"
        : Spell.To is { } to ? $"from {Spell.From.InWords(Today)} to {to.InWords(Today)}" : $"since {Spell.From.InWords(Today)}";

    private List<string> Names => [.. Learners.Where(l => Spell.Learners.Contains(l.Id)).Select(l => l.Name)];
}
