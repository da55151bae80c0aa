using CoopLessons.Data.OwnLists;

namespace CoopLessons.Web.Pages.Mine;

/// <summary>A thing with what its form needs of the page.</summary>
public sealed record ThingView(Thing Thing, IndexModel Page)
{
    public bool InPictures => Page.Reading == ReadingLevel.Pictures;

    /// <summary>Whether this is the form that was sent and not taken.</summary>
    public bool WasSent => Thing.SessionId is { } id && Page.SentFor == id;
}
