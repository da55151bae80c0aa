using System.Globalization;
using CoopLessons.Core.Calendar;
using CoopLessons.Core.Hours;
using Microsoft.AspNetCore.Mvc;

namespace CoopLessons.Web.Pages.Records;

/// <summary>Which credits of a learner's year are asked for; what is null narrows nothing.</summary>
public sealed record EntriesFilter(Guid? Subject, Month? Month, Place? Place, DateOnly? Date)
{
    /// <summary>Reads the parts as they stand in an address; null where one of them is not understood.</summary>
    public static EntriesFilter? Read(Guid? subject, string? month, string? place, string? date)
    {
        Month? inMonth = null;
        Place? at = null;
        DateOnly? on = null;
        if (month is not null)
        {
            if (!Core.Calendar.Month.TryParse(month, out var known))
                return null;
            inMonth = known;
        }

        if (place is not null)
        {
            at = Enum.GetValues<Place>().Select(p => (Place?)p).FirstOrDefault(p => InAddress(p!.Value) == place);
            if (at is null)
                return null;
        }

        if (date is not null)
        {
            if (!DateOnly.TryParseExact(date, "yyyy-MM-dd", CultureInfo.InvariantCulture, DateTimeStyles.None, out var known))
                return null;
            on = known;
        }

        return new EntriesFilter(subject, inMonth, at, on);
    }

    public bool Holds(Credit credit) =>
        (Subject is null || credit.SubjectId == Subject)
        && (Month is not { } month || month.Contains(credit.Date))
        && (Place is null || credit.Place == Place)
        && (Date is null || credit.Date == Date);

    /// <summary>A touch of the subject that is asked for. Without a subject every entry stands in the list by its minutes.</summary>
    public bool Holds(Touch touch, Place place) =>
        Subject is not null && touch.SubjectId == Subject
        && (Month is not { } month || month.Contains(touch.Date))
        && (Place is null || place == Place)
        && (Date is null || touch.Date == Date);

    /// <summary>Where the entries stand, with only the parts that narrow.</summary>
    public static string Address(IUrlHelper url, Guid learner, Guid year, Guid? subject, Month? month, Place? place, DateOnly? date, Month? show = null) =>
        url.Page("/Records/Entries", new
        {
            learner,
            year,
            subject,
            month = month?.Iso,
            place = place is { } at ? InAddress(at) : null,
            date = date?.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture),
            show = show?.Iso,
        })!;

    private static string InAddress(Place place) => place switch
    {
        Core.Hours.Place.Home => "home",
        Core.Hours.Place.AnotherHome => "another-home",
        Core.Hours.Place.Coop => "co-op",
        _ => "elsewhere",
    };
}
