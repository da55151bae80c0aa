using CoopLessons.Data.Files;

namespace CoopLessons.Data.Units;

/// <summary>A file to print from, on its way with a unit.</summary>
/// <param name="Activity">Code of the activity that it is for.</param>
/// <param name="Printable">The title under which the activity asks for it.</param>
/// <param name="FileName">As somebody's device called it; shown, never used to find the file.</param>
/// <param name="Hash">SHA-256 of its bytes, 64 small hexadecimal digits.</param>
public sealed record TravellingPrint(string Activity, string Printable, string FileName, string Hash, StoredKind Kind, long Bytes, int Pages);

/// <summary>A unit with what another installation needs to bring it into a version of its own.</summary>
/// <param name="SharedId">The author's own unit, the same wherever it goes.</param>
/// <param name="From">Who packed it.</param>
/// <param name="Base">What both sides knew last, for all that the sender knows; the unit itself where it goes out for the first time.</param>
public sealed record UnitPack(Guid SharedId, string From, PublishedBundle Unit, PublishedBundle Base, IReadOnlyList<TravellingPrint> Prints);
