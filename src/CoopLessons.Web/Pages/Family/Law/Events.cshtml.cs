using System.ComponentModel.DataAnnotations;
using CoopLessons.Core.Requirements;
using CoopLessons.Data;
using CoopLessons.Data.Families;
using CoopLessons.Data.Requirements;
using CoopLessons.Web.Pages.Law;
using Microsoft.AspNetCore.Mvc;
using Microsoft.EntityFrameworkCore;

namespace CoopLessons.Web.Pages.Families.Law;

/// <summary>What happened to a child and sets the law's days running; told and taken back.</summary>
public sealed class EventsModel(AppDb db, TimeProvider clock) : LawPage(db, clock)
{
    public const int Most = 100;

    /// <summary>What the program cannot know by itself.</summary>
    public static readonly IReadOnlyList<LegalEvent> Told =
    [
        LegalEvent.FormReceived, LegalEvent.NoticeReceived, LegalEvent.Withdrawal, LegalEvent.Move, LegalEvent.PublicSchoolStart,
        LegalEvent.FirstFiling, LegalEvent.FirstApproval, LegalEvent.End,
    ];

    [BindProperty(Name = nameof(Input))]
    public InputModel Input { get; set; } = new();

    public Learner Learner { get; private set; } = null!;

    public IReadOnlyList<RecordedLegalEvent> Events { get; private set; } = [];

    public async Task<IActionResult> OnGetAsync(Guid learnerId)
    {
        if (!await FindAsync(learnerId))
            return NotFound();
        Input = new() { Id = Guid.CreateVersion7(), On = Today };
        return Page();
    }

    public async Task<IActionResult> OnPostAsync(Guid learnerId)
    {
        if (!await FindAsync(learnerId))
            return NotFound();
        if (Input.Id != Guid.Empty && await Db.LegalEvents.AnyAsync(e => e.Id == Input.Id, Ct))
            return RedirectToPage();
        if (Input.What is { } what && !Told.Contains(what))
            ModelState.AddModelError("Input.What", "Choose one from the list.");
        if (ModelState.IsValid && Events.Any(e => e.Event == Input.What && e.On == Input.On))
            ModelState.AddModelError("Input.On", "This is written down already for that day.");
        if (Events.Count >= Most)
            ModelState.AddModelError("", $"More than {Most} are not kept for one child.");
        if (!ModelState.IsValid)
            return Again();
        var told = new RecordedLegalEvent(Input.Id == Guid.Empty ? Guid.CreateVersion7() : Input.Id, learnerId, Input.What!.Value, Input.On!.Value);
        Db.Add(told);
        if (!await SaveNewAsync() && !await Db.LegalEvents.AnyAsync(e => e.Id == told.Id, Ct))
            return AgainAfterOthers();
        Say($"{Learner.Name}: {LawWords.Of(told.Event)}, {LawWords.Of(told.On)}.");
        return RedirectToPage();
    }

    public async Task<IActionResult> OnPostRemoveAsync(Guid learnerId, Guid eventId)
    {
        if (!await FindAsync(learnerId) || await Db.LegalEvents.SingleOrDefaultAsync(e => e.Id == eventId && e.LearnerId == learnerId, Ct) is not { } told)
            return NotFound();
        Db.Remove(told);
        // Taken back by somebody else in the same moment, it is gone all the same.
        await SaveNewAsync();
        Say($"Taken back: {LawWords.Of(told.Event)}, {LawWords.Of(told.On)}.");
        return RedirectToPage();
    }

    private async Task<bool> FindAsync(Guid learnerId)
    {
        if (await Db.Learners.AsNoTracking().SingleOrDefaultAsync(l => l.Id == learnerId, Ct) is not { } learner)
            return false;
        Learner = learner;
        Events = await Db.LegalEvents.AsNoTracking().Where(e => e.LearnerId == learnerId).OrderByDescending(e => e.On).ThenBy(e => e.Id).ToListAsync(Ct);
        return true;
    }

    public sealed class InputModel
    {
        /// <summary>Made with the form, so that a form sent twice tells once.</summary>
        public Guid Id { get; set; }

        [Required(ErrorMessage = "Choose what happened.")]
        public LegalEvent? What { get; set; }

        [Required(ErrorMessage = "Give the day.")]
        [Between1990And2199]
        public DateOnly? On { get; set; }
    }
}
