using System.ComponentModel.DataAnnotations;
using CoopLessons.Data.Evidence;

namespace CoopLessons.Web.Pages.Records;

/// <summary>What a parent decides of a portfolio on its page.</summary>
public sealed class PortfolioInput
{
    /// <summary>Empty where nothing was saved when the page was opened.</summary>
    public int? Version { get; set; }
    public List<PortfolioPart> Parts { get; set; } = [];

    [StringLength(Portfolio.LongestReader, ErrorMessage = "At most 120 letters.")]
    public string? Reader { get; set; }

    [StringLength(Portfolio.LongestText, ErrorMessage = "At most 4,000 letters.")]
    public string? Opening { get; set; }
    public List<Told> Subjects { get; set; } = [];

    /// <summary>What a parent writes of one subject.</summary>
    public sealed class Told
    {
        public string? Key { get; set; }

        [StringLength(Portfolio.LongestText, ErrorMessage = "At most 4,000 letters.")]
        public string? Narrative { get; set; }
    }

    public static PortfolioInput From(PortfolioYear portfolio, bool saved) => new()
    {
        Version = saved ? portfolio.Choices.Version : null,
        Parts = portfolio.Choices.Parts,
        Reader = portfolio.Choices.Reader,
        Opening = portfolio.Choices.Opening,
        Subjects = [.. portfolio.Subjects.Select(s => new Told { Key = s.Subject.Key, Narrative = s.Narrative })],
    };

    /// <summary>Puts it into the row; the samples chosen by hand stay as they are.</summary>
    public void WriteTo(Portfolio choices)
    {
        choices.Describe(Parts, (Reader ?? "").Trim(), (Opening ?? "").Trim());
        foreach (var told in Subjects.Where(t => t.Key is { Length: > 0 and <= 80 }))
            choices.Decide(choices.Of(told.Key!) with { Narrative = (told.Narrative ?? "").Trim() });
    }
}
