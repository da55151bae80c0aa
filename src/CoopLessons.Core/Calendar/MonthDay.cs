using System.Globalization;
using System.Text.Json;
using System.Text.Json.Serialization;

namespace CoopLessons.Core.Calendar;

/// <summary>A date of every year, written <c>MM-DD</c>. 29 February falls on 1 March in a common year.</summary>
[JsonConverter(typeof(Converter))]
public readonly record struct MonthDay(int Month, int Day)
{
    public DateOnly In(int year) =>
        Month == 2 && Day == 29 && !DateTime.IsLeapYear(year) ? new DateOnly(year, 3, 1) : new DateOnly(year, Month, Day);

    /// <summary>The first such date on or after the day.</summary>
    public DateOnly OnOrAfter(DateOnly day) => In(day.Year) >= day ? In(day.Year) : In(day.Year + 1);

    /// <summary>Reads <c>08-15</c>; false for anything else, also for a day that no year has.</summary>
    public static bool TryParse(string? text, out MonthDay value)
    {
        // 2000 is a leap year, so that 29 February is read.
        var ok = DateOnly.TryParseExact("2000-" + text, "yyyy-MM-dd", CultureInfo.InvariantCulture, DateTimeStyles.None, out var date);
        value = ok ? new MonthDay(date.Month, date.Day) : default;
        return ok;
    }

    public override string ToString() => string.Create(CultureInfo.InvariantCulture, $"{Month:00}-{Day:00}");

    /// <summary>For people: <c>15 August</c>.</summary>
    public string Words => In(2000).ToString("d MMMM", CultureInfo.InvariantCulture);

    internal sealed class Converter : JsonConverter<MonthDay>
    {
        public override MonthDay Read(ref Utf8JsonReader reader, Type typeToConvert, JsonSerializerOptions options) =>
            TryParse(reader.GetString(), out var value) ? value : throw new JsonException("A date of every year is written MM-DD.");

        public override void Write(Utf8JsonWriter writer, MonthDay value, JsonSerializerOptions options) => writer.WriteStringValue(value.ToString());
    }
}
