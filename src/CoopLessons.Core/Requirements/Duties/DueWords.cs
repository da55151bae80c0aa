using System.Globalization;

namespace CoopLessons.Core.Requirements.Duties;

/// <summary>The arithmetic of due dates as people say it.</summary>
internal sealed class DueWords(DutyYear year)
{
    /// <summary><c>1 November</c>, with its year where it lies outside the twelve months at hand.</summary>
    public string Day(DateOnly date) =>
        date.ToString(year.Reach.Contains(date) ? "d MMMM" : "d MMMM yyyy", CultureInfo.InvariantCulture);

    public string Since(EventDay day) => day.For switch
    {
        StandsFor.AnEarlierBeginning => $"the school year began on {Day(day.On)} (home instruction itself began in an earlier year)",
        StandsFor.TheAges => $"the law's ages began for the child on {Day(day.On)}",
        StandsFor.ComingUnderThePathway => $"the child came under this pathway on {Day(day.On)}",
        _ => $"{Past(day.Event)} on {Day(day.On)}",
    };

    public string Until(EventDay day) => day.For switch
    {
        StandsFor.AnEarlierBeginning => $"the school year begins on {Day(day.On)} (home instruction itself began in an earlier year)",
        StandsFor.TheAges => $"the law's ages begin for the child on {Day(day.On)}",
        StandsFor.ComingUnderThePathway => $"the child comes under this pathway on {Day(day.On)}",
        _ => $"{Present(day.Event)} on {Day(day.On)}",
    };

    public static string Count(int count, DueUnit unit)
    {
        var one = unit switch
        {
            DueUnit.Days => "day",
            DueUnit.BusinessDays => "business day",
            DueUnit.SchoolDays => "teaching day",
            DueUnit.Weeks => "week",
            _ => "month",
        };
        return string.Create(CultureInfo.InvariantCulture, $"{count} {one}{(count == 1 ? "" : "s")}");
    }

    public static string Present(LegalEvent legal) => legal switch
    {
        LegalEvent.Begin => "home instruction begins",
        LegalEvent.Move => "the family moves",
        LegalEvent.Withdrawal => "the child leaves school",
        LegalEvent.End => "home instruction ends",
        LegalEvent.YearStart => "the school year begins",
        LegalEvent.YearEnd => "the school year ends",
        LegalEvent.PublicSchoolStart => "the local public schools open",
        LegalEvent.FormReceived => "the office's form reaches you",
        LegalEvent.NoticeReceived => "the office's notice reaches you",
        LegalEvent.FirstApproval => "the program is first approved",
        _ => "the first filing is made",
    };

    private static string Past(LegalEvent legal) => legal switch
    {
        LegalEvent.Begin => "home instruction began",
        LegalEvent.Move => "the family moved",
        LegalEvent.Withdrawal => "the child left school",
        LegalEvent.End => "home instruction ended",
        LegalEvent.YearStart => "the school year began",
        LegalEvent.YearEnd => "the school year ended",
        LegalEvent.PublicSchoolStart => "the local public schools opened",
        LegalEvent.FormReceived => "the office's form reached you",
        LegalEvent.NoticeReceived => "the office's notice reached you",
        LegalEvent.FirstApproval => "the program was first approved",
        _ => "the first filing was made",
    };
}
