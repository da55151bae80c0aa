using CoopLessons.Core.Schedule;
using CoopLessons.Core.Units;
using CoopLessons.Data.Planning;
using CoopLessons.Web.Pages.Today;

namespace CoopLessons.Web.Pages.Week.Layout;

/// <summary>What a line of a day is.</summary>
public enum LaidKind { Appointment, Look, Session }

/// <summary>A line of a day as it would be: a session, the moment at which somebody looks after its wait, or an appointment around which both stand.</summary>
/// <param name="Tells">How it differs from the plan as it stands; empty where it does not.</param>
/// <param name="Meanwhile">For a look: what is done in the waiting time before it.</param>
public sealed record LaidLine(int At, LaidKind Kind, string Title, string Who, string Length, string Hands, string Tells, IReadOnlyList<string> Meanwhile, string Because);

/// <summary>A day of a laid-out week, in the order of its hours.</summary>
public sealed record LaidDay(DateOnly Date, IReadOnlyList<LaidLine> Lines)
{
    public static IReadOnlyList<LaidDay> Of(WeekLaid laid) => [.. laid.AtHand.Problem.Days.Select(d => Of(laid, d))];

    private static LaidDay Of(WeekLaid laid, DateOnly day)
    {
        var places = laid.Plan.Places.Where(p => p.Day == day).ToList();
        var lines = places.Select(p => Session(laid, p)).Concat(places.Where(p => p.LooksAt is not null).Select(p => Look(laid, p, places)));
        lines = lines.Concat(laid.AtHand.Appointments.Where(f => f.Date == day).Select(f => Appointment(laid, f.Appointment)));
        return new LaidDay(day, [.. lines.OrderBy(l => l.At).ThenBy(l => l.Kind).ThenBy(l => l.Title, StringComparer.Ordinal)]);
    }

    private static LaidLine Session(WeekLaid laid, Placing place)
    {
        var session = laid.AtHand.Problem.Sessions.First(s => s.Id == place.SessionId);
        return new LaidLine(
            place.StartsAt, LaidKind.Session, session.Title, Who(laid, session), DayWords.Length(session.Minutes), Hands(laid, session, place.Adult), Tells(laid, place), [],
            session.Bound?.Because ?? "");
    }

    private static LaidLine Appointment(WeekLaid laid, Appointment appointment) => new(
        appointment.StartsAt, LaidKind.Appointment, appointment.Title,
        DayWords.Who([.. laid.AtHand.Learners.Where(l => appointment.Learners.Contains(l.Id))], laid.AtHand.Learners),
        DayWords.Length(appointment.Minutes), "", "", [], "");

    private static LaidLine Look(WeekLaid laid, Placing place, List<Placing> day)
    {
        var (problem, session) = (laid.AtHand.Problem, laid.AtHand.Problem.Sessions.First(s => s.Id == place.SessionId));
        var wait = new Stretch(place.StartsAt + session.Minutes, place.LooksAt!.Value);
        var meanwhile = day.Where(p => p.SessionId != place.SessionId)
            .Select(p => (Place: p, Session: problem.Sessions.First(s => s.Id == p.SessionId)))
            .Where(x => new Stretch(x.Place.StartsAt, x.Place.StartsAt + x.Session.Minutes).Meets(wait))
            .OrderBy(x => x.Place.StartsAt).Select(x => $"{x.Session.Title} ({Who(laid, x.Session)})");
        var waits = laid.AtHand.Of(place.SessionId).Activity?.WaitingFor ?? "";
        return new LaidLine(place.LooksAt!.Value, LaidKind.Look, session.Title, waits, DayWords.Length(wait.Minutes), Name(laid, place.Looker), "", [.. meanwhile], "");
    }

    private static string Who(WeekLaid laid, WeekSession session) =>
        DayWords.Who([.. laid.AtHand.Learners.Where(l => session.Learners.Contains(l.Id))], laid.AtHand.Learners);

    private static string Hands(WeekLaid laid, WeekSession session, Guid? adult) => session.Need switch
    {
        AdultNeed.Alone => "alone",
        AdultNeed.Beside => "beside",
        _ => Name(laid, adult) is { Length: > 0 } name && laid.AtHand.Adults.Count > 1 ? $"hands: {name}" : "hands",
    };

    private static string Name(WeekLaid laid, Guid? adult) => laid.AtHand.Adults.FirstOrDefault(a => a.Id == adult)?.Name ?? "";

    private static string Tells(WeekLaid laid, Placing place)
    {
        var from = laid.AtHand.Of(place.SessionId).From;
        if (from is null)
            return "new";
        if (from.Date != place.Day)
            return $"from {from.Date.Weekday()}";
        return from.StartsAt is { } at && at != place.StartsAt ? $"from {DayWords.Clock(at)}" : "";
    }
}
