using CoopLessons.Core.Calendar;
using CoopLessons.Core.Credits;
using CoopLessons.Core.Families;
using static CoopLessons.Core.Tests.AlderLog;

namespace CoopLessons.Core.Tests.Credits;

/// <summary>Claims of courses in a few words.</summary>
internal static class CourseClaims
{
    public static readonly Guid Biology = Id(701);
    public static readonly Guid History = Id(702);
    public static readonly Guid Essays = Id(703);

    public static readonly IReadOnlyDictionary<Guid, Guid> NoUnits = new Dictionary<Guid, Guid>();

    public static CourseClaim Course(Guid id, params CourseRule[] rules) => new(id, rules, new HashSet<LogPart>(), new HashSet<LogPart>(), []);

    public static CourseRule All(Subject subject, Guid? unit = null) => new(subject.Id, Year, unit);

    public static CourseRule Between(Subject subject, DateOnly first, DateOnly last) => new(subject.Id, new DayRange(first, last));

    public static CourseClaim With(this CourseClaim claim, int entry, Subject subject) =>
        claim with { PickedIn = claim.PickedIn.Append(new LogPart(Id(entry), subject.Id)).ToHashSet() };

    public static CourseClaim Without(this CourseClaim claim, int entry, Subject subject) =>
        claim with { PutOut = claim.PutOut.Append(new LogPart(Id(entry), subject.Id)).ToHashSet() };
}
