using System.Globalization;
using CoopLessons.Core.Sealing;

namespace CoopLessons.Documents.Reports;

/// <summary>What every paper of a sealed year says of the sealing, in the same words.</summary>
internal static class SealWords
{
    public const string Meaning =
        "The fingerprint is the SHA-256 digest of the year's record, which the family can hand out: the same record gives the same one, and one changed minute gives another. Whether it is known can be asked at the page /papers/check of the server that made this paper.";

    /// <summary>When it was sealed and how often it was amended, in one sentence.</summary>
    public static string Standing(SealMark seal) => seal.Amendments == 0
        ? $"This school year was sealed on {ReportWords.Date(seal.SealedOn)}."
        : $"This school year was sealed on {ReportWords.Date(seal.SealedOn)} and amended since: {Amendments(seal)}.";

    /// <summary>The first words of a sheet's foot.</summary>
    public static string Foot(SealMark seal) => $"Sealed{(seal.Amendments > 0 ? " and amended" : "")}, fingerprint {seal.Fingerprint.ShortForm}";

    /// <summary>How many, and when the last was.</summary>
    public static string Amendments(SealMark seal) => seal.LastAmended is { } last
        ? string.Create(CultureInfo.InvariantCulture, $"{(seal.Amendments == 1 ? "1 amendment" : $"{seal.Amendments} amendments")}, the last on {ReportWords.Date(last)}")
        : "none";
}
