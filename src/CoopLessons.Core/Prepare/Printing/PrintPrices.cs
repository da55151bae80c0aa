namespace CoopLessons.Core.Prepare.Printing;

/// <summary>Sizes of paper that a family's printer may hold.</summary>
public enum PaperSize { Letter, A4 }

/// <summary>What printing costs a family, in tenths of a cent.</summary>
/// <param name="GreyTenths">Of a side with grey or black on it.</param>
/// <param name="ColourTenths">Of a side with colour on it.</param>
/// <param name="PaperTenths">Of a sheet of paper, whatever stands on it.</param>
public sealed record PrintPrices(int GreyTenths, int ColourTenths, int PaperTenths)
{
    /// <summary>Most that a side or a sheet is said to cost: ten dollars.</summary>
    public const int Most = 10_000;

    /// <summary>
    /// A shared laser printer: 2.5 cents a grey side, 9.5 a coloured one, 1 cent a sheet, as a mathematics department told
    /// its users (math.lsu.edu/comp/printing/printingcosts). A starting point: each family writes its own.
    /// </summary>
    public static PrintPrices SharedLaser { get; } = new(25, 95, 10);

    /// <summary>What a packet costs in cents, rounded up once at the end. Blank sides cost their paper alone.</summary>
    public int CentsFor(PacketPlan plan)
    {
        var tenths = (long)plan.GreySides * GreyTenths + (long)plan.ColourSides * ColourTenths + (long)plan.Sheets * PaperTenths;
        return (int)((tenths + 9) / 10);
    }
}
