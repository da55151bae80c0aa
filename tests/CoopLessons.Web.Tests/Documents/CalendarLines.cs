using System.Text;

namespace CoopLessons.Web.Tests.Documents;

/// <summary>iCalendar read by the letter of RFC 5545, sharing nothing with the writer: content lines (§ 3.1) and TEXT (§ 3.3.11).</summary>
internal static class CalendarLines
{
    private static readonly UTF8Encoding Strict = new(encoderShouldEmitUTF8Identifier: false, throwOnInvalidBytes: true);

    /// <summary>The lines as they stand in the file, without the CRLF that each must end with.</summary>
    /// <exception cref="FormatException">A line end other than CRLF, or none at the end of the file.</exception>
    public static IReadOnlyList<byte[]> Physical(byte[] file)
    {
        var lines = new List<byte[]>();
        var start = 0;
        for (var i = 0; i < file.Length; i++)
        {
            if (file[i] == '\n')
                throw new FormatException($"A bare line feed at octet {i}.");
            if (file[i] != '\r')
                continue;
            if (i + 1 == file.Length || file[i + 1] != '\n')
                throw new FormatException($"A bare carriage return at octet {i}.");
            lines.Add(file[start..i]);
            start = ++i + 1;
        }

        return start == file.Length ? lines : throw new FormatException("The last line has no end.");
    }

    /// <summary>Each physical line read alone: throws where a fold has cut a character.</summary>
    public static IReadOnlyList<string> Characters(byte[] file) => [.. Physical(file).Select(Strict.GetString)];

    /// <summary>Names with their parameters, and raw values.</summary>
    public static IReadOnlyList<(string Name, string Value)> Properties(byte[] file)
    {
        var unfolded = new List<string>();
        foreach (var line in Characters(file))
        {
            if (line.StartsWith(' ') || line.StartsWith('\t'))
                unfolded[^1] += line[1..];
            else
                unfolded.Add(line);
        }

        // No parameter of ours is quoted, so the first colon ends the name.
        return [.. unfolded.Select(line => (line[..line.IndexOf(':', StringComparison.Ordinal)], line[(line.IndexOf(':', StringComparison.Ordinal) + 1)..]))];
    }

    public static IEnumerable<string> Values(byte[] file, string name) => Properties(file).Where(p => p.Name == name).Select(p => p.Value);

    /// <exception cref="FormatException">An escape that the RFC does not know, or a comma or semicolon that stands bare.</exception>
    public static string Text(string value)
    {
        var text = new StringBuilder();
        for (var i = 0; i < value.Length; i++)
        {
            if (value[i] is ',' or ';')
                throw new FormatException($"A bare “{value[i]}” in “{value}”.");
            if (value[i] != '\\')
            {
                text.Append(value[i]);
                continue;
            }

            text.Append((++i < value.Length ? value[i] : '\0') switch
            {
                '\\' => '\\',
                ';' => ';',
                ',' => ',',
                'n' or 'N' => '\n',
                _ => throw new FormatException($"An unknown escape in “{value}”."),
            });
        }

        return text.ToString();
    }
}
