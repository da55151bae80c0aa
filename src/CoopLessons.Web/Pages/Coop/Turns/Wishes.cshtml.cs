using CoopLessons.Data;
using CoopLessons.Data.Coops.Days;
using CoopLessons.Data.Coops.Turns;
using Microsoft.AspNetCore.Mvc;
using Microsoft.EntityFrameworkCore;

namespace CoopLessons.Web.Pages.Coops;

/// <summary>What a wish can say.</summary>
public enum WishSays { Either, Liked, RatherNot }

/// <summary>What each adult of the family likes or would rather not have, and at which meetings it is away.</summary>
public sealed class TurnWishesModel(AppDb db, TimeProvider clock) : CoopPage(db, clock)
{
    [BindProperty]
    public InputModel Input { get; set; } = new();

    public IReadOnlyList<CoopAdult> Adults { get; private set; } = [];

    public IReadOnlyList<TurnRole> Roles { get; private set; } = [];

    /// <summary>Those that are still to come.</summary>
    public IReadOnlyList<CoopMeeting> Meetings { get; private set; } = [];

    public async Task OnGetAsync()
    {
        await ListAsync();
        var wishes = await MyWishesAsync();
        Input.Wishes = [.. from adult in Adults from role in Roles select new WishRow
        {
            AdultId = adult.Id,
            RoleId = role.Id,
            Says = wishes.FirstOrDefault(w => w.AdultId == adult.Id && w.RoleId == role.Id) switch { null => WishSays.Either, { Liked: true } => WishSays.Liked, _ => WishSays.RatherNot },
        }];
        Input.Away = [.. (await MyAbsencesAsync()).Select(a => Key(a.AdultId, a.MeetingId))];
    }

    public async Task<IActionResult> OnPostAsync()
    {
        await ListAsync();
        if (Input.Wishes.Any(w => Adults.All(a => a.Id != w.AdultId) || Roles.All(r => r.Id != w.RoleId)) || Input.Away.Any(key => !(from a in Adults from m in Meetings select Key(a.Id, m.Id)).Contains(key)))
            return NotFound();
        if (!ModelState.IsValid)
            return Again();
        var wishes = await MyWishesAsync();
        foreach (var said in Input.Wishes.DistinctBy(w => (w.AdultId, w.RoleId)))
        {
            var wish = wishes.FirstOrDefault(w => w.AdultId == said.AdultId && w.RoleId == said.RoleId);
            if (said.Says == WishSays.Either && wish is not null)
                Db.TurnWishes.Remove(wish);
            else if (said.Says != WishSays.Either && wish is not null)
                wish.Be(said.Says == WishSays.Liked);
            else if (said.Says != WishSays.Either)
                Db.TurnWishes.Add(new TurnWish(Adults.Single(a => a.Id == said.AdultId), said.RoleId, said.Says == WishSays.Liked));
        }

        var absences = await MyAbsencesAsync();
        foreach (var adult in Adults)
            foreach (var meeting in Meetings)
            {
                var row = absences.FirstOrDefault(a => a.AdultId == adult.Id && a.MeetingId == meeting.Id);
                var away = Input.Away.Contains(Key(adult.Id, meeting.Id));
                if (row is null && away)
                    Db.AdultsAway.Add(new AdultAway(adult, meeting.Id, Mine.Name));
                else if (row is not null && !away)
                    Db.AdultsAway.Remove(row);
            }

        if (!await SaveNewAsync())
            return AgainAfterOthers();
        Say("Saved. A rota that is made from now on heeds it.");
        return LocalRedirect($"/coop/{CoopId}/turns");
    }

    public static string Key(Guid adultId, Guid meetingId) => $"{adultId:N}|{meetingId:N}";

    private async Task ListAsync()
    {
        Adults = (await Db.CoopAdults.AsNoTracking().Where(a => a.CoopId == CoopId && a.FamilyId == Family.Id && !a.Gone).ToListAsync(Ct)).OrderBy(a => a.Name, StringComparer.OrdinalIgnoreCase).ToList();
        Roles = await Db.TurnRoles.AsNoTracking().Where(r => r.CoopId == CoopId && !r.Ended).OrderBy(r => r.Order).ThenBy(r => r.Id).ToListAsync(Ct);
        Meetings = await Db.CoopMeetings.AsNoTracking().Where(m => m.CoopId == CoopId && m.CalledOffAt == null && m.On >= Today).OrderBy(m => m.On).ToListAsync(Ct);
    }

    private Task<List<TurnWish>> MyWishesAsync() => Db.TurnWishes.Where(w => w.CoopId == CoopId && w.FamilyId == Family.Id).ToListAsync(Ct);

    private async Task<List<AdultAway>> MyAbsencesAsync() => [.. (await Db.AdultsAway.Where(a => a.CoopId == CoopId && a.FamilyId == Family.Id).ToListAsync(Ct)).Where(a => Meetings.Any(m => m.Id == a.MeetingId))];

    public sealed class InputModel
    {
        public List<WishRow> Wishes { get; set; } = [];

        /// <summary>Of each adult and meeting, <see cref="Key"/>.</summary>
        public List<string> Away { get; set; } = [];
    }

    public sealed class WishRow
    {
        public Guid AdultId { get; set; }
        public Guid RoleId { get; set; }
        public WishSays Says { get; set; }
    }
}
