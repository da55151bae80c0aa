namespace CoopLessons.Web.Charts;

/// <summary>How far the lines across a chart stand apart.</summary>
internal static class ChartScale
{
    private const int MostLines = 5;

    /// <summary>1, 2 or 5 times a power of ten, so that at most five steps reach the highest value.</summary>
    public static int Step(int highest)
    {
        for (var power = 1; ; power *= 10)
        {
            foreach (var digit in new[] { 1, 2, 5 })
            {
                if (digit * power * MostLines >= highest)
                    return digit * power;
            }
        }
    }
}
