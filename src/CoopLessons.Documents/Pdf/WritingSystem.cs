using System.Globalization;
using System.Text;

namespace CoopLessons.Documents.Pdf;

/// <summary>Names of the writing systems that families may write in and our paper's typeface does not hold, by blocks of Unicode 16.</summary>
internal static class WritingSystem
{
    // From the published table of blocks (Unicode Character Database, Blocks.txt); only what people write names in today.
    private static readonly (int First, int Last, string Name)[] Blocks =
    [
        (0x0530, 0x058F, "Armenian"), (0x0590, 0x05FF, "Hebrew"), (0x0600, 0x06FF, "Arabic"), (0x0700, 0x074F, "Syriac"), (0x0750, 0x077F, "Arabic"),
        (0x0780, 0x07BF, "Thaana"), (0x07C0, 0x07FF, "N’Ko"), (0x0870, 0x08FF, "Arabic"), (0x0900, 0x097F, "Devanagari"), (0x0980, 0x09FF, "Bengali"),
        (0x0A00, 0x0A7F, "Gurmukhi"), (0x0A80, 0x0AFF, "Gujarati"), (0x0B00, 0x0B7F, "Odia"), (0x0B80, 0x0BFF, "Tamil"), (0x0C00, 0x0C7F, "Telugu"),
        (0x0C80, 0x0CFF, "Kannada"), (0x0D00, 0x0D7F, "Malayalam"), (0x0D80, 0x0DFF, "Sinhala"), (0x0E00, 0x0E7F, "Thai"), (0x0E80, 0x0EFF, "Lao"),
        (0x0F00, 0x0FFF, "Tibetan"), (0x1000, 0x109F, "Myanmar"), (0x10A0, 0x10FF, "Georgian"), (0x1100, 0x11FF, "Korean"), (0x1200, 0x139F, "Ethiopic"),
        (0x13A0, 0x13FF, "Cherokee"), (0x1400, 0x167F, "Canadian Aboriginal"), (0x1780, 0x17FF, "Khmer"), (0x1800, 0x18AF, "Mongolian"), (0x1C90, 0x1CBF, "Georgian"),
        (0x2D00, 0x2D2F, "Georgian"), (0x2D80, 0x2DDF, "Ethiopic"), (0x3040, 0x30FF, "Japanese"), (0x3130, 0x318F, "Korean"), (0x31F0, 0x31FF, "Japanese"),
        (0x3400, 0x4DBF, "Chinese"), (0x4E00, 0x9FFF, "Chinese"), (0xAB70, 0xABBF, "Cherokee"), (0xAC00, 0xD7FF, "Korean"), (0xF900, 0xFAFF, "Chinese"),
        (0xFB13, 0xFB17, "Armenian"), (0xFB1D, 0xFB4F, "Hebrew"), (0xFB50, 0xFDFF, "Arabic"), (0xFE70, 0xFEFF, "Arabic"), (0x20000, 0x323AF, "Chinese"),
    ];

    /// <summary>Null for signs that are no letters, and for what is not in the table.</summary>
    public static string? Of(Rune rune)
    {
        if (Rune.GetUnicodeCategory(rune) is UnicodeCategory.OtherSymbol or UnicodeCategory.PrivateUse or UnicodeCategory.OtherNotAssigned)
            return null;
        foreach (var (first, last, name) in Blocks)
        {
            if (rune.Value >= first && rune.Value <= last)
                return name;
        }

        return null;
    }
}
