using System.Text.Json;
using CoopLessons.Data.Coops.News;

namespace CoopLessons.Data.Scenario;

/// <summary>What the families told each other of late, as <c>seed-scenario/news.json</c> says.</summary>
internal sealed record CoopNews(IReadOnlyList<CoopWord> Notices)
{
    public static CoopNews Read() =>
        JsonSerializer.Deserialize<CoopNews>(ScenarioFiles.Bytes("scenario/news.json"), Coop.Json) ?? throw new InvalidDataException("news.json holds nothing.");

    /// <summary>Adds what one family told. Nothing is saved here.</summary>
    public void Add(AppDb db, Coops.CoopFamily by, TimeZoneInfo zone, DateOnly today)
    {
        foreach (var told in Notices.Where(n => n.Family == by.Name))
            db.CoopNotices.Add(new CoopNotice(by.CoopId, Guid.CreateVersion7(), by, told.Title, told.Text, TimeZoneInfo.ConvertTimeToUtc(today.AddDays(-told.DaysAgo).ToDateTime(told.At), zone)));
    }
}

/// <param name="At">On the clock of the co-op.</param>
internal sealed record CoopWord(string Family, int DaysAgo, TimeOnly At, string Title, string Text);
