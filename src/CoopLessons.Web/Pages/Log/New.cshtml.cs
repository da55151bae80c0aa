using CoopLessons.Core.Hours;
using CoopLessons.Core.Log;
using CoopLessons.Data;
using CoopLessons.Data.Evidence;
using CoopLessons.Data.Log;
using CoopLessons.Data.OwnLists;
using CoopLessons.Data.Planning;
using CoopLessons.Data.Schedule;
using CoopLessons.Web.Evidence;
using CoopLessons.Web.Files;
using CoopLessons.Web.Pages.Today;
using Microsoft.AspNetCore.Mvc;
using Microsoft.EntityFrameworkCore;

namespace CoopLessons.Web.Pages.Log;

/// <summary>The subjects' rows alone, for a swap.</summary>
public sealed record CountsSwap(EntryForm Input);

/// <summary>Writes an entry: something unplanned, or a planned session done with changes; with photos and files, if there are any.</summary>
[LargestUpload(BroughtPieces.MostBytesOfForm)]
[RequestSizeLimit(BroughtPieces.MostBytesOfForm + LargestUploadAttribute.Around)]
public sealed class NewModel(AppDb db, TimeProvider clock, BroughtPieces brought) : FamilyPage(db, clock)
{
    [BindProperty]
    public EntryForm Input { get; set; } = new();

    /// <summary>Minted with the page: a second sending is known by it.</summary>
    [BindProperty]
    public Guid EntryId { get; set; }

    [BindProperty(SupportsGet = true)]
    public Guid? Session { get; set; }

    /// <summary>What a child said, from which the form is filled.</summary>
    [BindProperty(SupportsGet = true)]
    public Guid? Said { get; set; }

    public PlannedWork? Work { get; private set; }

    private ChildSaid? _said;

    /// <summary>What somebody else wrote of the same session meanwhile.</summary>
    public LogRevision? Other { get; private set; }

    public DateOnly Back { get; private set; }

    /// <param name="date">The day to which it goes; one still to come becomes today.</param>
    /// <param name="what">Words of an earlier entry that is done once more.</param>
    /// <param name="appointment">A co-op day or a lesson out, from which the form is filled.</param>
    /// <param name="sitting">Chapters that were read aloud, from which the form is filled.</param>
    /// <param name="sentence">A sentence in which minutes and names were heard, which the filled form takes over.</param>
    public async Task<IActionResult> OnGetAsync(string? date, string? what, Guid? appointment, Guid? sitting, string? sentence)
    {
        if (!ModelState.IsValid || !await FindSaidAsync() || !await FindWorkAsync())
            return NotFound();
        if (_said is { IsWaiting: false })
            return LocalRedirect("/family/said");
        var kept = appointment is { } fixedPoint ? await Db.Appointments.AsNoTracking().SingleOrDefaultAsync(a => a.Id == fixedPoint, Ct) : null;
        var aloud = sitting is { } read ? await SittingFacts.LoadAsync(Db, read, Today, Ct) : null;
        if (appointment is not null && kept is null || sitting is not null && aloud is null)
            return NotFound();
        if (Work?.Session is { State: SessionState.Done, EntryId: { } done })
            return LocalRedirect($"/log/{done}");
        var words = await EntryWords.LoadAsync(Db, Ct);
        var day = DayWords.TryRead(date, out var asked) ? asked : Work?.Session.Date ?? aloud?.Date ?? Today;
        day = day > Today || day < EntryForm.Earliest ? Today : day;
        EntryId = Guid.CreateVersion7();
        Back = Work?.Session.Date ?? day;
        var offers = Work is null && _said is null && kept is null && aloud is null ? await OffersAsync(words, Short(what), day == Today ? null : day) : null;
        var facts = _said is { } child ? await FactsAsync(words, child) : aloud is not null ? aloud.Facts(words, day) : kept is null ? await FactsAsync(words, day, what, offers) : await FactsAsync(words, day, kept);
        Input = words.Form(LogOffer.Heard(facts, Hear(words, sentence)));
        (Input.Suggests, Input.Offers) = (Work is null && _said is null, offers);
        if (!LargestUploadAttribute.Refused(HttpContext))
            return Page();
        ModelState.AddModelError("Files", PieceWords.TooMuchAtOnce(BroughtPieces.MostBytesOfForm));
        return Again(StatusCodes.Status413PayloadTooLarge);
    }

    /// <summary>The form's words go into the address, and the page then lists what they may mean: for a browser without scripts.</summary>
    public async Task<IActionResult> OnPostLookUpAsync()
    {
        if (!await FindSaidAsync() || !await FindWorkAsync())
            return NotFound();
        var day = Input.Date is { } date && date != Today && date <= Today && date >= EntryForm.Earliest ? $"&date={date.Iso()}" : "";
        return LocalRedirect($"/log/new?what={Uri.EscapeDataString(Short(Input.What))}{day}");
    }

    /// <summary>What is heard in the words as they are typed or dictated, and what they may mean without that.</summary>
    public async Task<IActionResult> OnGetSaidAsync([FromQuery(Name = "Input.What")] string? what)
    {
        ModelState.Clear();
        var words = await EntryWords.LoadAsync(Db, Ct);
        return Fragment("_Said", Hear(words, what)?.UnderstoodAnything == true ? await OffersAsync(words, Short(what), null) : new LogOffers(Short(what), null, [], words, null));
    }

    /// <summary>The subjects as the last entry of the same words counted; nothing where there is none.</summary>
    public async Task<IActionResult> OnGetCountsAsync([FromQuery(Name = "Input.What")] string? what)
    {
        if (what is not { Length: > 0 } || await Db.LastOfAsync(what, Ct) is not { } last)
            return StatusCode(StatusCodes.Status204NoContent);
        var words = await EntryWords.LoadAsync(Db, Ct);
        ModelState.Clear();
        Input.Count(last.Facts.Split, last.Facts.Touches, words.InUse(last.Facts.Split, last.Facts.Touches));
        return Fragment("_CountsSwap", new CountsSwap(Input));
    }

    public async Task<IActionResult> OnPostAsync(List<IFormFile> files)
    {
        var words = await EntryWords.LoadAsync(Db, Ct);
        if (!await FindSaidAsync() || !await FindWorkAsync() || !Input.Name(words.Learners, words.Subjects))
            return NotFound();
        if (EntryId == Guid.Empty)
            return BadRequest();
        Back = Work?.Session.Date ?? (Input.Date <= Today && Input.Date >= EntryForm.Earliest ? Input.Date.Value : Today);
        Input.Suggests = Work is null;
        if (files.Count > BroughtPieces.MostOfForm)
            ModelState.AddModelError("Files", PieceWords.TooMany(BroughtPieces.MostOfForm));
        if (Input.Read(ModelState, nameof(Input), Today) is not { } facts)
            return await AgainWithOffersAsync(words);
        // The files are looked at before anything is written, so that the entry and all of them are kept, or nothing.
        await using var looked = new LookedForm(Db, brought, EntryId);
        if (await looked.LookAsync(files, ModelState, Ct) is { } refused)
            return await AgainWithOffersAsync(words, refused);
        if (await Db.FirstWritingAsync(EntryId, Ct) is { } before)
            return await SentBeforeAsync(before, facts, looked);
        if (_said is { IsWaiting: false })
            return LocalRedirect("/family/said");
        var author = await AuthorAsync();
        if (Work?.Session.State == SessionState.Done)
            return Kept is null ? await LoggedAlreadyAsync() : await BesideAsync(facts, author);
        if (_said is not null)
        {
            _said.Change(EntryId, author, Now);
            await Db.ShowAsync(_said, EntryId, Ct);
        }

        Db.LogEntries.Add(Work is null ? LogEntry.Write(EntryId, facts, author, Now) : Work.MarkDone(EntryId, facts, author, Now));
        return await Db.SaveOnceAsync(EntryId, Ct) switch
        {
            Written.Overtaken => Kept is null || !await FindWorkAsync() ? await LoggedAlreadyAsync() : await BesideAsync(facts, await AuthorAsync()),
            Written.Before when await Db.FirstWritingAsync(EntryId, Ct) is { } first => await SentBeforeAsync(first, facts, looked),
            _ => await SavedAsync(facts, looked),
        };
    }

    /// <summary>The page's id is known: sent twice alike, or shown again by the browser's way back and filled in otherwise.</summary>
    private async Task<IActionResult> SentBeforeAsync(EntryFacts before, EntryFacts facts, LookedForm looked)
    {
        if (before.SaysTheSame(facts))
            return await SavedAsync(facts, looked);
        await FindWorkAsync();
        if (Work?.Session.State == SessionState.Done)
            return await LoggedAlreadyAsync();
        EntryId = Guid.CreateVersion7();
        ModelState.Remove(nameof(EntryId));
        ModelState.AddModelError("", "This page was sent before with other words. To log this as well, save once more.");
        return Again(StatusCodes.Status409Conflict);
    }

    /// <summary>
    /// Two phones wrote of the same session while neither saw the other: what came later is put beside what is there, and
    /// a guardian says which holds.
    /// </summary>
    private async Task<IActionResult> BesideAsync(EntryFacts facts, Author author)
    {
        if (Work?.Session.EntryId is not { } id || await Db.EntryAsync(id, Ct) is not { } found)
            return await LoggedAlreadyAsync();
        if (await EntrySending.TakeAsync(Db, found.Entry.Id, null, facts, author, Now, "", Ct) is not { } outcome)
            return await LoggedAlreadyAsync();
        Say(outcome == Sent.Aside ? $"“{facts.What}” was written by somebody else as well: both are kept, and you are asked which holds." : $"“{facts.What}” is logged.");
        return LocalRedirect($"/log/{id}");
    }

    /// <summary>The entry is written; what came with it becomes pieces of it.</summary>
    private async Task<IActionResult> SavedAsync(EntryFacts facts, LookedForm looked)
    {
        foreach (var (id, piece) in looked.Pieces)
        {
            var about = new PieceFacts(facts.Date, [.. facts.Times.Select(t => t.LearnerId)], facts.Split.MaxBy(s => s.Weight)?.SubjectId, EntryId, "");
            var taken = piece.Verdict.TakenAt is { } at && DateOnly.FromDateTime(at) == facts.Date ? DayWords.OfDay(TimeOnly.FromDateTime(at)) : (int?)null;
            await brought.TakeAsync(id, piece, taken, about, Family.KeepOriginals, await AuthorAsync(), Now, Ct);
        }

        Say((Input.What is { Length: > 0 } what ? $"“{what}” is logged." : "It is logged.") + (looked.Pieces.Count > 0 ? " " + looked.Said() : ""));
        return LocalRedirect($"/today/{(facts.Date > Today || facts.Date < EntryForm.Earliest ? Today : facts.Date).Iso()}");
    }

    private async Task<IActionResult> LoggedAlreadyAsync()
    {
        await FindWorkAsync();
        Other = Work?.Session.EntryId is { } id ? await Db.Standing().SingleOrDefaultAsync(r => r.EntryId == id, Ct) : null;
        if (Other is null)
            ModelState.AddModelError("", "Somebody changed this while you were writing. What you typed is still here; save once more.");
        return Again(StatusCodes.Status409Conflict);
    }

    private async Task<IActionResult> AgainWithOffersAsync(EntryWords words, int status = StatusCodes.Status422UnprocessableEntity)
    {
        Input.Offers = Work is null ? await OffersAsync(words, "", null) : null;
        return Again(status);
    }

    private async Task<LogOffers> OffersAsync(EntryWords words, string typed, DateOnly? date)
    {
        var now = Family.Local(Clock.GetUtcNow());
        return LogOffers.Of(typed, await Db.LoggableAsync(words.Learners, words.Subjects, Today, Ct), words, Today, now.Hour * 60 + now.Minute, date);
    }

    private static SaidEntry? Hear(EntryWords words, string? said) =>
        said is { Length: > 0 } ? SaidEntry.Of(Short(said), [.. words.Learners.Where(l => !l.SetAside).Select(l => (l.Id, l.Name))]) : null;

    private static string Short(string? text) => text is null ? "" : text.Length <= LogRevision.LongestWhat ? text : text[..LogRevision.LongestWhat];

    /// <summary>Only a guardian decides on what a child said. Its planned thing is the form's, unless that is done by now.</summary>
    private async Task<bool> FindSaidAsync()
    {
        if (Said is not { } id)
            return true;
        _said = IsGuardian ? await Db.ChildrenSaid.SingleOrDefaultAsync(s => s.Id == id, Ct) : null;
        if (Session is null && HttpMethods.IsGet(Request.Method) && _said?.SessionId is { } planned && await Db.WorkAsync(planned, Ct) is { Session.State: not SessionState.Done })
            Session = planned;
        return _said is not null;
    }

    private async Task<bool> FindWorkAsync()
    {
        if (Session is not { } id)
            return true;
        Work = await Db.WorkAsync(id, Ct);
        return Work is not null;
    }

    /// <summary>As the child said it; what that was counts as it was planned, else as the last of its name did, else as the first subject.</summary>
    private async Task<EntryFacts> FactsAsync(EntryWords words, ChildSaid said)
    {
        var planned = said.SessionId is { } id ? await Db.WorkAsync(id, Ct) : null;
        var last = planned is null ? (await Db.LastOfAsync(said.What, Ct))?.Facts : null;
        var first = words.Subjects.Where(s => !s.Retired).Take(1).Select(s => new SubjectWeight(s.Id, 1)).ToList();
        return new EntryFacts(
            said.Date > Today ? Today : said.Date, null, said.What, Place.Home, said.Words,
            [new LearnerTime(said.LearnerId, new Minutes(said.Minutes ?? planned?.Minutes ?? 30))],
            planned is { Split.Split.Count: > 0 } ? planned.Split.Split : last?.Split ?? first, planned?.Split.Touches ?? last?.Touches ?? []);
    }

    /// <summary>The appointment as it stands; it counts as the last one of its name did, else as its subject.</summary>
    private async Task<EntryFacts> FactsAsync(EntryWords words, DateOnly day, Appointment kept)
    {
        var last = (await Db.LastOfAsync(kept.Title, Ct))?.Facts;
        var subject = words.Subjects.FirstOrDefault(s => s.Id == kept.SubjectId) ?? words.Subjects.FirstOrDefault(s => !s.Retired);
        var there = words.Learners.Where(l => kept.Learners.Count == 0 ? !l.SetAside : kept.Learners.Contains(l.Id));
        return new EntryFacts(
            day, kept.StartsAt, kept.Title, kept.Kind == AppointmentKind.CoOp ? Place.Coop : Place.Elsewhere, "",
            [.. there.Select(l => new LearnerTime(l.Id, new Minutes(kept.Minutes)))],
            last?.Split ?? (subject is null ? [] : [new SubjectWeight(subject.Id, 1)]), last?.Touches ?? []);
    }

    private async Task<EntryFacts> FactsAsync(EntryWords words, DateOnly day, string? what, LogOffers? offers)
    {
        if (Work?.AsPlanned() is { } planned)
            return planned with { Date = day, StartsAt = Work.Session.StartsAt };
        if (Work is null && what is { Length: > 0 } && await Db.LastOfAsync(what, Ct) is { } last)
            return last.Facts with { Date = day, StartsAt = null, Note = "" };
        // The very words of something that is offered fill the form as a tap on it does; others stay as they are typed.
        if (offers is { Typed.Length: > 0 } && offers.Offers.FirstOrDefault(o => o.Candidate.Session is null && FoldedWords.Key(o.What) == FoldedWords.Key(offers.Typed)) is { } exact)
            return exact.Facts with { Date = day };
        var there = words.Learners.Where(l => !l.SetAside).Select(l => new LearnerTime(l.Id, new Minutes(Work?.Minutes ?? 40)));
        var first = words.Subjects.Where(s => !s.Retired).Take(1).Select(s => new SubjectWeight(s.Id, 1));
        return LogOffer.Heard(new EntryFacts(day, null, Work?.Title ?? Short(what), Place.Home, "", [.. there], [.. first], []), offers?.Said);
    }
}
