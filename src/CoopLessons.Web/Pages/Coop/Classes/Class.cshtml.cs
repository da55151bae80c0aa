using CoopLessons.Data;
using CoopLessons.Data.Coops;
using CoopLessons.Data.Coops.Days;
using CoopLessons.Data.Families;
using Microsoft.AspNetCore.Mvc;
using Microsoft.EntityFrameworkCore;

namespace CoopLessons.Web.Pages.Coops;

/// <summary>A class: what it is, who has a place and who waits; each family signs its own children up.</summary>
public sealed class ClassModel(AppDb db, TimeProvider clock) : TimetablePage(db, clock)
{
    private const int Tries = 4;

    [BindProperty(SupportsGet = true, Name = "classId")]
    public Guid ClassId { get; set; }

    [BindProperty]
    public InputModel Input { get; set; } = new();

    public CoopClass Class { get; private set; } = null!;

    /// <summary>Own children who are shown and on no list of this class.</summary>
    public IReadOnlyList<ShownLearner> Free { get; private set; } = [];

    public IReadOnlyList<Learner> NotShown { get; private set; } = [];

    public IReadOnlyList<string> Refusals { get; private set; } = [];

    public bool MayGo { get; private set; }

    /// <summary>The day for which the room is looked at: today while the class runs.</summary>
    public DateOnly Day => Today < Class.First ? Class.First : Today > Class.Last ? Class.Last : Today;

    public async Task<IActionResult> OnGetAsync()
    {
        if (!await FindAsync())
            return NotFound();
        Input.NewId = Guid.CreateVersion7();
        return Page();
    }

    public async Task<IActionResult> OnPostSignUpAsync()
    {
        for (var tried = 0; tried < Tries; tried++)
        {
            if (!await FindAsync())
                return NotFound();
            if (Input.Children.Count > 0 && await Db.Learners.CountAsync(l => Input.Children.Contains(l.Id), Ct) != Input.Children.Distinct().Count())
                return NotFound();
            if (Input.NewId == Guid.Empty)
                return BadRequest();
            var chosen = Input.Children.Distinct().Select(id => Table.Children.GetValueOrDefault(id)).OfType<ShownLearner>().OrderBy(c => c.Name, StringComparer.Ordinal).ToList();
            var lines = Table.Lines[ClassId].ToList();
            if (lines.Any(l => l.Id == Input.NewId))
                return Back();
            Refusals = Look(chosen);
            if (Refusals.Count > 0)
                return Again();
            var number = Table.NextNumber(Class);
            var added = Input.Together
                ? [ClassListLine.SignUp(Class, number, Family.Id, Input.NewId, [.. chosen.Select(c => c.LearnerId)], Now)]
                : chosen.Select((c, i) => ClassListLine.SignUp(Class, number + i, Family.Id, i == 0 ? Input.NewId : Guid.CreateVersion7(), [c.LearnerId], Now)).ToList();
            Db.ClassListLines.AddRange(added);
            if (!await SaveNewAsync())
                continue;
            await ReadTableAsync();
            Say(string.Join(" ", added.Select(l => SigningUp.Told(Class, Table.Roll(Class), l.Id, [.. chosen.Where(c => c.LearnerId == l.Child || c.LearnerId == l.Other)]))));
            return Back();
        }

        Refusals = ["Others signed up at the same moment. Send it once more."];
        return Again(StatusCodes.Status409Conflict);
    }

    public async Task<IActionResult> OnPostWithdrawAsync(Guid learnerId)
    {
        ModelState.Clear();
        for (var tried = 0; tried < Tries; tried++)
        {
            if (!await FindAsync() || !Table.Children.TryGetValue(learnerId, out var child) || child.FamilyId != Family.Id && !Mine.Leads)
                return NotFound();
            if (!SigningUp.Has(Table.Roll(Class), learnerId))
                return Back();
            Db.ClassListLines.Add(ClassListLine.Withdraw(Class, Table.NextNumber(Class), Family.Id, learnerId, Now));
            if (!await SaveNewAsync())
                continue;
            Say($"{child.Name} is off the list of “{Class.Title}”.");
            return Back();
        }

        Refusals = ["Others changed the list at the same moment. Send it once more."];
        return Again(StatusCodes.Status409Conflict);
    }

    public async Task<IActionResult> OnPostRemoveAsync()
    {
        ModelState.Clear();
        if (!await FindAsync())
            return NotFound();
        if (!Mine.Teaches || !MayGo)
            return Forbid();
        Db.CoopClasses.Remove(Class);
        if (!await SaveAsync())
        {
            await FindAsync();
            return Again(StatusCodes.Status409Conflict);
        }

        Say($"“{Class.Title}” is removed.");
        return LocalRedirect($"{Here}/classes");
    }

    private IReadOnlyList<string> Look(List<ShownLearner> chosen)
    {
        if (chosen.Count < Input.Children.Distinct().Count())
            return ["A child who is not shown to the co-op cannot be signed up. Show the child first, with age and allergies."];
        if (chosen.Count == 0)
            return ["Choose who comes."];
        if (Input.Together && chosen.Count != 2)
            return ["Together means two children. Choose two, or take the tick away."];
        return Input.Together ? SigningUp.Refusals(Table, Class, chosen) : [.. chosen.SelectMany(c => SigningUp.Refusals(Table, Class, [c])).Distinct()];
    }

    private LocalRedirectResult Back() => LocalRedirect($"{Here}/classes/{ClassId}");

    private async Task<bool> FindAsync()
    {
        await ReadTableAsync();
        if (Table.Classes.SingleOrDefault(c => c.Id == ClassId) is not { } found)
            return false;
        Class = found;
        var own = await Db.Learners.AsNoTracking().Where(l => !l.SetAside).OrderBy(l => l.Order).ToListAsync(Ct);
        Free = [.. own.Select(l => Table.Children.GetValueOrDefault(l.Id)).OfType<ShownLearner>().Where(c => !SigningUp.Has(Table.Roll(Class), c.LearnerId))];
        NotShown = [.. own.Where(l => !Table.Children.ContainsKey(l.Id))];
        MayGo = !await Db.AttendancesTaken.AnyAsync(a => a.CoopId == CoopId && a.ClassId == ClassId, Ct);
        return true;
    }

    public sealed class InputModel
    {
        public Guid NewId { get; set; }
        public List<Guid> Children { get; set; } = [];
        public bool Together { get; set; }
    }
}
