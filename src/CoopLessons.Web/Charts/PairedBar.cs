namespace CoopLessons.Web.Charts;

/// <summary>
/// Two bars above each other, 100 units wide: what is asked, with the part that is too much apart, and what is there.
/// Widths in those units; the longest of several pairs fills the width.
/// </summary>
public sealed record PairedBar(double Asked, double TooMuch, double There)
{
    public const int Width = 100;

    /// <param name="most">The longest bar of the pairs that stand together; 0 where all are empty.</param>
    public static PairedBar Of(int asked, int there, int most)
    {
        double Share(int part) => most == 0 ? 0 : Math.Round(part * (double)Width / most, 2);
        return new PairedBar(Share(Math.Min(asked, there)), Share(Math.Max(0, asked - there)), Share(there));
    }
}
