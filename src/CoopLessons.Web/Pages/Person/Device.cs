namespace CoopLessons.Web.Pages.People;

/// <summary>A place where a person is signed in.</summary>
/// <param name="Since">In the family's time zone.</param>
/// <param name="Until">In the family's time zone; later if the device is used.</param>
/// <param name="TabletId">Where it is a tablet on which children open their lists.</param>
public sealed record Device(string Id, string Name, DateTime Since, DateTime Until, bool IsThis, Guid? TabletId = null)
{
    // Later browsers name the earlier ones, too, so the order matters.
    private static readonly (string Sign, string Name)[] Browsers =
        [("Edg", "Edge"), ("OPR/", "Opera"), ("Firefox/", "Firefox"), ("FxiOS/", "Firefox"), ("CriOS/", "Chrome"), ("Chrome/", "Chrome"), ("Safari/", "Safari")];

    private static readonly (string Sign, string Name)[] Systems =
        [("Android", "Android"), ("iPhone", "iPhone"), ("iPad", "iPad"), ("Windows", "Windows"), ("Mac OS X", "Mac"), ("CrOS", "Chromebook"), ("Linux", "Linux")];

    /// <summary>What a browser calls itself, in a few words; itself where it is none that is known.</summary>
    public static string NameOf(string agent)
    {
        var browser = Browsers.FirstOrDefault(b => agent.Contains(b.Sign, StringComparison.Ordinal)).Name;
        var system = Systems.FirstOrDefault(s => agent.Contains(s.Sign, StringComparison.Ordinal)).Name;
        return (browser, system) switch
        {
            ({ } b, { } s) => $"{b} on {s}",
            ({ } b, null) => b,
            _ => agent.Length == 0 ? "A browser without a name" : agent.Length > 40 ? agent[..40] + "…" : agent,
        };
    }
}
