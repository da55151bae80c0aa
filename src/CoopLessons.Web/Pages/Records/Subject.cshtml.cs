using CoopLessons.Core.Calendar;
using CoopLessons.Data;
using CoopLessons.Data.Evidence;
using CoopLessons.Web.Pages.Log;
using CoopLessons.Web.Pages.Pieces;
using Microsoft.AspNetCore.Mvc;

namespace CoopLessons.Web.Pages.Records;

/// <summary>One subject of one learner between two dates: what is there, and what is not.</summary>
public sealed class SubjectModel(AppDb db, TimeProvider clock) : StandingPage(db, clock)
{
    /// <summary>Key of the subject that is asked for; null while none is chosen.</summary>
    [BindProperty(SupportsGet = true)]
    public string? Show { get; set; }

    [BindProperty(SupportsGet = true)]
    public string? From { get; set; }

    [BindProperty(SupportsGet = true)]
    public string? To { get; set; }

    public IReadOnlyList<SubjectAsked> Subjects { get; private set; } = [];
    public SubjectAsked? Chosen { get; private set; }
    public SubjectAskedFor? Found { get; private set; }
    public DayRange Days { get; private set; }
    public PieceList? Pieces { get; private set; }

    /// <summary>Said beside the dates; null where they can be read.</summary>
    public string? Fault { get; private set; }

    public async Task<IActionResult> OnGetAsync()
    {
        if (!await FindStandingAsync())
            return NotFound();
        if (Log is null || Year is null || Standing is null)
            return Page();
        Subjects = SubjectAsked.All(Standing);
        var days = SubjectAskedFor.Days(Year, From, To);
        Days = days ?? Year.Days;
        if (Show is null)
            return Page();
        Chosen = Subjects.FirstOrDefault(s => s.Key == Show);
        if (Chosen is null)
            return NotFound();
        if (days is null)
        {
            Fault = $"Choose two days of {Year.Name}: {Year.Days}, the earlier one first.";
            return Again();
        }

        Found = await SubjectAskedFor.LoadAsync(Db, Log, Standing, Chosen, Days, Ct);
        Pieces = new PieceList(Found.Evidence.Pieces, await EntryWords.LoadAsync(Db, Ct), Day: true);
        return Page();
    }

    public string With(string key) => Url.Page("/Records/Subject", new { learner = Learner!.Id, year = Year!.Id, show = key, from = From, to = To })!;

    public string Paper => $"/records/{Learner!.Id}/{Year!.Id}/subject.pdf?show={Uri.EscapeDataString(Chosen!.Key)}&from={Days.First:yyyy-MM-dd}&to={Days.Last:yyyy-MM-dd}";
}
