using System.ComponentModel.DataAnnotations;
using CoopLessons.Data;
using CoopLessons.Data.Families;
using CoopLessons.Data.Planning;
using CoopLessons.Web.Pages.Account;
using Microsoft.EntityFrameworkCore;

namespace CoopLessons.Web.Pages.Planning;

/// <summary>What a parent writes about somebody who teaches.</summary>
public sealed class AdultInput
{
    [Required(ErrorMessage = "Give a name.")]
    [StringLength(TeachingAdult.LongestName, ErrorMessage = "A name has at most {1} signs.")]
    [Visible]
    public string Name { get; set; } = "";

    /// <summary>Somebody who signs in to this family, or nobody.</summary>
    public Guid? PersonId { get; set; }

    [StringLength(TeachingAdult.LongestPhone, ErrorMessage = "At most {1} signs here.")]
    public string? Phone { get; set; }

    public bool SetAside { get; set; }
}

/// <summary>Somebody who is there to teach.</summary>
public sealed class AdultModel(AppDb db, TimeProvider clock) : PlanThingPage<TeachingAdult, AdultInput>(db, clock)
{
    private const int MostAtOnce = 4;

    /// <summary>Those who sign in to the family.</summary>
    public IReadOnlyList<Membership> Members { get; private set; } = [];

    protected override IQueryable<TeachingAdult> Rows(Guid id)
    {
        Members = [.. Db.Memberships.AsNoTracking().OrderBy(m => m.Since).ThenBy(m => m.PersonId)];
        return Db.TeachingAdults.Where(a => a.Id == id);
    }

    protected override AdultInput FormOf(TeachingAdult row) => new() { Name = row.Name, PersonId = row.PersonId, Phone = row.Phone, SetAside = row.SetAside };

    protected override string TitleOf(TeachingAdult row) => row.Name;

    protected override bool NamesOwn() => Input.PersonId is not { } id || Members.Any(m => m.PersonId == id);

    protected override void Check()
    {
        var others = Choices.Adults.Count(a => !a.SetAside && a.Id != Row?.Id && a.Id != NewId);
        if (!Input.SetAside && others >= MostAtOnce)
            ModelState.AddModelError("Input.Name", $"At most {MostAtOnce} grown-ups are planned with at once. Set one of them aside first.");
    }

    protected override Task<TeachingAdult> MakeAsync(Guid id) =>
        Task.FromResult(new TeachingAdult(id, Input.Name, Input.PersonId, Input.Phone ?? "", Choices.Adults.Select(a => a.Order + 1).DefaultIfEmpty(0).Max()));

    protected override void Write(TeachingAdult row)
    {
        row.Describe(Input.Name, Input.PersonId, Input.Phone ?? "");
        if (Input.SetAside)
            row.PutAside();
        else
            row.BringBack();
    }

    protected override async Task<IReadOnlyList<string>> BecomesAsync(TeachingAdult row)
    {
        var planned = await Db.PlannedSessions.CountAsync(s => s.AdultId == row.Id, Ct);
        return
        [
            planned == 0 ? "No planned session names them." : planned == 1 ? "1 session that names them stays planned, and names nobody." : $"{planned} sessions that name them stay planned, and name nobody.",
            "Their hours go, and appointments go on without them. Their sign-in is another matter and stays.",
            "To keep them for later, set them aside instead.",
        ];
    }

    protected override async Task LoosenAsync(TeachingAdult row)
    {
        foreach (var session in await Db.PlannedSessions.Where(s => s.AdultId == row.Id).ToListAsync(Ct))
            session.TakeHandsOf(null);
        foreach (var appointment in (await Db.Appointments.ToListAsync(Ct)).Where(a => a.Adults.Contains(row.Id)))
            appointment.Describe(appointment.Facts with { Adults = [.. appointment.Adults.Where(a => a != row.Id)] });
        Db.DayPatterns.RemoveRange(await Db.DayPatterns.Where(p => p.OwnerId == row.Id).ToListAsync(Ct));
    }
}
