namespace CoopLessons.Documents.Pdf;

/// <summary>The smallest piece of a document that is never cut: a line, a table row, a heading.</summary>
/// <param name="Height">Points.</param>
/// <param name="Draw">Draws it, with its top edge at the given height on the sheet.</param>
internal sealed record Slice(double Height, Action<Sheet, double> Draw)
{
    /// <summary>White above, in points; dropped at the top of a sheet.</summary>
    public double Before { get; init; }

    /// <summary>Stays on the same sheet as the slice after it.</summary>
    public bool KeepWithNext { get; init; }

    /// <summary>What is shown again above this slice where it opens a sheet: a table's column headings.</summary>
    public Slice? Running { get; init; }

    /// <summary>Named in the document's list of places to go to; null for most.</summary>
    public Bookmark? Bookmark { get; init; }

    /// <summary>Begins a sheet of its own.</summary>
    public bool OpensSheet { get; init; }
}

/// <summary>A place of a document that readers find in its list.</summary>
/// <param name="Level">1, or 2 for one inside the last of level 1.</param>
internal sealed record Bookmark(string Title, int Level);

/// <summary>A slice with its place on a sheet.</summary>
internal sealed record Placed(Slice Slice, double Top);

/// <summary>Paper size and margins in points.</summary>
internal sealed record Paper(double Width, double Height, double Margin, double Foot)
{
    public static Paper LetterPortrait { get; } = new(612, 792, 48, 28);
    public static Paper A4Portrait { get; } = new(595.28, 841.89, 48, 28);
    public static Paper LetterLandscape { get; } = new(792, 612, 48, 28);

    public double TextWidth => Width - 2 * Margin;
    public double Bottom => Height - Margin - Foot;

    public bool Wide => Width > Height;

    /// <summary>What is no higher than this is kept on one sheet.</summary>
    public double WorthKeepingWhole => (Bottom - Margin) * 0.85;
}

/// <summary>Lays slices out over sheets.</summary>
internal static class Flow
{
    /// <returns>The sheets in order, each with its slices from top to bottom; at least one sheet.</returns>
    public static IReadOnlyList<IReadOnlyList<Placed>> Over(Paper paper, IReadOnlyList<Slice> slices)
    {
        var sheets = new List<IReadOnlyList<Placed>>();
        var sheet = new List<Placed>();
        var y = paper.Margin;
        for (var i = 0; i < slices.Count; i++)
        {
            var slice = slices[i];
            var bound = i > 0 && slices[i - 1].KeepWithNext;
            var needed = bound ? slice.Height : Together(slices, i);
            if (sheet.Count > 0 && (slice.OpensSheet || y + slice.Before + Math.Min(needed, paper.Bottom - paper.Margin) > paper.Bottom))
            {
                sheets.Add(sheet);
                sheet = [];
                y = paper.Margin;
                if (slice.Running is { } running)
                {
                    sheet.Add(new Placed(running, y));
                    y += running.Height;
                }
            }

            y += sheet.Count > 0 ? slice.Before : 0;
            sheet.Add(new Placed(slice, y));
            y += slice.Height;
        }

        sheets.Add(sheet);
        return sheets;
    }

    private static double Together(IReadOnlyList<Slice> slices, int first)
    {
        var height = slices[first].Height;
        for (var i = first; slices[i].KeepWithNext && i + 1 < slices.Count; i++)
            height += slices[i + 1].Before + slices[i + 1].Height;
        return height;
    }
}
