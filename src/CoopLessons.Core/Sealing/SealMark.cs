namespace CoopLessons.Core.Sealing;

/// <summary>What a paper of a sealed year says of the sealing.</summary>
/// <param name="Fingerprint">Of the last record: the sealing's own, or that of the last amendment.</param>
/// <param name="LastAmended">The day of the last amendment; null where there was none.</param>
public sealed record SealMark(Fingerprint Fingerprint, DateOnly SealedOn, int Amendments, DateOnly? LastAmended);
