using Microsoft.Playwright;

namespace CoopLessons.Benchmarks.Measured;

/// <summary>
/// What a phone's first and later visits to Today cost, and when the day can be read: Chromium's own measurements, with the
/// processor slowed four times and the network of a slow 4G (1.6 Mbit/s down, 750 kbit/s up, 150 ms there and back: the
/// profile that browser tools call so, from memory). Bytes are counted on the wire, all of them.
/// </summary>
internal static class VisitingByPhone
{
    private const int MostBytesFirst = 110_000;
    private const int MostRequestsFirst = 8;
    private const int MostBytesLater = 20_000;

    private static readonly string[] Flags =
        ["--no-sandbox", "--disable-gpu", "--disable-quic", "--no-first-run", "--disable-background-networking", "--disable-component-update", "--disable-sync"];

    // Asked of the browser before the page begins, so that nothing is missed.
    private const string Observing = """
        window.measured = { shift: 0, painted: 0 };
        new PerformanceObserver(list => { for (const one of list.getEntries()) if (!one.hadRecentInput) measured.shift += one.value; }).observe({ type: 'layout-shift', buffered: true });
        new PerformanceObserver(list => { for (const one of list.getEntries()) measured.painted = one.startTime; }).observe({ type: 'largest-contentful-paint', buffered: true });
        """;

    /// <param name="folder">Of the published program.</param>
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
        await using var door = await browser.NewContextAsync(new() { BaseURL = wire.Address });
        var page = await door.NewPageAsync();
        await page.GotoAsync("/sign-in");
        await page.GetByLabel("E-mail").FillAsync(coop.Email);
        await page.GetByLabel("Password", new() { Exact = true }).FillAsync(coop.Password);
        await page.GetByRole(AriaRole.Button, new() { Name = "Sign in" }).ClickAsync();
        await page.WaitForURLAsync("**/today");
        var cookies = await door.CookiesAsync();
        await door.CloseAsync();

        await using var phone = await browser.NewContextAsync(new() { BaseURL = wire.Address, ViewportSize = new() { Width = 360, Height = 740 }, HasTouch = true });
        await phone.AddCookiesAsync(cookies.Select(c => new Cookie { Name = c.Name, Value = c.Value, Url = wire.Address }));
        await phone.AddInitScriptAsync(Observing);
        wire.Take();
        var worst = 0;
        foreach (var (name, mostBytes, mostRequests) in new[] { ("first visit", MostBytesFirst, MostRequestsFirst), ("second visit", MostBytesLater, MostRequestsFirst), ("third visit", MostBytesLater, MostRequestsFirst) })
        {
            var visit = await phone.NewPageAsync();
            await SlowAsync(visit);
            await visit.GotoAsync("/today", new() { WaitUntil = WaitUntilState.Load });
            await visit.EvaluateAsync("() => navigator.serviceWorker.ready.then(() => true)");
            await visit.WaitForLoadStateAsync(LoadState.NetworkIdle);
            var painted = await visit.EvaluateAsync<double>("() => measured.painted");
            var shift = await visit.EvaluateAsync<double>("() => measured.shift");
            await visit.CloseAsync();
            var (bytes, requests) = wire.Take();
            await to.WriteLineAsync($"{name}: {bytes / 1000.0:0.0} kB in {requests.Count} requests; largest text painted after {painted:0} ms; layout shift {shift:0.000}");
            foreach (var request in requests)
                await to.WriteLineAsync($"    {request}");
            if (bytes > mostBytes || requests.Count > mostRequests || shift > 0)
                worst = 1;
        }

        return worst;
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
}
