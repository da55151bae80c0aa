using CoopLessons.Data;
using CoopLessons.Data.Families;
using CoopLessons.Data.Schedule;
using CoopLessons.Web.Pages.Today;
using CoopLessons.Web.Pages.Week.Ways;
using Microsoft.AspNetCore.Mvc;
using Microsoft.EntityFrameworkCore;

namespace CoopLessons.Web.Pages.Week.Ill;

/// <summary>Somebody is ill: the plan rests, until the family says that everybody is well.</summary>
public sealed class IndexModel(AppDb db, TimeProvider clock) : FamilyPage(db, clock)
{
    /// <summary>A spell that nobody ended is no longer one, but a plan that was given up.</summary>
    private const int MostDaysAgo = 90;

    /// <summary>The one that is open; null where everybody is well.</summary>
    public IllSpell? Spell { get; private set; }

    public IReadOnlyList<Learner> Learners { get; private set; } = [];

    /// <summary>Minted with the page: a second sending is known by it.</summary>
    public Guid NewId { get; } = Guid.CreateVersion7();

    public IllNotice? Notice => Spell is null ? null : new IllNotice(Spell, Learners, Today, Changes: false);

    /// <summary>As they were typed, where they could not be taken.</summary>
    public string? TypedFrom { get; private set; }
    public string? TypedWell { get; private set; }

    public async Task<IActionResult> OnGetAsync()
    {
        await LoadAsync();
        return Page();
    }

    /// <summary>One tap on a day. While a spell is open another tap changes nothing.</summary>
    public async Task<IActionResult> OnPostBeginAsync(Guid newId, string? from, Guid[] learners)
    {
        if (newId == Guid.Empty || !ModelState.IsValid)
            return BadRequest();
        if (await Db.Learners.CountAsync(l => learners.Contains(l.Id), Ct) != learners.Distinct().Count())
            return NotFound();
        await LoadAsync();
        if (Spell is not null || await Db.IllSpells.AnyAsync(s => s.Id == newId, Ct))
            return LocalRedirect("/today");
        if (ReadFrom(from) is not { } first)
            return Again();
        Db.IllSpells.Add(new IllSpell(newId, first, Whole(learners) ? [] : learners, await AuthorAsync(), Now));
        await SaveNewAsync();
        return LocalRedirect("/today");
    }

    /// <summary>Takes the tap back, as if it had not been.</summary>
    public Task<IActionResult> OnPostUndoAsync(Guid spellId) => ChangeAsync(spellId, spell =>
    {
        Db.IllSpells.Remove(spell);
        return null;
    });

    /// <param name="learners">Empty for everybody.</param>
    public async Task<IActionResult> OnPostWhoAsync(Guid spellId, Guid[] learners)
    {
        if (await Db.Learners.CountAsync(l => learners.Contains(l.Id), Ct) != learners.Distinct().Count())
            return NotFound();
        await LoadAsync();
        return await ChangeAsync(spellId, spell =>
        {
            spell.Concern(Whole(learners) ? [] : learners);
            return null;
        });
    }

    public async Task<IActionResult> OnPostKeepAsync(Guid spellId, Guid sessionId, bool keep)
    {
        if (await Db.PlannedSessions.AsNoTracking().SingleOrDefaultAsync(s => s.Id == sessionId, Ct) is not { } session)
            return NotFound();
        return await ChangeAsync(spellId, spell =>
        {
            if (keep)
                spell.Keep(sessionId);
            else
                spell.Rest(sessionId);
            return null;
        }, $"/today/{session.Date.Iso()}");
    }

    /// <summary>Ends it, and leads to the three ways on over its days.</summary>
    /// <param name="date">The first day on which everybody is well.</param>
    public Task<IActionResult> OnPostWellAsync(Guid spellId, string? date) => ChangeAsync(spellId, spell =>
    {
        if (!spell.IsOpen)
            return WaysOf(spell);
        if (!DayWords.TryRead(date, out var well) || well < spell.From || well > Today.AddDays(1))
        {
            TypedWell = date;
            ModelState.AddModelError("date", $"Choose a day from {spell.From.InWords(Today)} to tomorrow.");
            return null;
        }

        // Well again on the very day: nothing of the plan was lost to it.
        if (well == spell.From)
        {
            Db.IllSpells.Remove(spell);
            return "/today";
        }

        spell.End(well);
        return WaysOf(spell);
    });

    /// <summary>The ways on are looked for over so many days at most: those nearest to today.</summary>
    private static string WaysOf(IllSpell spell)
    {
        var last = spell.To!.Value;
        var first = last.DayNumber - spell.From.DayNumber >= Ways.LostModel.MostDays ? last.AddDays(1 - Ways.LostModel.MostDays) : spell.From;
        return Ways.LostModel.AddressOf(first, last, spell.Learners.Count == 0 ? null : spell.Id);
    }

    private async Task<IActionResult> ChangeAsync(Guid spellId, Func<IllSpell, string?> change, string? then = null)
    {
        if (!ModelState.IsValid)
            return BadRequest();
        if (await Db.IllSpells.SingleOrDefaultAsync(s => s.Id == spellId, Ct) is not { } spell)
            return NotFound();
        var leads = change(spell);
        if (!ModelState.IsValid)
        {
            await LoadAsync();
            return Again();
        }

        if (await SaveAsync())
            return LocalRedirect(leads ?? then ?? "/today");
        await LoadAsync();
        return Again(StatusCodes.Status409Conflict);
    }

    private DateOnly? ReadFrom(string? from)
    {
        if (string.IsNullOrEmpty(from))
            return Today;
        if (DayWords.TryRead(from, out var first) && first <= Today && first >= Today.AddDays(-MostDaysAgo))
            return first;
        TypedFrom = from;
        ModelState.AddModelError("from", $"Choose a day from {Today.AddDays(-MostDaysAgo).InWords(Today)} to today.");
        return null;
    }

    /// <summary>Everybody, or nobody said who.</summary>
    private bool Whole(Guid[] learners) => learners.Length == 0 || Learners.All(l => learners.Contains(l.Id));

    private async Task LoadAsync()
    {
        Spell = await Db.IllSpells.AsNoTracking().Where(s => s.To == null).OrderBy(s => s.From).FirstOrDefaultAsync(Ct);
        Learners = await Db.Learners.AsNoTracking().Where(l => !l.SetAside).OrderBy(l => l.Order).ThenBy(l => l.Id).ToListAsync(Ct);
    }
}
