using System.Collections.Concurrent;
using Microsoft.AspNetCore.Razor.TagHelpers;

namespace CoopLessons.Web.Icons;

/// <summary>
/// <c>&lt;icon name="check" /&gt;</c>: the drawing of that name from <c>wwwroot/lib/icons</c>, placed in the page so that it
/// takes the colour of the words beside it. Always hidden from assistive technology: the words carry the meaning.
/// </summary>
/// <remarks>A name without a drawing throws while developing and draws nothing elsewhere.</remarks>
[HtmlTargetElement("icon", TagStructure = TagStructure.NormalOrSelfClosing)]
public sealed class IconTagHelper(IWebHostEnvironment environment) : TagHelper
{
    // Drawings are the same for every host of this assembly; only found ones are kept.
    private static readonly ConcurrentDictionary<string, string> Drawings = new(StringComparer.Ordinal);

    /// <summary>Small letters, digits and hyphens, as the file is named without its ending.</summary>
    public string Name { get; set; } = "";

    /// <inheritdoc />
    public override void Process(TagHelperContext context, TagHelperOutput output)
    {
        ArgumentNullException.ThrowIfNull(output);
        if (Drawing() is not { } drawing)
        {
            if (environment.IsDevelopment())
                throw new InvalidOperationException($"There is no icon named '{Name}' in wwwroot/lib/icons.");
            output.SuppressOutput();
            return;
        }

        output.TagName = "svg";
        output.TagMode = TagMode.StartTagAndEndTag;
        output.Attributes.SetAttribute("class", "icon");
        output.Attributes.SetAttribute("aria-hidden", "true");
        output.Attributes.SetAttribute("focusable", "false");
        output.Attributes.SetAttribute("width", "24");
        output.Attributes.SetAttribute("height", "24");
        output.Attributes.SetAttribute("viewBox", "0 0 24 24");
        output.Attributes.SetAttribute("fill", "none");
        output.Attributes.SetAttribute("stroke", "currentColor");
        output.Attributes.SetAttribute("stroke-linecap", "round");
        output.Attributes.SetAttribute("stroke-linejoin", "round");
        output.Content.SetHtmlContent(drawing);
    }

    private string? Drawing()
    {
        if (Drawings.TryGetValue(Name, out var known)) return known;
        if (Name.Length == 0 || !Name.All(c => char.IsAsciiLetterLower(c) || char.IsAsciiDigit(c) || c == '-')) return null;

        var file = environment.WebRootFileProvider.GetFileInfo($"lib/icons/{Name}.svg");
        if (!file.Exists) return null;
        using var reader = new StreamReader(file.CreateReadStream());
        return Drawings.GetOrAdd(Name, Lines(reader.ReadToEnd()));
    }

    // The file's own frame (size, stroke, class) gives way to the one written above.
    private static string Lines(string file)
    {
        var open = file.IndexOf("<svg", StringComparison.Ordinal);
        var start = open < 0 ? -1 : file.IndexOf('>', open);
        var end = file.LastIndexOf("</svg>", StringComparison.Ordinal);
        return start < 0 || end < start
            ? throw new InvalidDataException("An icon file holds no svg element.")
            : string.Join("", file[(start + 1)..end].Split('\n').Select(line => line.Trim()));
    }
}
