using CoopLessons.Core.Schedule;
using CoopLessons.Data;
using CoopLessons.Data.Planning;
using Microsoft.AspNetCore.Mvc;
using Microsoft.EntityFrameworkCore;

namespace CoopLessons.Web.Pages.Planning;

/// <summary>The weekly hours of the family, of a child, or of a grown-up who teaches.</summary>
public sealed class HoursModel(AppDb db, TimeProvider clock) : FamilyPage(db, clock)
{
    private const int LongestDay = 100;

    public sealed class InputModel
    {
        /// <summary>Text for each day, from Monday.</summary>
        public List<string?> Days { get; set; } = [];
    }

    [BindProperty]
    public InputModel Input { get; set; } = new();

    /// <summary>Of the hours that were shown; -1 where there were none of one's own.</summary>
    [BindProperty]
    public int Version { get; set; } = -1;

    /// <summary>Null for the family.</summary>
    public Guid? Owner { get; private set; }
    public string Name { get; private set; } = "";

    /// <summary>Whether hours of one's own hold, which can be given up again.</summary>
    public bool HasOwn { get; private set; }

    public async Task<IActionResult> OnGetAsync(Guid? owner)
    {
        if (!await FindAsync(owner))
            return NotFound();
        await ShowAsync();
        return Page();
    }

    public async Task<IActionResult> OnPostAsync(Guid? owner)
    {
        if (!await FindAsync(owner))
            return NotFound();
        if (Read() is not { } hours)
            return Again();
        var pattern = await PatternAsync();
        if (pattern is null && Version < 0)
        {
            Db.DayPatterns.Add(new DayPattern(owner, hours));
            if (!await SaveNewAsync())
                return await AgainBesideNewerAsync();
        }
        else if (pattern?.Hours != hours)
        {
            // Given up meanwhile, or set for the first time by somebody else.
            if (pattern is null || Version < 0)
                return await AgainBesideNewerAsync();
            pattern.Set(hours);
            Expect(pattern, Version);
            if (!await SaveAsync())
                return await AgainBesideNewerAsync(said: true);
        }

        Say($"{Whose()} are saved.");
        return LocalRedirect("/week/plan#hours");
    }

    /// <summary>Gives hours of one's own up: the family's hold again, or for the family the usual ones.</summary>
    public async Task<IActionResult> OnPostUsualAsync(Guid? owner)
    {
        if (!await FindAsync(owner))
            return NotFound();
        ModelState.Clear();
        if (await PatternAsync() is { } pattern)
        {
            Db.DayPatterns.Remove(pattern);
            Expect(pattern, Version);
            if (!await SaveAsync())
            {
                await ShowAsync();
                return Again(StatusCodes.Status409Conflict);
            }
        }

        Say(owner is null ? "The usual hours hold again." : $"The family’s hours hold for {Name} again.");
        return LocalRedirect("/week/plan#hours");
    }

    public string Whose() => Owner is null ? "The family’s hours" : $"{Name}’s hours";

    private WeekHours? Read()
    {
        var days = new Dictionary<DayOfWeek, IReadOnlyList<Stretch>>();
        while (Input.Days.Count < 7)
            Input.Days.Add(null);
        for (var i = 0; i < 7; i++)
        {
            if (Input.Days[i]?.Length > LongestDay)
                ModelState.AddModelError($"Input.Days[{i}]", $"At most {LongestDay} signs here.");
            else if (!HoursText.TryRead(Input.Days[i], out var stretches, out var fault))
                ModelState.AddModelError($"Input.Days[{i}]", fault);
            else
                days[WeekHours.FromMonday[i]] = stretches;
        }

        return ModelState.IsValid ? new WeekHours(days) : null;
    }

    private async Task<IActionResult> AgainBesideNewerAsync(bool said = false)
    {
        Db.ChangeTracker.Clear();
        Version = (await PatternAsync())?.Version ?? -1;
        HasOwn = Version >= 0;
        ModelState.Remove(nameof(Version));
        if (!said)
            ModelState.AddModelError("", "Somebody changed these hours while you were writing. What you typed is still here; open the page again beside it to compare, then save once more.");
        return Again(StatusCodes.Status409Conflict);
    }

    private async Task ShowAsync()
    {
        var hours = await TeachingHours.LoadAsync(Db, Today, Ct);
        var held = Owner is { } id ? hours.Of(id) : hours.Family;
        Input.Days = [.. WeekHours.FromMonday.Select(d => HoursText.Write(held.On(d)))];
        Version = (await PatternAsync())?.Version ?? -1;
        HasOwn = Version >= 0;
    }

    private Task<DayPattern?> PatternAsync()
    {
        var owner = Owner ?? Guid.Empty;
        return Db.DayPatterns.SingleOrDefaultAsync(p => p.OwnerId == owner, Ct);
    }

    private async Task<bool> FindAsync(Guid? owner)
    {
        Owner = owner;
        if (owner is not { } id)
            return true;
        Name = await Db.Learners.Where(l => l.Id == id).Select(l => l.Name).SingleOrDefaultAsync(Ct)
            ?? await Db.TeachingAdults.Where(a => a.Id == id).Select(a => a.Name).SingleOrDefaultAsync(Ct) ?? "";
        HasOwn = await PatternAsync() is not null;
        return Name.Length > 0;
    }
}
