using CoopLessons.Data;
using CoopLessons.Data.Coops;
using Microsoft.AspNetCore.Mvc;
using Microsoft.AspNetCore.Mvc.Filters;
using Microsoft.EntityFrameworkCore;

namespace CoopLessons.Web.Pages.Coops;

/// <summary>A page of one co-op, found by the id in its address; not there for a family that does not belong to it.</summary>
public abstract class CoopPage(AppDb db, TimeProvider clock) : FamilyPage(db, clock)
{
    [BindProperty(SupportsGet = true, Name = "coopId")]
    public Guid CoopId { get; set; }

    public Coop Coop { get; private set; } = null!;

    /// <summary>This family's part in it.</summary>
    public CoopFamily Mine { get; private set; } = null!;

    /// <summary>Whether only a leading family opens it.</summary>
    protected virtual bool IsForLeaders => false;

    public override Task OnPageHandlerExecutionAsync(PageHandlerExecutingContext context, PageHandlerExecutionDelegate next) =>
        base.OnPageHandlerExecutionAsync(context, async () =>
        {
            var found = await Db.Coops.SingleOrDefaultAsync(c => c.Id == CoopId, Ct);
            if (found is null)
                context.Result = NotFound();
            else if (await MineAsync() is var mine && IsForLeaders && !mine.Leads)
                context.Result = Forbid();
            if (context.Result is not null)
                return new PageHandlerExecutedContext(PageContext, [], context.HandlerMethod, context.HandlerInstance);
            Coop = found!;
            ViewData["Place"] = "Co-op";
            return await next();
        });

    /// <summary>The families that belong to it now, leaders first.</summary>
    protected async Task<IReadOnlyList<CoopFamily>> FamiliesAsync() =>
        [.. (await Db.CoopFamilies.Where(f => f.CoopId == CoopId && f.LeftAt == null).ToListAsync(Ct)).OrderByDescending(f => f.Part).ThenBy(f => f.Name, StringComparer.OrdinalIgnoreCase)];

    private async Task<CoopFamily> MineAsync() => Mine = await Db.CoopFamilies.SingleAsync(f => f.CoopId == CoopId && f.FamilyId == Family.Id, Ct);
}
