using CoopLessons.Data.Coops;

namespace CoopLessons.Web.Pages.Coops;

/// <summary>How a co-op's pages put things.</summary>
public static class CoopWords
{
    public static string Families(int count) => count == 1 ? "1 family" : $"{count} families";

    public static string Of(CoopPart part) => part switch
    {
        CoopPart.Leader => "leader",
        CoopPart.Teacher => "teacher",
        _ => "member",
    };

    public static string A(CoopPart part) => $"a {Of(part)}";

    /// <summary>What a part may do, in a few words.</summary>
    public static string May(CoopPart part) => part switch
    {
        CoopPart.Leader => "invites, says who has which part, and words what was agreed on; teaches and takes part, too",
        CoopPart.Teacher => "publishes units for all and teaches; takes part, too",
        _ => "takes units up and shows what it wants to show",
    };
}
