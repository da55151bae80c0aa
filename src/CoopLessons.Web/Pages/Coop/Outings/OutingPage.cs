using CoopLessons.Core.Coop;
using CoopLessons.Data;
using CoopLessons.Data.Coops;
using CoopLessons.Data.Coops.Days;
using Microsoft.AspNetCore.Mvc;
using Microsoft.AspNetCore.Mvc.Filters;
using Microsoft.EntityFrameworkCore;

namespace CoopLessons.Web.Pages.Coops;

/// <summary>A page of one outing, counted.</summary>
public abstract class OutingPage(AppDb db, TimeProvider clock) : TimetablePage(db, clock)
{
    [BindProperty(SupportsGet = true, Name = "outingId")]
    public Guid OutingId { get; set; }

    public CoopOuting Outing { get; private set; } = null!;

    public IReadOnlyList<OutingAnswer> Answers { get; private set; } = [];

    public OutingCount Count { get; private set; } = null!;

    /// <summary>Answers of families that come, by their names.</summary>
    public IEnumerable<OutingAnswer> Coming => Answers.Where(a => a.CancelledOn is null).OrderBy(a => Table.Families[a.FamilyId].Name, StringComparer.OrdinalIgnoreCase);

    /// <summary>Whoever comes as an adult hands things out to all, and needs to know.</summary>
    public bool NeedsToKnow(Guid family) => family == Family.Id || Coming.Any(a => a.FamilyId == Family.Id && AdultsOf(a).Count > 0);

    public IReadOnlyList<ShownLearner> ChildrenOf(OutingAnswer answer) => [.. answer.Children.Select(id => Table.Children.GetValueOrDefault(id)).OfType<ShownLearner>().Where(c => c.FamilyId == answer.FamilyId)];

    public IReadOnlyList<CoopAdult> AdultsOf(OutingAnswer answer) => [.. answer.Adults.Select(id => Table.Adults.GetValueOrDefault(id)).OfType<CoopAdult>().Where(a => a.FamilyId == answer.FamilyId && !a.Gone)];

    public int AgesNotShown => Coming.SelectMany(ChildrenOf).Count(c => c.Age is null);

    public override Task OnPageHandlerExecutionAsync(PageHandlerExecutingContext context, PageHandlerExecutionDelegate next) =>
        base.OnPageHandlerExecutionAsync(context, async () =>
        {
            if (!await FindAsync())
            {
                context.Result = NotFound();
                return new PageHandlerExecutedContext(PageContext, [], context.HandlerMethod, context.HandlerInstance);
            }

            return await next();
        });

    protected async Task<bool> FindAsync()
    {
        if (await Db.CoopOutings.SingleOrDefaultAsync(o => o.CoopId == CoopId && o.Id == OutingId, Ct) is not { } found)
            return false;
        Outing = found;
        await ReadTableAsync();
        Answers = await Db.OutingAnswers.Where(a => a.CoopId == CoopId && a.OutingId == OutingId).ToListAsync(Ct);
        // Whose age is not shown counts as a young one.
        Count = OutingCount.Of(Outing.ToCore(), [.. Answers.OrderBy(a => a.FamilyId).Select(a => new OutingParty(a.FamilyId, [.. AdultsOf(a).Select(Table.ToCore)], [.. ChildrenOf(a).Select(c => Timetable.ToCore(c, 0))], a.CancelledOn))], Table.Rules);
        return true;
    }
}
