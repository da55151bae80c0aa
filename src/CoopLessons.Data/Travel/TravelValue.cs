using System.Globalization;
using System.Reflection;
using System.Text.Json;
using Microsoft.EntityFrameworkCore.Metadata;

namespace CoopLessons.Data.Travel;

/// <summary>How a value is written in a family's file.</summary>
public enum ValueForm
{
    Text,
    Id,

    /// <summary><c>yyyy-MM-dd</c>.</summary>
    Date,

    /// <summary>UTC to the microsecond, as both databases hold it: <c>2026-03-12T15:00:00.000000Z</c>.</summary>
    Instant,

    /// <summary><c>HH:mm</c>.</summary>
    Time,
    Whole,
    YesNo,

    /// <summary>Text, so that no reader rounds it.</summary>
    Number,

    /// <summary>One of some names.</summary>
    Choice,
    Base64,

    /// <summary>A small list or record, as the column keeps it.</summary>
    Json,
}

/// <summary>Values on their way between rows and a family's file.</summary>
public static class TravelValue
{
    // PostgreSQL has no text with such a sign, and nobody types it.
    private const char Nul = '\0';
    private const string NoSuchSign = "is text with a sign that no text has";
    private const string InstantForm = "yyyy-MM-dd'T'HH:mm:ss.ffffff'Z'";

    public static ValueForm FormOf(IProperty column)
    {
        var type = Nullable.GetUnderlyingType(column.ClrType) ?? column.ClrType;
        return type switch
        {
            _ when type == typeof(string) => ValueForm.Text,
            _ when type == typeof(Guid) => ValueForm.Id,
            _ when type == typeof(DateOnly) => ValueForm.Date,
            _ when type == typeof(DateTime) => ValueForm.Instant,
            _ when type == typeof(TimeOnly) => ValueForm.Time,
            _ when type == typeof(int) || type == typeof(long) => ValueForm.Whole,
            _ when type == typeof(bool) => ValueForm.YesNo,
            _ when type == typeof(decimal) => ValueForm.Number,
            { IsEnum: true } => type.GetCustomAttribute<FlagsAttribute>() is null ? ValueForm.Choice : ValueForm.Whole,
            _ when type == typeof(byte[]) => ValueForm.Base64,
            _ when column.GetTypeMapping().Converter?.ProviderClrType == typeof(string) => ValueForm.Json,
            _ => throw new NotSupportedException($"{column.DeclaringType.DisplayName()}.{column.Name} is a {type.Name}, for which the file has no form."),
        };
    }

    /// <summary>The value as one plain word or text; null where there is none.</summary>
    public static string? Plain(IProperty column, object? value) => value is null ? null : FormOf(column) switch
    {
        ValueForm.Text => (string)value,
        ValueForm.Id => ((Guid)value).ToString("D"),
        ValueForm.Date => ((DateOnly)value).ToString("yyyy-MM-dd", CultureInfo.InvariantCulture),
        ValueForm.Instant => ((DateTime)value).ToUniversalTime().ToString(InstantForm, CultureInfo.InvariantCulture),
        ValueForm.Time => ((TimeOnly)value).ToString("HH:mm", CultureInfo.InvariantCulture),
        ValueForm.Whole => Convert.ToInt64(value, CultureInfo.InvariantCulture).ToString(CultureInfo.InvariantCulture),
        ValueForm.YesNo => (bool)value ? "true" : "false",
        ValueForm.Number => ((decimal)value).ToString(CultureInfo.InvariantCulture),
        ValueForm.Choice => value.ToString(),
        ValueForm.Base64 => Convert.ToBase64String((byte[])value),
        _ => (string?)column.GetTypeMapping().Converter!.ConvertToProvider(value),
    };

    public static void Write(Utf8JsonWriter to, IProperty column, object? value)
    {
        var plain = Plain(column, value);
        to.WritePropertyName(column.Name);
        if (plain is null)
            to.WriteNullValue();
        else if (FormOf(column) is ValueForm.Whole or ValueForm.YesNo or ValueForm.Json)
            to.WriteRawValue(plain);
        else
            to.WriteStringValue(plain);
    }

    /// <exception cref="FormatException">The value is not what the column takes; the message says what it takes.</exception>
    public static object? Read(IProperty column, JsonElement value)
    {
        if (value.ValueKind == JsonValueKind.Null)
            return column.IsNullable ? null : throw new FormatException("is empty and must not be");
        try
        {
            return FormOf(column) switch
            {
                ValueForm.Text => Text(column, value),
                ValueForm.Id => value.GetGuid(),
                ValueForm.Date => DateOnly.ParseExact(value.GetString()!, "yyyy-MM-dd", CultureInfo.InvariantCulture),
                ValueForm.Instant => DateTime.ParseExact(value.GetString()!, InstantForm, CultureInfo.InvariantCulture, DateTimeStyles.AdjustToUniversal | DateTimeStyles.AssumeUniversal),
                ValueForm.Time => TimeOnly.ParseExact(value.GetString()!, "HH:mm", CultureInfo.InvariantCulture),
                ValueForm.Whole => Whole(column, value),
                ValueForm.YesNo => value.GetBoolean(),
                ValueForm.Number => decimal.Parse(value.GetString()!, NumberStyles.Number, CultureInfo.InvariantCulture),
                ValueForm.Choice => Choice(column, value.GetString()!),
                ValueForm.Base64 => value.GetBytesFromBase64(),
                _ => column.GetTypeMapping().Converter!.ConvertFromProvider(HasNul(value) ? throw new FormatException(NoSuchSign) : value.GetRawText()) ?? throw new FormatException("is empty and must not be"),
            };
        }
        catch (Exception fault) when (fault is InvalidOperationException or FormatException or OverflowException or JsonException or ArgumentException or NotSupportedException)
        {
            throw new FormatException(fault is FormatException && fault.Message.StartsWith("is ", StringComparison.Ordinal) ? fault.Message : $"is no {FormOf(column)}", fault);
        }
    }

    private static string Text(IProperty column, JsonElement value)
    {
        var text = value.GetString()!;
        if (text.Contains(Nul, StringComparison.Ordinal))
            throw new FormatException(NoSuchSign);
        return column.GetMaxLength() is { } most && text.Length > most ? throw new FormatException($"is longer than {most} signs") : text;
    }

    /// <summary>Whether a text or a name anywhere in it holds the sign. The six signs by which JSON writes it may well be typed.</summary>
    private static bool HasNul(JsonElement value) => value.ValueKind switch
    {
        JsonValueKind.String => value.GetString()!.Contains(Nul, StringComparison.Ordinal),
        JsonValueKind.Array => value.EnumerateArray().Any(HasNul),
        JsonValueKind.Object => value.EnumerateObject().Any(m => m.Name.Contains(Nul, StringComparison.Ordinal) || HasNul(m.Value)),
        _ => false,
    };

    private static object Whole(IProperty column, JsonElement value)
    {
        var type = Nullable.GetUnderlyingType(column.ClrType) ?? column.ClrType;
        if (type == typeof(long))
            return value.GetInt64();
        return type.IsEnum ? Enum.ToObject(type, value.GetInt32()) : value.GetInt32();
    }

    private static object Choice(IProperty column, string name)
    {
        var type = Nullable.GetUnderlyingType(column.ClrType) ?? column.ClrType;
        return Enum.GetNames(type).Contains(name, StringComparer.Ordinal) ? Enum.Parse(type, name) : throw new FormatException("is none of the words that stand there");
    }
}
