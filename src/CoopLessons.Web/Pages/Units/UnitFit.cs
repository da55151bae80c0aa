using CoopLessons.Core.Schedule;
using CoopLessons.Data.Planning;
using CoopLessons.Data.Units;
using CoopLessons.Web.Charts;

namespace CoopLessons.Web.Pages.Units;

/// <summary>Something that would help, as the page offers it.</summary>
/// <param name="UnitId">The unit to which the activity belongs.</param>
/// <param name="Elsewhere">The other unit's title; empty for this one's.</param>
public sealed record FitHelp(Remedy Remedy, Guid UnitId, string Elsewhere);

/// <summary>Somebody's line: asked beside there, with what would help where it is too much.</summary>
public sealed record FitRow(string Name, FitLine Line, PairedBar Bar, IReadOnlyList<FitHelp> Help);

/// <summary>Whether a unit fits into its weeks, with one week shown.</summary>
/// <param name="OnTheShelf">The unit has no weeks of its own yet: they are the ones that would be proposed.</param>
public sealed record UnitFit(Unit Unit, IReadOnlyList<FamilyWeek> Weeks, int Shown, int Fullest, bool OnTheShelf)
{
    private const int MostHelp = 3;

    public FamilyWeek Week => Weeks[Shown - 1];

    public bool HasLearners => Week.Fit.Learners.Count > 0;

    public bool AllFit => Weeks.All(w => w.Fit.Fits);

    /// <param name="number">The week that was asked for, from 1; null, or one that the unit does not have, for the fullest.</param>
    public static UnitFit Of(Unit unit, IReadOnlyList<FamilyWeek> weeks, int? number)
    {
        var fullest = Fit.FullestOf([.. weeks.Select(w => w.Fit)]) + 1;
        return new UnitFit(unit, weeks, number is { } n && n >= 1 && n <= weeks.Count ? n : fullest, fullest, !unit.IsTaken);
    }

    public IReadOnlyList<FitRow> Rows
    {
        get
        {
            var most = Week.Fit.Lines.Max(l => Math.Max(l.Demand, l.Capacity));
            return [.. Week.Fit.Lines.Select(l => new FitRow(FitWords.Row(l), l, PairedBar.Of(l.Demand, l.Capacity, most), HelpFor(l)))];
        }
    }

    private IReadOnlyList<FitHelp> HelpFor(FitLine line)
    {
        // One that is enough makes those that are not needless.
        var enough = line.Remedies.Any(r => r.IsEnough);
        return
        [
            .. line.Remedies.Where(r => r.IsEnough == enough).Take(MostHelp).Select(r => Week.UnitOf[r.DemandId] is var of && of.Id == Unit.Id
                ? new FitHelp(r, of.Id, "")
                : new FitHelp(r, of.Id, of.Title)),
        ];
    }
}

/// <summary>The words of the fit.</summary>
public static class FitWords
{
    public const string Hands = "the grown-ups’ hands";

    /// <summary>As it stands in a sentence.</summary>
    public static string Name(FitLine line) => line.LearnerId is null ? Hands : line.Name;

    /// <summary>As it stands at the head of a row.</summary>
    public static string Row(FitLine line) => line.LearnerId is null ? "The" + Hands[3..] : line.Name;

    /// <summary><c>4 h 10 of 5 h, 50 min to spare</c>.</summary>
    public static string Of(FitLine line) => $"{UnitWords.Length(line.Demand)} of {UnitWords.Length(line.Capacity)}, {Rest(line)}";

    public static string Rest(FitLine line) =>
        line.Over > 0 ? $"{UnitWords.Length(line.Over)} too much" : line.Spare > 0 ? $"{UnitWords.Length(line.Spare)} to spare" : "just enough";

    /// <summary>How a week stands, in a word or two: <c>fits</c>, <c>50 min too much</c>, <c>no teaching day</c>.</summary>
    public static string Of(FamilyWeek week) =>
        week.Fit.Fits ? "fits"
        : week.TeachingDays.Count == 0 ? "no teaching day"
        : $"{UnitWords.Length(week.Fit.Lines.Max(l => l.Over))} too much";

    /// <summary>Who has too much: <c>Wren and the grown-ups’ hands</c>.</summary>
    public static string WhoIsOver(Fit fit) => UnitWords.Joined(fit.Lines.Where(l => l.Over > 0).Select(Name));
}
