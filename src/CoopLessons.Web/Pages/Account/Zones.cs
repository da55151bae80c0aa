using System.ComponentModel.DataAnnotations;
using Microsoft.AspNetCore.Mvc.Rendering;

namespace CoopLessons.Web.Pages.Account;

/// <summary>The time zones a family can choose, by their IANA names; those of the United States first.</summary>
public static class Zones
{
    public const string Usual = "America/Chicago";

    // Names: 15 U.S.C. § 263; IANA names: the time zone database's zone1970.tab, from memory.
    private static readonly (string Id, string Name)[] UnitedStates =
    [
        ("America/New_York", "Eastern"), ("America/Chicago", "Central"), ("America/Denver", "Mountain"),
        ("America/Phoenix", "Mountain, without daylight saving time"), ("America/Los_Angeles", "Pacific"), ("America/Anchorage", "Alaska"),
        ("America/Adak", "Aleutian Islands"), ("Pacific/Honolulu", "Hawaii"), ("America/Puerto_Rico", "Puerto Rico and Virgin Islands"),
        ("Pacific/Guam", "Guam and Northern Mariana Islands"), ("Pacific/Pago_Pago", "American Samoa"),
    ];

    // Leaves out the database's old and technical names.
    private static readonly string[] Areas = ["Africa/", "America/", "Antarctica/", "Asia/", "Atlantic/", "Australia/", "Europe/", "Indian/", "Pacific/"];

    private static readonly HashSet<string> Known = [.. UnitedStates.Select(z => z.Id), .. Elsewhere()];

    public static bool Knows(string? id) => id is not null && Known.Contains(id);

    public static IEnumerable<SelectListItem> List()
    {
        var here = new SelectListGroup { Name = "United States" };
        var elsewhere = new SelectListGroup { Name = "Everywhere" };
        return [.. UnitedStates.Select(z => new SelectListItem($"{z.Name} ({Readable(z.Id)})", z.Id) { Group = here }),
            .. Known.Except(UnitedStates.Select(z => z.Id)).Order(StringComparer.Ordinal).Select(id => new SelectListItem(Readable(id), id) { Group = elsewhere })];
    }

    private static string Readable(string id) => id.Replace('_', ' ').Replace("/", " / ", StringComparison.Ordinal);

    private static IEnumerable<string> Elsewhere()
    {
        foreach (var zone in TimeZoneInfo.GetSystemTimeZones())
        {
            var id = zone.HasIanaId ? zone.Id : TimeZoneInfo.TryConvertWindowsIdToIanaId(zone.Id, out var iana) ? iana : "";
            if (Areas.Any(area => id.StartsWith(area, StringComparison.Ordinal)))
                yield return id;
        }
    }
}

[AttributeUsage(AttributeTargets.Property)]
public sealed class KnownZoneAttribute : ValidationAttribute
{
    public KnownZoneAttribute()
        : base("Choose a time zone from the list.")
    {
    }

    public override bool IsValid(object? value) => value is null || Zones.Knows(value as string);
}
