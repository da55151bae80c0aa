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

    /// <summary>What a paper rests on: the year's seal, or in an open year the mark of the entries themselves.</summary>
    /// <param name="fingerprint">Of the entries.</param>
    public static string RestsOn(string fingerprint, SealMark? seal) => seal is null
        ? $"Fingerprint {fingerprint}. {ReportWords.FingerprintMeaning}"
        : $"{Standing(seal)} Fingerprint {seal.Fingerprint.Groups}. {Meaning}";

    /// <inheritdoc cref="Foot(SealMark)"/>
    public static string Foot(string fingerprint, SealMark? seal) => seal is null ? $"Fingerprint {fingerprint}" : Foot(seal);

    /// <summary>How many, and when the last was.</summary>
    public static string Amendments(SealMark seal) => seal.LastAmended is { } last
        ? string.Create(CultureInfo.InvariantCulture, $"{(seal.Amendments == 1 ? "1 amendment" : $"{seal.Amendments} amendments")}, the last on {ReportWords.Date(last)}")
        : "none";
}
