using System.Net;
using CoopLessons.Core.Requirements;
using CoopLessons.Data.Families;
using CoopLessons.Data.Requirements;
using CoopLessons.Web.Tests.App;
using Microsoft.EntityFrameworkCore;

namespace CoopLessons.Web.Tests.Law;

/// <summary>What the tests of these pages furnish a family with.</summary>
internal static class LawFamily
{
    public static readonly DateOnly July = new(2025, 7, 1);

    public static async Task<Guid> LearnerAsync(this TestFamily family, string name = "Wren", int order = 0)
    {
        var id = Guid.CreateVersion7();
        await family.WithDbAsync(async db =>
        {
            db.Add(new Learner(id, name, new DateOnly(2017, 5, 1), order));
            await db.SaveChangesAsync();
        });
        return id;
    }

    /// <summary>The child stands under a pathway of the catalog from a day on.</summary>
    public static async Task<Guid> StandsAsync(this TestFamily family, Guid learnerId, string code, string pathwayId, DateOnly? from = null)
    {
        var row = new LearnerPathway(Guid.CreateVersion7(), learnerId, code, pathwayId, from ?? July, SpanReason.Begins, null);
        await family.WithDbAsync(async db =>
        {
            db.Add(row);
            await db.SaveChangesAsync();
        });
        return row.Id;
    }

    public static async Task<OwnPathway> OwnAsync(this TestFamily family, string name = "Our own way", params Guid[] forLearners)
    {
        var own = new OwnPathway(Guid.CreateVersion7(), OwnPathways.Small(name));
        await family.WithDbAsync(async db =>
        {
            db.Add(own);
            foreach (var learner in forLearners)
                db.Add(new LearnerPathway(Guid.CreateVersion7(), learner, own, July, SpanReason.Begins));
            await db.SaveChangesAsync();
        });
        return own;
    }

    public static Task<List<LearnerPathway>> RowsAsync(this TestFamily family) =>
        family.FromDbAsync(db => db.LearnerPathways.AsNoTracking().OrderBy(p => p.From).ToListAsync());

    public static Task<Guid> SubjectAsync(this TestFamily family, string code) =>
        family.FromDbAsync(db => db.Subjects.Where(s => s.Code == code).Select(s => s.Id).SingleAsync());

    public static async Task IsRefusedAsync(this HttpResponseMessage answer, HttpStatusCode status = HttpStatusCode.UnprocessableEntity)
    {
        Assert.Equal(status, answer.StatusCode);
        var page = await Visitor.ParseAsync(answer);
        Assert.NotEmpty(page.QuerySelectorAll(".field-validation-error, .fault, .validation-summary-errors li"));
    }

    /// <summary>The pathway of a place that asks the program's own catalog something the test needs.</summary>
    public static (string Code, Pathway Pathway) First(Func<Pathway, bool> holds) =>
        Catalog.Of50AndDc.All.SelectMany(j => j.Pathways.Select(p => (j.Code, p))).First(x => holds(x.p));
}
