using System.Globalization;
using System.Text;
using System.Xml;

namespace CoopLessons.Documents.Feeds;

/// <summary>A notice in a feed.</summary>
/// <param name="Updated">When it was written, or withdrawn.</param>
/// <param name="Link">Its page.</param>
public sealed record FeedEntry(Guid Id, string Title, string Author, string Text, DateTimeOffset Updated, string Link);

/// <summary>Notices as a feed.</summary>
/// <param name="Id">The same whenever the feed is written again.</param>
/// <param name="Link">Where the notices stand as pages.</param>
/// <param name="Made">When the feed was set up: it says so while it has no entry.</param>
public sealed record FeedContent(Guid Id, string Title, string Link, DateTimeOffset Made, IReadOnlyList<FeedEntry> Entries);

/// <summary>Atom (RFC 4287).</summary>
public static class NewsFeed
{
    private const string Space = "http://www.w3.org/2005/Atom";

    /// <returns>UTF-8 without a byte order mark, the newest entry first.</returns>
    public static byte[] Write(FeedContent content)
    {
        using var bytes = new MemoryStream();
        using (var xml = XmlWriter.Create(bytes, new XmlWriterSettings { Encoding = new UTF8Encoding(encoderShouldEmitUTF8Identifier: false), Indent = true, NewLineChars = "\n" }))
        {
            xml.WriteStartElement("feed", Space);
            xml.WriteElementString("id", Space, Urn(content.Id));
            xml.WriteElementString("title", Space, PlainText.OneLine(content.Title));
            xml.WriteElementString("updated", Space, Time(content.Entries.Select(e => e.Updated).Append(content.Made).Max()));
            Link(xml, content.Link);
            foreach (var entry in content.Entries.OrderByDescending(e => e.Updated).ThenBy(e => e.Id))
                Entry(xml, entry);
            xml.WriteEndElement();
        }

        return bytes.ToArray();
    }

    private static void Entry(XmlWriter xml, FeedEntry entry)
    {
        xml.WriteStartElement("entry", Space);
        xml.WriteElementString("id", Space, Urn(entry.Id));
        xml.WriteElementString("title", Space, PlainText.OneLine(entry.Title));
        xml.WriteElementString("updated", Space, Time(entry.Updated));
        xml.WriteStartElement("author", Space);
        xml.WriteElementString("name", Space, PlainText.OneLine(entry.Author));
        xml.WriteEndElement();
        Link(xml, entry.Link);
        xml.WriteStartElement("content", Space);
        xml.WriteAttributeString("type", "text");
        xml.WriteString(PlainText.Clean(entry.Text));
        xml.WriteEndElement();
        xml.WriteEndElement();
    }

    private static void Link(XmlWriter xml, string address)
    {
        xml.WriteStartElement("link", Space);
        xml.WriteAttributeString("rel", "alternate");
        xml.WriteAttributeString("href", address);
        xml.WriteEndElement();
    }

    private static string Urn(Guid id) => $"urn:uuid:{id:D}";

    private static string Time(DateTimeOffset at) => at.UtcDateTime.ToString("yyyy-MM-ddTHH:mm:ssZ", CultureInfo.InvariantCulture);
}
