using CoopLessons.Core.Units;
using CoopLessons.Data.Planning;
using CoopLessons.Data.Schedule;

namespace CoopLessons.Web.Pages.Mine;

/// <summary>Pictures and words for what a child does, for one who reads little.</summary>
public static class ThingWords
{
    private const int ShortSentence = 90;
    private const int ShortestThought = 20;

    /// <summary>The picture's name among the icons.</summary>
    public static string Icon(Doing doing, string subjectCode) => doing.Kind switch
    {
        ActivityKind.Talk => "message-circle",
        ActivityKind.ReadAloud => "book-open",
        ActivityKind.Reading => "book",
        ActivityKind.Writing => "pencil",
        ActivityKind.Making => "scissors",
        ActivityKind.Cooking => "soup",
        ActivityKind.Experiment => "flask-conical",
        ActivityKind.Observing => "binoculars",
        ActivityKind.Drawing => "palette",
        ActivityKind.Music => "music",
        ActivityKind.Movement => "person-standing",
        ActivityKind.Outing => "footprints",
        ActivityKind.Game => "dices",
        ActivityKind.Research => "search",
        _ => OfSubject(subjectCode),
    };

    public static string Icon(AppointmentKind kind) => kind switch
    {
        AppointmentKind.CoOp => "users",
        AppointmentKind.LessonOut => "footprints",
        AppointmentKind.Nap => "moon",
        _ => "map-pin",
    };

    /// <summary>Two words at most.</summary>
    public static string Brief(Doing doing, string subjectName) => doing.Kind switch
    {
        ActivityKind.Talk => "Talk",
        ActivityKind.ReadAloud => "Listen",
        ActivityKind.Reading => "Read",
        ActivityKind.Writing => "Write",
        ActivityKind.Making => "Make",
        ActivityKind.Cooking => "Cook",
        ActivityKind.Experiment => "Try out",
        ActivityKind.Observing => "Look closely",
        ActivityKind.Drawing => "Draw",
        ActivityKind.Music => "Music",
        ActivityKind.Movement => "Move",
        ActivityKind.Outing => "Go out",
        ActivityKind.Game => "Play",
        ActivityKind.Research => "Find out",
        _ => TwoWords(subjectName),
    };

    public static string Brief(AppointmentKind kind) => kind switch
    {
        AppointmentKind.CoOp => "Co-op",
        AppointmentKind.LessonOut => "Lesson out",
        AppointmentKind.Nap => "Rest",
        _ => "Away",
    };

    public static string TwoWords(string text) => string.Join(' ', text.Split(' ', StringSplitOptions.RemoveEmptyEntries).Take(2)).TrimEnd(',', ':', '.');

    /// <summary>The first sentence, or as much of it as is soon read.</summary>
    public static string FirstSentence(string text)
    {
        var line = text.Split('\n', StringSplitOptions.RemoveEmptyEntries | StringSplitOptions.TrimEntries).FirstOrDefault() ?? "";
        for (var i = 0; i < line.Length; i++)
        {
            if (line[i] is '.' or '!' or '?' && (i + 1 == line.Length || line[i + 1] == ' '))
            {
                line = line[..(i + 1)];
                break;
            }
        }

        if (line.Length <= ShortSentence)
            return line;
        // Better to the end of a thought than to a length.
        var thought = line.LastIndexOfAny([',', ';', ':'], ShortSentence - 1);
        if (thought >= ShortestThought)
            return line[..thought] + ".";
        var end = line.LastIndexOf(' ', ShortSentence - 1);
        return line[..(end > 0 ? end : ShortSentence - 1)] + "…";
    }

    private static string OfSubject(string code) => code switch
    {
        "mathematics" => "calculator",
        "writing" => "pencil",
        "science" => "flask-conical",
        "nature" => "binoculars",
        "art" => "palette",
        "music" => "music",
        "movement" => "person-standing",
        "home-arts" => "soup",
        "geography" => "map-pin",
        "history" => "history",
        _ => "book",
    };
}
