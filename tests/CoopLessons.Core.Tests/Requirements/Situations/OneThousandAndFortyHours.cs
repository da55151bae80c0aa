using CoopLessons.Core.Hours;

namespace CoopLessons.Core.Tests.Requirements.Situations;

/// <summary>
/// One log that several laws read: core at home 152 × 150 = 22,800 minutes = 380 h, core at the co-op 104 × 150 = 260 h,
/// other subjects at home 160 × 150 = 400 h; in all 62,400 minutes = 1,040 h on 160 days, 104 of them of 450 minutes,
/// 48 of 300 and 8 of 150.
/// </summary>
internal static class OneThousandAndFortyHours
{
    private static readonly DateOnly First = new(2025, 9, 1);

    public static StateLog Log { get; } = new StateLog()
        .Write(First, 152, 150)
        .Write(First, 104, 150, place: Place.Coop)
        .Write(First, 160, 150, StateLog.Other);
}
