using CoopLessons.Data;
using CoopLessons.Data.Coops;
using CoopLessons.Data.Coops.News;
using CoopLessons.Data.Files;
using Microsoft.AspNetCore.Mvc;
using Microsoft.EntityFrameworkCore;

namespace CoopLessons.Web.Pages.Coops;

/// <summary>A co-op: its families with what they show, what was agreed on, and the way out.</summary>
public sealed class HomeModel(AppDb db, TimeProvider clock, FileShelf shelf) : CoopPage(db, clock)
{
    public IReadOnlyList<CoopFamily> Families { get; private set; } = [];

    public ILookup<Guid, ShownLearner> Learners { get; private set; } = Array.Empty<ShownLearner>().ToLookup(l => l.FamilyId);

    public IReadOnlyDictionary<Guid, ShownContact> Contacts { get; private set; } = new Dictionary<Guid, ShownContact>();

    /// <summary>Notices of others since the family looked last.</summary>
    public int Unread { get; private set; }

    public bool IsLastLeader => Mine.Leads && Families.Count(f => f.Leads) == 1;

    public bool IsAlone => Families.Count == 1;

    public Task OnGetAsync() => ListAsync();

    public async Task<IActionResult> OnPostLeaveAsync()
    {
        await ListAsync();
        if (IsLastLeader && !IsAlone)
        {
            ModelState.AddModelError("", "The last leader stays: somebody must be able to invite and to say who has which part. Make another family a leader first.");
            return Again();
        }

        if (IsAlone)
            Db.Coops.Remove(Coop);
        else
            await Leaving.TakeOutAsync(Db, Mine, Now, Ct);
        // Two leaders who leave at the same moment must not both succeed: the co-op's version lets one.
        if (Mine.LeftAt is not null)
            Db.Entry(Coop).State = EntityState.Modified;
        if (!await SaveAsync())
        {
            await ListAsync();
            return Again(StatusCodes.Status409Conflict);
        }

        if (IsAlone)
            await shelf.ForgetAsync(CoopId, Ct);
        Say(IsAlone ? $"“{Coop.Name}” is ended." : $"Your family left {Coop.Name}. What you had shown is taken away there.");
        return LocalRedirect("/coop");
    }

    private async Task ListAsync()
    {
        Families = await FamiliesAsync();
        Unread = (await NewsSeen.UnreadAsync(Db, Family.Id, Ct)).GetValueOrDefault(CoopId);
        Learners = (await Db.ShownLearners.AsNoTracking().Where(l => l.CoopId == CoopId).ToListAsync(Ct)).OrderByDescending(l => l.Age).ThenBy(l => l.Name, StringComparer.OrdinalIgnoreCase).ToLookup(l => l.FamilyId);
        Contacts = await Db.ShownContacts.AsNoTracking().Where(c => c.CoopId == CoopId).ToDictionaryAsync(c => c.FamilyId, Ct);
    }
}
