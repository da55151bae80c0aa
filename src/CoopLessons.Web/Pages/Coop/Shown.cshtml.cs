using System.ComponentModel.DataAnnotations;
using CoopLessons.Data;
using CoopLessons.Data.Coops;
using CoopLessons.Data.Families;
using CoopLessons.Data.People;
using Microsoft.AspNetCore.Mvc;
using Microsoft.EntityFrameworkCore;

namespace CoopLessons.Web.Pages.Coops;

/// <summary>What the family shows to a co-op, child by child; each by itself, and each can be taken back.</summary>
public sealed class ShownModel(AppDb db, TimeProvider clock) : CoopPage(db, clock)
{
    [BindProperty]
    public InputModel Input { get; set; } = new();

    public IReadOnlyList<Learner> Learners { get; private set; } = [];

    public async Task OnGetAsync()
    {
        await ListAsync();
        var shown = await MineShownAsync();
        var contact = await ContactAsync();
        Input = new()
        {
            GoBy = Mine.Name,
            Learners = [.. Learners.Select(l => shown.TryGetValue(l.Id, out var s) ? new LearnerRow { LearnerId = l.Id, Name = true, Age = s.Age is not null, Allergies = s.ShowsAllergies } : new LearnerRow { LearnerId = l.Id })],
            Contact = contact?.Name ?? "",
            Telephone = contact?.Telephone ?? "",
        };
    }

    public async Task<IActionResult> OnPostAsync()
    {
        await ListAsync();
        if (Input.Learners.Any(row => Learners.All(l => l.Id != row.LearnerId)))
            return NotFound();
        var (name, telephone) = (Input.Contact?.Trim() ?? "", Input.Telephone?.Trim() ?? "");
        if (name.Length == 0 && telephone.Length > 0)
            ModelState.AddModelError("Input.Contact", "Say whose number this is.");
        if (!ModelState.IsValid)
            return Again();
        Mine.GoBy(Input.GoBy);
        var shown = await MineShownAsync();
        var kept = Input.Learners.Where(r => r.Name || r.Age || r.Allergies).Select(r => r.LearnerId).ToHashSet();
        await Data.Coops.Days.SigningUp.WithdrawAsync(Db, CoopId, [.. shown.Keys.Where(id => !kept.Contains(id))], Now, Ct);
        foreach (var learner in Learners)
            Show(learner, Input.Learners.FirstOrDefault(r => r.LearnerId == learner.Id), shown.GetValueOrDefault(learner.Id));
        Show(await ContactAsync(), name, telephone);
        if (!await SaveAsync())
            return Again(StatusCodes.Status409Conflict);
        Say("The co-op sees now what you chose, and nothing else.");
        return LocalRedirect($"/coop/{CoopId}");
    }

    private void Show(Learner learner, LearnerRow? row, ShownLearner? shown)
    {
        // An age or an allergy without a name would be of nobody.
        var wanted = row is { Name: true } or { Age: true } or { Allergies: true };
        if (!wanted)
        {
            if (shown is not null)
                Db.ShownLearners.Remove(shown);
            return;
        }

        if (shown is null)
            Db.ShownLearners.Add(shown = new ShownLearner(CoopId, Family.Id, learner.Id));
        shown.Show(learner, row!.Age, row.Allergies, Today);
    }

    private void Show(ShownContact? contact, string name, string telephone)
    {
        if (name.Length == 0)
        {
            if (contact is not null)
                Db.ShownContacts.Remove(contact);
            return;
        }

        if (contact is null)
            Db.ShownContacts.Add(contact = new ShownContact(CoopId, Family.Id));
        contact.Be(name, telephone);
    }

    private async Task ListAsync() => Learners = await Db.Learners.Where(l => !l.SetAside).OrderBy(l => l.Order).ThenBy(l => l.Name).ToListAsync(Ct);

    private Task<Dictionary<Guid, ShownLearner>> MineShownAsync() => Db.ShownLearners.Where(l => l.CoopId == CoopId && l.FamilyId == Family.Id).ToDictionaryAsync(l => l.LearnerId, Ct);

    private Task<ShownContact?> ContactAsync() => Db.ShownContacts.SingleOrDefaultAsync(c => c.CoopId == CoopId && c.FamilyId == Family.Id, Ct);

    public sealed class InputModel
    {
        [Required(ErrorMessage = "Say how the others call your family.")]
        [StringLength(Data.Families.Family.LongestName, ErrorMessage = "A name has at most {1} signs.")]
        public string GoBy { get; set; } = "";

        public List<LearnerRow> Learners { get; set; } = [];

        [StringLength(Person.LongestName, ErrorMessage = "A name has at most {1} signs.")]
        public string? Contact { get; set; }

        [StringLength(ShownContact.LongestTelephone, ErrorMessage = "A number has at most {1} signs.")]
        [RegularExpression(@"[0-9+()/. \-]*", ErrorMessage = "Write the number with digits, spaces, + and hyphens.")]
        public string? Telephone { get; set; }
    }

    public sealed class LearnerRow
    {
        public Guid LearnerId { get; set; }
        public bool Name { get; set; }
        public bool Age { get; set; }
        public bool Allergies { get; set; }
    }
}
