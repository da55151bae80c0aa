using System.ComponentModel.DataAnnotations;
using CoopLessons.Data;
using CoopLessons.Data.Coops;
using Microsoft.EntityFrameworkCore;

namespace CoopLessons.Web.Pages.Coops;

/// <summary>A family in a form that divides: whether it takes part, and with how many children.</summary>
public sealed class ShareRow
{
    public Guid FamilyId { get; set; }
    public bool TakesPart { get; set; }

    [Range(0, 30, ErrorMessage = "Write a whole number from {1} to {2}.")]
    public int? Learners { get; set; }
}

/// <summary>A page on which money is divided over families.</summary>
public abstract class DividingPage(AppDb db, TimeProvider clock) : CoopPage(db, clock)
{
    public IReadOnlyList<CoopFamily> Families { get; private set; } = [];

    protected async Task ListAsync() => Families = [.. (await FamiliesAsync()).OrderBy(f => f.Name, StringComparer.OrdinalIgnoreCase)];

    /// <summary>All take part, with the children whom they show, as a first proposal.</summary>
    protected async Task<List<ShareRow>> ProposedAsync()
    {
        var shown = await Db.ShownLearners.Where(l => l.CoopId == CoopId).GroupBy(l => l.FamilyId).Select(g => new { g.Key, Count = g.Count() }).ToDictionaryAsync(g => g.Key, g => g.Count, Ct);
        return [.. Families.Select(f => new ShareRow { FamilyId = f.FamilyId, TakesPart = true, Learners = shown.GetValueOrDefault(f.FamilyId) })];
    }
}
