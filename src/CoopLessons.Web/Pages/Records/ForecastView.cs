using CoopLessons.Core.Requirements.Forecasts;
using CoopLessons.Core.Requirements.Standing;
using CoopLessons.Web.Charts;

namespace CoopLessons.Web.Pages.Records;

/// <summary>A figure's forecast with its picture.</summary>
public sealed record ForecastView(RequirementStanding Line, Forecast Forecast, PathChart? Chart)
{
    private Measure Measure => Line.Measured!.Value.Measure;

    /// <summary>Unique on the page: the days of two pathways may be of one legal year, but not begin on the same day.</summary>
    public string Key => $"{Line.Requirement.Id}-{Line.Window.Counted!.Value.First:yyyyMMdd}";

    public Quantity Of(int value) => new(value, Measure);

    public string Reached(DateOnly? date) => date is { } day ? RecordWords.Of(day) : "not in this year";
}
