using CoopLessons.Data;
using CoopLessons.Data.Coops;
using Microsoft.EntityFrameworkCore;

namespace CoopLessons.Web.Pages.Coops;

/// <summary>What an adult needs at hand on an outing, on a phone without a network or on paper.</summary>
public sealed class OutingCardModel(AppDb db, TimeProvider clock) : OutingPage(db, clock)
{
    public IReadOnlyDictionary<Guid, ShownContact> Contacts { get; private set; } = new Dictionary<Guid, ShownContact>();

    /// <summary>The plain sentence for a family that need not know whose allergy it is.</summary>
    public bool SaysThatSomebodyIsAllergic => Coming.Any(a => !NeedsToKnow(a.FamilyId) && ChildrenOf(a).Any(c => c.Allergies.Count + c.AllergyNote.Length > 0));

    public async Task OnGetAsync() => Contacts = await Db.ShownContacts.AsNoTracking().Where(c => c.CoopId == CoopId).ToDictionaryAsync(c => c.FamilyId, Ct);
}
