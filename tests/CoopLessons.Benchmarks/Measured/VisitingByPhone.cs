using Microsoft.Playwright;

namespace CoopLessons.Benchmarks.Measured;

/// <summary>
/// What a phone's first and later visits to Today cost, and when the day can be read: Chromium's own measurements, with the
/// processor slowed four times and the network of a slow 4G (1.6 Mbit/s down, 750 kbit/s up, 150 ms there and back: the
/// profile that browser tools call so, from memory). Bytes are counted on the wire, all of them.
/// </summary>
internal static class VisitingByPhone
{
    private const int Rounds = 7;
    private const int MostBytesFirst = 110_000;
    private const int MostBytesLater = 20_000;
    private const int MostRequests = 8;
    private const double LatestPaint = 1500;

    // Less than a thousandth is no shift that anybody sees: a rule of one pixel under a heading that is still being read in.
    private const double MostShift = .001;

    private static readonly string[] Flags =
        ["--no-sandbox", "--disable-gpu", "--disable-quic", "--no-first-run", "--disable-background-networking", "--disable-component-update", "--disable-sync"];

    // Asked of the browser before the page begins, so that nothing is missed.
    private const string Observing = """
        window.measured = { shift: 0, painted: 0, moved: [] };
        const watch = (type, tell) => new PerformanceObserver(list => list.getEntries().forEach(tell)).observe({ type, buffered: true });
        watch('largest-contentful-paint', one => { measured.painted = one.startTime; });
        watch('layout-shift', one => {
          if (one.hadRecentInput) return;
          measured.shift += one.value;
          measured.moved.push(...one.sources.map(s => `${s.node?.nodeName} from ${s.previousRect.x}, ${s.previousRect.y} to ${s.currentRect.x}, ${s.currentRect.y}`));
        });
        """;

    // The frame for when there is no network, and the pages of the coming days as they now are.
    private const string PagesAreKept = """
        async () => {
          await navigator.serviceWorker.ready;
          while (!((await withPages(at => at)) > 0)) await new Promise(resolve => setTimeout(resolve, 100));
        }
        """;

    // As after ten minutes: the next visit asks for them again.
    private const string PagesAreOld = "() => withPages((at, kept, store) => { store.put({ ...kept, at: 0 }, 'pages'); })";

    private const string WithPages = """
        window.withPages = work => new Promise(resolve => {
          const asked = indexedDB.open('cooplessons');
          asked.onsuccess = () => {
            const change = asked.result.transaction('facts', 'readwrite');
            const [store, found] = [change.objectStore('facts'), change.objectStore('facts').get('pages')];
            let answer;
            found.onsuccess = () => { answer = work(found.result?.at, found.result, store); };
            change.oncomplete = () => {
              asked.result.close();
              resolve(answer);
            };
          };
        });
        """;

    /// <param name="folder">Of the published program.</param>
    /// <returns>0 where every visit keeps to its limits; the paint by its middle one, since a busy machine disturbs single ones.</returns>
    public static async Task<int> PrintAsync(string folder, TextWriter to)
    {
        await using var coop = await PublishedProgram.StartAsync(folder);
        using var wire = new CountedWire(coop.Address);
        using var playwright = await Playwright.CreateAsync();
        await using var browser = await playwright.Chromium.LaunchAsync(new()
        {
            ExecutablePath = Environment.GetEnvironmentVariable("COOPLESSONS_CHROMIUM") is { Length: > 0 } path ? path : "/usr/bin/chromium",
            Args = Flags,
        });
        // The sign-in brings files of its own: the first visit is made by a browser that has nothing but the cookie.
        await using var home = await browser.NewContextAsync(new() { BaseURL = coop.Address.ToString() });
        var desk = await home.NewPageAsync();
        await SignInAsync(desk, coop);
        List<Visit> first = [], second = [], changed = [];
        for (var round = 0; round < Rounds; round++)
        {
            await using var phone = await browser.NewContextAsync(new() { BaseURL = wire.Address, ViewportSize = new() { Width = 360, Height = 740 }, HasTouch = true });
            await phone.AddCookiesAsync((await home.CookiesAsync()).Select(c => new Cookie { Name = c.Name, Value = c.Value, Url = wire.Address }));
            await phone.AddInitScriptAsync(Observing + WithPages);
            first.Add(await VisitAsync(phone, wire));
            second.Add(await VisitAsync(phone, wire, PagesAreOld));
            await LogAsync(desk, $"Fed the hens for the {round + 1}. time");
            changed.Add(await VisitAsync(phone, wire));
        }

        return await SayAsync(to, "first visit", first, MostBytesFirst) + await SayAsync(to, "second visit", second, MostBytesLater)
            + await SayAsync(to, "visit after something was logged elsewhere", changed, MostBytesLater) == 0 ? 0 : 1;
    }

    private static async Task<Visit> VisitAsync(IBrowserContext phone, CountedWire wire, string? atItsEnd = null)
    {
        wire.Take();
        var page = await phone.NewPageAsync();
        await SlowAsync(page);
        await page.GotoAsync("/today", new() { WaitUntil = WaitUntilState.Load });
        await page.EvaluateAsync(PagesAreKept);
        await page.WaitForLoadStateAsync(LoadState.NetworkIdle);
        var (bytes, requests) = wire.Take();
        var visit = new Visit(
            bytes, requests, await page.EvaluateAsync<double>("() => measured.painted"), await page.EvaluateAsync<double>("() => measured.shift"),
            await page.EvaluateAsync<string[]>("() => measured.moved"));
        if (atItsEnd is not null)
            await page.EvaluateAsync(atItsEnd);
        await page.CloseAsync();
        return visit;
    }

    private static async Task<int> SayAsync(TextWriter to, string name, List<Visit> visits, int mostBytes)
    {
        var heaviest = visits.MaxBy(v => v.Bytes)!;
        var painted = visits.Select(v => v.Painted).Order().ToList();
        var middle = painted[painted.Count / 2];
        await to.WriteLineAsync(
            $"{name}, {visits.Count} times: at most {heaviest.Bytes / 1000.0:0.0} kB in {visits.Max(v => v.Requests.Count)} requests; largest text painted after {middle:0} ms in the middle ({painted[0]:0} to {painted[^1]:0}); layout shift {visits.Max(v => v.Shift):0.0000}");
        foreach (var line in heaviest.Requests.Concat(visits.SelectMany(v => v.Moved).Distinct().Select(m => "moved: " + m)))
            await to.WriteLineAsync($"    {line}");
        return visits.Any(v => v.Bytes > mostBytes || v.Requests.Count > MostRequests || v.Shift > MostShift) || middle > LatestPaint ? 1 : 0;
    }

    private static async Task SignInAsync(IPage page, PublishedProgram coop)
    {
        await page.GotoAsync("/sign-in");
        await page.GetByLabel("E-mail").FillAsync(coop.Email);
        await page.GetByLabel("Password", new() { Exact = true }).FillAsync(coop.Password);
        await page.GetByRole(AriaRole.Button, new() { Name = "Sign in" }).ClickAsync();
        await page.WaitForURLAsync("**/today");
    }

    private static async Task LogAsync(IPage page, string what)
    {
        await page.GotoAsync("/log/new");
        await page.GetByLabel("What", new() { Exact = true }).FillAsync(what);
        await page.GetByRole(AriaRole.Button, new() { Name = "Save", Exact = true }).ClickAsync();
        await page.WaitForURLAsync("**/today/*");
    }

    private static async Task SlowAsync(IPage page)
    {
        var browser = await page.Context.NewCDPSessionAsync(page);
        await browser.SendAsync("Emulation.setCPUThrottlingRate", new() { ["rate"] = 4 });
        await browser.SendAsync("Network.enable");
        await browser.SendAsync("Network.emulateNetworkConditions", new()
        {
            ["offline"] = false,
            ["latency"] = 150,
            ["downloadThroughput"] = 1_600_000 / 8,
            ["uploadThroughput"] = 750_000 / 8,
        });
    }
    private sealed record Visit(long Bytes, IReadOnlyList<string> Requests, double Painted, double Shift, IReadOnlyList<string> Moved);
}
