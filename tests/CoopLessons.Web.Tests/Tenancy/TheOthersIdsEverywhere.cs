using System.Net;
using System.Reflection;
using System.Text.Json;
using CoopLessons.Data;
using CoopLessons.Data.Tenancy;
using CoopLessons.Web.Security;
using CoopLessons.Web.Tests.App;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Mvc;
using Microsoft.AspNetCore.Mvc.RazorPages;
using Microsoft.AspNetCore.Mvc.RazorPages.Infrastructure;
using Microsoft.AspNetCore.Routing;
using Microsoft.EntityFrameworkCore;
using Microsoft.Extensions.DependencyInjection;

namespace CoopLessons.Web.Tests.Tenancy;

/// <summary>
/// Every route and every handler, found from the program itself so that a new one joins by being there. One id after the
/// other is the other family's, the rest are one's own.
/// </summary>
[Collection(SharedServer.Name)]
public sealed class TheOthersIdsEverywhere(TestServer server)
{
    [Fact]
    public async Task Open_nothing_on_any_route()
    {
        var (mine, other) = (await Furnished.MakeAsync(server, "Alder"), await Furnished.MakeAsync(server, "Birch"));
        var tried = 0;
        foreach (var (page, names) in (await PagesAsync()).Select(p => (p, Ids(p, "Get"))))
        {
            foreach (var foreign in names)
            {
                var path = Address(page, names, foreign, mine, other, null);
                using var answer = await mine.Opener(page.ViewEnginePath).OpenAsync(path);
                Assert.True(answer.StatusCode == HttpStatusCode.NotFound, $"GET {path} with the other's {foreign} answered {(int)answer.StatusCode}");
                tried++;
            }
        }

        Assert.True(tried > 20, $"Only {tried} addresses were tried.");
    }

    [Fact]
    public async Task Change_nothing_by_any_form()
    {
        var (mine, other) = (await Furnished.MakeAsync(server, "Alder"), await Furnished.MakeAsync(server, "Birch"));
        var before = await EverythingAsync(other);
        var (token, childs) = (await mine.Family.Guardian.TokenAsync("/family/learners/new"), mine.Lists.On(server));
        var childsToken = await childs.TokenAsync("/mine");
        var tried = 0;
        foreach (var page in await PagesAsync())
        {
            foreach (var handler in page.HandlerMethods.Where(h => h.HttpMethod == "Post"))
            {
                var names = Ids(page, handler.HttpMethod, handler);
                foreach (var foreign in names)
                {
                    var path = Address(page, [], foreign, mine, other, handler.Name);
                    var fields = names.Select(n => new KeyValuePair<string, string>(n, (n == foreign ? other : mine).IdFor(page.ViewEnginePath, n).ToString()))
                        .Append(new("__RequestVerificationToken", mine.Opener(page.ViewEnginePath) == mine.Family.Guardian ? token : childsToken));
                    using var answer = await (mine.Opener(page.ViewEnginePath) == mine.Family.Guardian ? mine.Family.Guardian : childs).PostAsync(path, fields);
                    Assert.True(answer.StatusCode == HttpStatusCode.NotFound, $"POST {path} with the other's {foreign} answered {(int)answer.StatusCode}");
                    tried++;
                }
            }
        }

        Assert.True(tried > 25, $"Only {tried} forms were tried.");
        Assert.Equal(before, await EverythingAsync(other));
    }

    private async Task<IReadOnlyList<CompiledPageActionDescriptor>> PagesAsync()
    {
        var loader = server.Services.GetRequiredService<PageLoader>();
        var pages = server.Services.GetRequiredService<EndpointDataSource>().Endpoints
            .Select(e => e.Metadata.GetMetadata<PageActionDescriptor>()).OfType<PageActionDescriptor>().DistinctBy(p => p.ViewEnginePath)
            .Where(p => Access.Table.First(row => p.ViewEnginePath.StartsWith(row.Folder + "/", StringComparison.Ordinal)).Policy != Access.Anybody);
        var compiled = new List<CompiledPageActionDescriptor>();
        foreach (var page in pages)
            compiled.Add(await loader.LoadAsync(page, EndpointMetadataCollection.Empty));
        return compiled;
    }

    /// <summary>Names of the ids that a page takes from its route, its address or a handler's fields.</summary>
    private static List<string> Ids(CompiledPageActionDescriptor page, string method, HandlerMethodDescriptor? one = null)
    {
        var handlers = one is null ? page.HandlerMethods.Where(h => h.HttpMethod == method && string.IsNullOrEmpty(h.Name)) : [one];
        var names = handlers.SelectMany(h => h.Parameters).Where(p => IsId(p.ParameterType)).Select(p => p.BindingInfo?.BinderModelName ?? p.Name)
            .Concat(page.BoundProperties.OfType<PageBoundPropertyDescriptor>()
                .Where(p => IsId(p.ParameterType) && (method == "Post" || p.Property.GetCustomAttribute<BindPropertyAttribute>()?.SupportsGet == true))
                .Select(p => p.BindingInfo?.BinderModelName ?? p.Name))
            .Concat(RouteFilling.Names(page.AttributeRouteInfo!.Template!).Where(n => n is not ("date" or "week" or "ending" or "code" or "secret" or "size" or "key")))
            .Distinct(StringComparer.OrdinalIgnoreCase);
        // Ids that the page itself mints for something new: the other's is as good as any, and makes a row of one's own.
        return [.. names.Where(n => !Furnished.IsMinted(page.ViewEnginePath, n))];
    }

    private static bool IsId(Type type) => (Nullable.GetUnderlyingType(type) ?? type) == typeof(Guid);

    private static string Address(CompiledPageActionDescriptor page, List<string> query, string foreign, Furnished mine, Furnished other, string? handler)
    {
        string Id(string name) => (string.Equals(name, foreign, StringComparison.OrdinalIgnoreCase) ? other : mine).IdFor(page.ViewEnginePath, name).ToString();
        var template = page.AttributeRouteInfo!.Template!;
        var inRoute = RouteFilling.Names(template).ToList();
        var rest = query.Where(n => !inRoute.Contains(n, StringComparer.OrdinalIgnoreCase)).Select(n => $"{n}={Id(n)}");
        if (!string.IsNullOrEmpty(handler))
            rest = rest.Append($"handler={handler}");
        return RouteFilling.Fill(template, Id) + "?" + string.Join("&", rest);
    }

    private async Task<string> EverythingAsync(Furnished family)
    {
        var rows = new List<string>();
        foreach (var type in typeof(AppDb).Assembly.GetTypes().Where(t => t is { IsClass: true, IsAbstract: false } && (t.IsAssignableTo(typeof(IFamilyOwned)) || t.IsAssignableTo(typeof(ICoopOwned)))))
        {
            rows.AddRange(await server.FromDbAsync(family.Family.Id, db =>
            {
                db.Current.Enter(family.Shared.Coop);
                return (Task<List<string>>)typeof(TheOthersIdsEverywhere).GetMethod(nameof(RowsAsync), BindingFlags.Static | BindingFlags.NonPublic)!.MakeGenericMethod(type).Invoke(null, [db])!;
            }));
        }

        rows.Sort(StringComparer.Ordinal);
        return string.Join("\n", rows);
    }

    private static async Task<List<string>> RowsAsync<T>(AppDb db)
        where T : class
    {
        var rows = await db.Set<T>().ToListAsync();
        return [.. rows.Select(r => typeof(T).Name + JsonSerializer.Serialize(db.Entry(r).Properties.ToDictionary(p => p.Metadata.Name, p => p.CurrentValue)))];
    }
}
