using CoopLessons.Core.Requirements.Standing;
using CoopLessons.Data;
using CoopLessons.Data.Requirements;
using CoopLessons.Web.Charts;

namespace CoopLessons.Web.Pages.Records;

/// <summary>A page on where a learner stands under the law in a year.</summary>
public abstract class StandingPage(AppDb db, TimeProvider clock) : LearnerYearPage(db, clock)
{
    public LearnerStanding? Standing { get; private set; }

    public PathwayStanding? Present => Standing?.Now;

    /// <summary>Such as "Linnet, 2026–27, grade 4".</summary>
    public string Heading => Learner is null ? "Records"
        : Year is null ? Learner.Name
        : $"{Learner.Name}, {Year.Name}{Grade}";

    /// <summary>With a comma before it; empty where it is not known or no year is shown.</summary>
    public string Grade => Standing?.Law.Learner.Grade is { } grade ? $", {new Core.Families.Level(grade).Name}" : "";

    protected async Task<bool> FindStandingAsync()
    {
        if (!await FindAsync())
            return false;
        if (Log is not null && Year is not null)
            Standing = await LearnerStanding.LoadAsync(Db, Log, Year, Today, Ct);
        return true;
    }

    /// <summary>The picture of a figure's way to its target, where one can be drawn.</summary>
    public PathChart? Chart(RequirementStanding line) =>
        line is { Forecast: { } forecast, Amounts: { } amounts, Measured: { } measured, Window.Counted: { } days }
            ? PathChart.Of(forecast, measured.Measure, amounts, days, Today)
            : null;
}
