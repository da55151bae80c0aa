using CoopLessons.Core.Units;

namespace CoopLessons.Core.Prepare;

/// <summary>What is done to things begun ahead, by their sort.</summary>
public static class AheadWords
{
    public static string Begin(AheadKind kind) => kind switch
    {
        AheadKind.Seeds => "Sow",
        AheadKind.Eggs => "Set",
        AheadKind.Crystals => "Set up",
        AheadKind.Order => "Order",
        AheadKind.Arrangement => "Arrange",
        _ => "Begin",
    };

    public static string Begun(AheadKind kind) => kind switch
    {
        AheadKind.Seeds => "sown",
        AheadKind.Eggs => "set",
        AheadKind.Crystals => "set up",
        AheadKind.Order => "ordered",
        AheadKind.Arrangement => "arranged",
        _ => "begun",
    };

    public static string Tend(AheadKind kind) => kind switch
    {
        AheadKind.Seeds => "Water",
        AheadKind.Eggs => "Turn and look after",
        AheadKind.Sourdough => "Feed",
        AheadKind.Order or AheadKind.Arrangement => "Ask after",
        _ => "See to",
    };

    /// <summary>What one usually does when the day that needs it moved away after it was begun (common practice, no source).</summary>
    public static string WhenLater(AheadKind kind) => kind switch
    {
        AheadKind.Seeds => "Seedlings only grow on: keep them cool and light, or sow a second pot.",
        AheadKind.Eggs => "Eggs keep to their own day. Watch the hatching when it comes, and move what hangs on it instead.",
        AheadKind.Crystals => "Crystals only get bigger: keep the glass still and covered.",
        AheadKind.Sourdough => "Go on feeding it, or let it rest in the fridge and feed it again a day or two before.",
        AheadKind.Order => "What was ordered can lie; look whether it spoils.",
        AheadKind.Arrangement => "Tell whoever expects you.",
        _ => "Look whether it can wait.",
    };
}
