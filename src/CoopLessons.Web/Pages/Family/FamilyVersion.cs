using CoopLessons.Data;
using Microsoft.EntityFrameworkCore;

namespace CoopLessons.Web.Pages.Families;

public static class FamilyVersion
{
    /// <summary>The version at which the family stands now, for a form that is shown once more.</summary>
    public static Task<int> VersionOfFamilyAsync(this AppDb db, CancellationToken ct) => db.Families.Select(f => f.Version).SingleAsync(ct);
}
