using System.Security.Cryptography;
using System.Text.Json;
using CoopLessons.Core.Calendar;
using CoopLessons.Core.Schedule;
using CoopLessons.Data.Families;

namespace CoopLessons.Data.Planning;

/// <summary>A week of a family as it can be laid out: the problem, and what stands behind each of its sessions.</summary>
/// <param name="Now">Minutes after midnight from which on something of today can still begin.</param>
/// <param name="Omitted">What the parent took out of this week when asking.</param>
/// <param name="Appointments">Those of the days that are laid out, by day and start.</param>
/// <param name="NextWeek">The first teaching day after this week.</param>
public sealed record WeekAtHand(
    Week Week, DateOnly Today, int Now, WeekAsk Ask, WeekProblem Problem, IReadOnlyList<Wanted> Wanted, IReadOnlyList<Wanted> Omitted,
    IReadOnlyList<Learner> Learners, IReadOnlyList<TeachingAdult> Adults, DateOnly NextWeek, IReadOnlyList<FixedPoint> Appointments)
{
    private static readonly JsonSerializerOptions Plain = new() { WriteIndented = false };

    /// <summary>Of the grown-up who stands in where the family named nobody who teaches.</summary>
    public static readonly Guid Somebody = new("00000000-0000-8000-8000-000000000001");

    public Wanted Of(Guid sessionId) => Wanted.First(w => w.SessionId == sessionId);

    /// <summary>The same for the same problem: by it a layout knows whether the week is still the one that was laid out.</summary>
    public string Fingerprint => Convert.ToHexStringLower(SHA256.HashData(JsonSerializer.SerializeToUtf8Bytes(
        new
        {
            Problem.Days,
            Learners = Problem.Learners.Select(l => new { l.Id, l.LongestSitting, Free = Listed(l.Free) }),
            Adults = Problem.Adults.Select(a => new { a.Id, Free = Listed(a.Free) }),
            Sessions = Problem.Sessions.Select(s => new
            {
                s.Id,
                s.Title,
                s.Subject,
                s.Learners,
                s.Minutes,
                s.Need,
                s.Weight,
                s.Wait,
                s.After,
                s.Wish,
                s.Was,
                s.Fixed,
                s.OnlyOn,
                s.Alike,
                Bound = s.Bound is { } bound ? new { Hours = Listed(bound.Hours), bound.Because } : null,
            }),
            Stands = Wanted.Concat(Omitted).Select(w => w.From),
        },
        Plain)));

    private static IEnumerable<object> Listed(FreeTime free) => free.Days.OrderBy(d => d.Key).Select(d => new { d.Key, Stretches = d.Value.Select(s => new { s.From, s.To }) });
}
