using CoopLessons.Data;
using CoopLessons.Data.Coops;
using CoopLessons.Data.Coops.Days;
using CoopLessons.Web.Pages.Today;
using Microsoft.AspNetCore.Mvc;

namespace CoopLessons.Web.Pages.Coops;

/// <summary>An outing: who comes, what it costs each family, and whether there are adults enough.</summary>
public sealed class OutingModel(AppDb db, TimeProvider clock) : OutingPage(db, clock)
{
    [BindProperty]
    public InputModel Input { get; set; } = new();

    public string? Fault { get; private set; }

    public OutingAnswer? Own => Answers.SingleOrDefault(a => a.FamilyId == Family.Id);

    public IReadOnlyList<ShownLearner> OwnChildren => [.. Table.Children.Values.Where(c => c.FamilyId == Family.Id).OrderBy(c => c.Name, StringComparer.OrdinalIgnoreCase)];

    public IReadOnlyList<CoopAdult> OwnAdults => [.. Table.Adults.Values.Where(a => a.FamilyId == Family.Id && !a.Gone).OrderBy(a => a.Name, StringComparer.OrdinalIgnoreCase)];

    /// <summary>“5 children and 3 adults”.</summary>
    public string Heads => $"{(Count.Children == 1 ? "1 child" : $"{Count.Children} children")} and {(Count.Adults == 1 ? "1 adult" : $"{Count.Adults} adults")}";

    public void OnGet()
    {
        if (Own is { CancelledOn: null } own)
            Input = new() { Children = own.Children, Adults = own.Adults };
    }

    public async Task<IActionResult> OnPostComeAsync()
    {
        var children = Input.Children.Distinct().ToList();
        var adults = Input.Adults.Distinct().ToList();
        if (children.Any(c => OwnChildren.All(o => o.LearnerId != c)) || adults.Any(a => OwnAdults.All(o => o.Id != a)))
            return NotFound();
        Fault = Outing.On < Today ? "The outing is over."
            : children.Count + adults.Count == 0 ? "Choose who comes, or say that you do not."
            : Today > Count.CancelBy && TakesOff(children, adults) ? $"The last day to take somebody off was {Count.CancelBy.InWords(Today)}. Whoever stays at home is paid for all the same, so leave the ticks." : null;
        if (Fault is not null)
            return Again();
        var own = Own;
        if (own is null)
            Db.OutingAnswers.Add(own = new OutingAnswer(CoopId, OutingId, Family.Id));
        own.Come(children, adults);
        if (!await SaveNewAsync())
        {
            await FindAsync();
            Fault = "Somebody of your family saved at the same moment. Send it once more.";
            return Again(StatusCodes.Status409Conflict);
        }

        Say("The others see that you come.");
        return LocalRedirect($"{Here}/outings/{OutingId}");
    }

    public async Task<IActionResult> OnPostCancelAsync()
    {
        ModelState.Clear();
        if (Own is not { CancelledOn: null } own)
            return LocalRedirect($"{Here}/outings/{OutingId}");
        if (Outing.On < Today)
        {
            Fault = "The outing is over.";
            return Again();
        }

        own.Cancel(Today);
        if (!await SaveAsync())
        {
            await FindAsync();
            return Again(StatusCodes.Status409Conflict);
        }

        Say(Today <= Count.CancelBy ? "You do not come, and nothing is due." : $"You do not come. The last day to say so for nothing was {Count.CancelBy.InWords(Today)}, so it is paid for all the same.");
        return LocalRedirect($"{Here}/outings/{OutingId}");
    }

    /// <summary>Also of a family that said no too late: it pays for those whom it had named.</summary>
    private bool TakesOff(List<Guid> children, List<Guid> adults) =>
        Own is { } own && (own.CancelledOn is not { } no || no > Count.CancelBy) && (ChildrenOf(own).Any(c => !children.Contains(c.LearnerId)) || AdultsOf(own).Any(a => !adults.Contains(a.Id)));

    public sealed class InputModel
    {
        public List<Guid> Children { get; set; } = [];
        public List<Guid> Adults { get; set; } = [];
    }
}
