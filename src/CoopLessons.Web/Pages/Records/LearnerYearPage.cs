using CoopLessons.Core.Hours;
using CoopLessons.Core.Sealing;
using CoopLessons.Data;
using CoopLessons.Data.Families;
using CoopLessons.Data.Hours;
using CoopLessons.Data.Sealing;
using Microsoft.AspNetCore.Mvc;
using Microsoft.AspNetCore.Mvc.ModelBinding;
using Microsoft.EntityFrameworkCore;

namespace CoopLessons.Web.Pages.Records;

/// <summary>A page about one learner's school year. Left unsaid, it is the first learner and the year at hand.</summary>
public abstract class LearnerYearPage(AppDb db, TimeProvider clock) : FamilyPage(db, clock)
{
    [BindProperty(SupportsGet = true, Name = "learner")]
    public Guid? LearnerId { get; set; }

    [BindProperty(SupportsGet = true, Name = "year")]
    public Guid? YearId { get; set; }

    /// <summary>In the family's order, those who were set aside last.</summary>
    public IReadOnlyList<Learner> Learners { get; private set; } = [];

    /// <summary>The latest first.</summary>
    public IReadOnlyList<SchoolYear> Years { get; private set; } = [];

    public Learner? Learner { get; private set; }
    public SchoolYear? Year { get; private set; }

    /// <summary>What the log holds; null while there is no learner or no year.</summary>
    public LearnerYear? Log { get; private set; }

    public HoursReport? Report { get; private set; }

    /// <summary>What papers of the year say of its sealing; null where it is open.</summary>
    public SealMark? Seal { get; private set; }

    /// <summary>False where a learner or a year is asked for that the family does not have.</summary>
    protected async Task<bool> FindAsync()
    {
        Learners = await Db.Learners.AsNoTracking().OrderBy(l => l.SetAside).ThenBy(l => l.Order).ThenBy(l => l.Id).ToListAsync(Ct);
        Years = await Db.SchoolYears.AsNoTracking().Include(y => y.Breaks).OrderByDescending(y => y.First).ToListAsync(Ct);
        Learner = LearnerId is { } learner ? Learners.FirstOrDefault(l => l.Id == learner) : Learners.Count > 0 ? Learners[0] : null;
        Year = YearId is { } year ? Years.FirstOrDefault(y => y.Id == year) : AtHand(Years, Today);
        if (IsAddressWrong || (LearnerId is not null && Learner is null) || (YearId is not null && Year is null))
            return false;
        if (Learner is null || Year is null)
            return true;
        Log = await LearnerYear.LoadAsync(Db, Learner.Id, Year.Days, Ct);
        Report = Log?.Report(Year.Name, Today);
        Seal = Log?.Sealed is null ? null : await Db.SealMarkAsync(Year.Id, Learner.Id, Ct);
        return true;
    }

    // What was typed into a form is told beside its field instead.
    private bool IsAddressWrong => ModelState.Any(e => e.Value?.ValidationState == ModelValidationState.Invalid && !e.Key.StartsWith("Input.", StringComparison.Ordinal));

    /// <summary>The year of today; between years the one that ended last; before the first, that one; null without any.</summary>
    /// <param name="years">The latest first.</param>
    internal static SchoolYear? AtHand(IReadOnlyList<SchoolYear> years, DateOnly today) =>
        years.FirstOrDefault(y => y.First <= today) ?? (years.Count > 0 ? years[^1] : null);
}
