namespace CoopLessons.Core.Units;

/// <summary>
/// What is usually said of a hazard, and how near an adult usually stays. The ages are common practice, no source: they
/// begin a parent's thought and do not end it.
/// </summary>
/// <param name="Caution">The usual caution in plain words. It never says that anything is safe.</param>
/// <param name="Source">Where a figure or a number to call in it was read; empty where it holds none.</param>
/// <param name="HandsOnUnder">Below this age an adult's own hands do it or hold it; 0 where that is not usual.</param>
/// <param name="BesideUnder">Below this age an adult stays beside; not below <paramref name="HandsOnUnder"/>.</param>
public sealed record HazardCare(HazardKind Kind, string Caution, string Source, int HandsOnUnder, int BesideUnder)
{
    private const string PoisonHelp = "Poison Help 1-800-222-1222 and the National Battery Ingestion Hotline 1-800-498-8666: Illinois Poison Center, Button Batteries";

    private static readonly Dictionary<HazardKind, HazardCare> All = new HazardCare[]
    {
        new(HazardKind.Heat, "Ovens, pans, steam and what comes out of them burn. Turn handles inwards, keep dry gloves at hand and small children out of the kitchen, and cool a burn under running water at once.", "", 7, 13),
        new(HazardKind.Blades, "A sharp blade on a firm board, the fingers of the other hand bent away, one child at a time, the knife laid down before anybody turns round.", "", 6, 12),
        new(HazardKind.Glass, "Glass that breaks cuts. Carry it with both hands, use no chipped or cracked one, and let an adult sweep up, with shoes on.", "", 4, 10),
        new(HazardKind.Chemicals, "Read the label first. Eyes and hands covered, windows open, nothing tasted, nothing mixed that the label does not name, everything in its own marked container. After a swallow or a splash in the eye call Poison Help, 1-800-222-1222 in the United States.", PoisonHelp, 8, 16),
        new(HazardKind.Water, "A child can drown quietly in very little water. Stay within arm’s reach of the small ones, empty basins and tubs at once, and mind wet floors.", "", 5, 12),
        new(HazardKind.SmallParts, "Small parts can choke a child under three. Count them before and after, and clear up before the little ones come near.", "16 CFR Part 1501", 0, 4),
        new(HazardKind.ButtonCells, "A swallowed button cell burns from within, within two hours. Use only things whose battery lid is screwed shut, and count the cells. If one may have been swallowed, go to an emergency room at once and call 1-800-498-8666 on the way.", PoisonHelp, 6, 12),
        new(HazardKind.Magnets, "Strong small magnets that are swallowed pull together inside. Count them before and after, never let one near a mouth, and go to an emergency room at once if one may have been swallowed.", "", 6, 14),
        new(HazardKind.FoodTemperature, "Keep cold food at 40 °F or below and hot food at 140 °F or above. Nothing that spoils stands out for more than two hours, or one hour above 90 °F. A thermometer, not the colour, says when it is done.", FoodTemperatures.Source, 0, 14),
        new(HazardKind.RawFlour, "Raw flour and dough can carry germs: nobody tastes them, hands and table are washed with soap afterwards. The little ones do not play with it.", "FDA, Flour Is a Raw Food and Other Safety Facts", 0, 6),
        new(HazardKind.Sun, "Hats, long sleeves, sun cream, water to drink, and shade around noon.", "", 0, 6),
        new(HazardKind.Traffic, "Cross together, hands held, at a crossing. An adult walks on the side of the road, and everybody can be seen.", "", 10, 13),
        new(HazardKind.Tools, "Eyes covered, work held in a clamp, hair and sleeves tied back, one child at one tool, and the plug drawn before anything is changed.", "", 7, 13),
        new(HazardKind.Animals, "Ask the owner first. Hands away from mouths and faces, no food beside the animals, and soap and water afterwards.", "", 4, 8),
        new(HazardKind.Darkness, "Lamps for everybody, the ground looked over by daylight, one adult in front and one behind.", "", 6, 12),
        new(HazardKind.Plants, "Nothing is tasted that an adult has not named. Wash hands, mind thorns, ticks and pollen, and call Poison Help, 1-800-222-1222 in the United States, after a swallow.", PoisonHelp, 0, 6),
    }.ToDictionary(c => c.Kind);

    /// <summary>Every hazard that an activity can name has one.</summary>
    public static HazardCare Of(HazardKind kind) => All[kind];

    /// <summary>How near an adult usually stays to a child of an age, in completed years.</summary>
    public AdultNeed UsualFor(int age) => age < HandsOnUnder ? AdultNeed.HandsOn : age < BesideUnder ? AdultNeed.Beside : AdultNeed.Alone;
}
