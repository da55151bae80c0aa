using CoopLessons.Core.Schedule;

namespace CoopLessons.Core.Tests.Schedule.Layout;

/// <summary>A small invented week into which everything odd is put: minutes beside the grid, fixed sessions that clash, hours and days to which a session is bound.</summary>
internal static class OddWeek
{
    public static WeekProblem Of(int seed)
    {
        var week = AnyWeek.Of(WeekSize.Tiny, seed);
        var draw = unchecked((uint)seed * 2654435761u);
        return week with { Sessions = [.. week.Sessions.Select(Odd)] };

        int Next(int below)
        {
            unchecked
            {
                draw = draw * 1664525u + 1013904223u;
            }

            return (int)((draw >> 8) % (uint)below);
        }

        WeekSession Odd(WeekSession session)
        {
            var day = week.Days[Next(5)];
            session = session with { Minutes = Math.Max(1, session.Minutes - Next(5)) };
            return Next(6) switch
            {
                0 => session with { Was = new OldPlace(day, 480 + Next(420)), Fixed = true, Alike = null },
                1 => session with { Was = new OldPlace(day, 480 + Next(420)) },
                2 => session with { Bound = new BoundHours(new FreeTime(new Dictionary<DateOnly, IReadOnlyList<Stretch>> { [day] = [new(540 + Next(30), 700 + Next(30))] }), "while Robin sleeps") },
                3 => session with { OnlyOn = [day, week.Days[Next(5)]] },
                _ => session,
            };
        }
    }
}
