using CoopLessons.Data;
using CoopLessons.Data.Databases;
using CoopLessons.Data.Files;
using CoopLessons.Data.People;
using CoopLessons.Web.Phone;
using CoopLessons.Web.Security;
using Microsoft.AspNetCore.DataProtection;
using Microsoft.AspNetCore.Identity;
using Serilog;

namespace CoopLessons.Web.Hosting;

/// <summary>Puts the web program together.</summary>
public static class Server
{
    /// <summary>Builds the server on a held data folder. Nothing is listened to yet.</summary>
    public static WebApplication Build(WebApplicationBuilder builder, DataFolder folder)
    {
        var settings = ServerSettings.From(builder.Configuration);
        // A build run in place keeps npm's files and compressed copies beside the sources; a published program has no such list.
        builder.WebHost.UseStaticWebAssets();
        builder.WebHost.ConfigureKestrel(k =>
        {
            k.AddServerHeader = false;
            k.Limits.MaxConcurrentConnections = 2000;
            k.Limits.MaxRequestBodySize = 10_000_000;
        });
        builder.Services.AddSerilog((_, log) => log.ReadFrom.Configuration(builder.Configuration).WriteTo.Console(formatProvider: null));

        builder.Services.AddSingleton(folder);
        builder.Services.AddSingleton(settings);
        builder.Services.AddSingleton(TimeProvider.System);
        builder.Services.AddAppDb(ServerSettings.Database(builder.Configuration, folder.Path));
        builder.Services.AddDataProtection().SetApplicationName("CoopLessons").PersistKeysToFileSystem(new DirectoryInfo(folder.Keys));
        builder.Services.AddSignIns(settings);
        builder.Services.AddAccess();
        builder.Services.AddPages(settings);
        builder.Services.AddForwarding(settings);
        builder.Services.AddHealthChecks().AddCheck<DatabaseReady>("database", tags: ["ready"]);
        builder.Services.AddSingleton<Planning.LayoutLine>();
        builder.Services.AddSingleton<Planning.FamilyWork>();
        builder.Services.AddSingleton<Planning.CoopWork>();
        builder.Services.AddHostedService<Planning.LayoutWork>();
        builder.Services.AddSingleton(_ => new FileShelf(folder.Files, settings.Bucket));
        builder.Services.AddSingleton<Files.FileRoom>();
        builder.Services.AddSingleton<Files.PicturePaper>();
        builder.Services.AddSingleton<Files.FileLook>();
        builder.Services.AddScoped<Evidence.BroughtPieces>();
        builder.Services.AddScoped<Evidence.BroughtReceipt>();
        builder.Services.AddScoped<Printing.BroughtFile>();
        builder.Services.AddScoped<Printing.BroughtPack>();
        builder.Services.AddSingleton<PageShots>();
        builder.Services.AddSingleton<PhoneWorker>();
        builder.Services.AddPacking();
        builder.Services.AddSingleton<Notices.NoticeAddresses>();
        builder.Services.AddSingleton<Notices.NoticeKeys>();
        builder.Services.AddSingleton<Notices.NoticePost>();
        builder.Services.AddSingleton<Notices.NoticeRound>();
        builder.Services.AddHostedService<Notices.NoticeWork>();
        builder.Services.AddSingleton<Notices.MailLinks>();
        builder.Services.AddSingleton<Notices.MailLetters>();
        builder.Services.AddSingleton<Notices.MailPost>();
        builder.Services.AddSingleton<Notices.MailRound>();
        builder.Services.AddHostedService<Notices.MailWork>();
        builder.Services.AddSingleton<Travel.FilesOfFamilies>().AddSingleton<Travel.MadeFiles>(s => s.GetRequiredService<Travel.FilesOfFamilies>());
        builder.Services.AddSingleton<Travel.FullPortfolios>().AddSingleton<Travel.MadeFiles>(s => s.GetRequiredService<Travel.FullPortfolios>());
        builder.Services.AddSingleton<Pages.Records.FullPortfolioWork>();
        builder.Services.AddSingleton<Travel.OutWork>();
        builder.Services.AddSingleton<Travel.InWork>();
        builder.Services.AddSingleton<Travel.TravelLook>();
        builder.Services.AddHostedService<Travel.MadeFilesWork>();
        builder.Services.AddSingleton<Travel.LeavingRound>();
        builder.Services.AddHostedService<Travel.LeavingWork>();
        builder.Services.AddSingleton<FirstRunWord>();
        builder.Services.AddSingleton<FirstClaim>();
        builder.Services.AddSingleton<DemoCoop>();
        builder.Services.AddScoped<Pages.Account.Founding>();

        var app = builder.Build();
        Use(app);
        return app;
    }

    /// <summary>What a command needs without serving: the database and the people in it.</summary>
    public static ServiceProvider BuildForCommand(IConfiguration configuration, string dataFolder)
    {
        var services = new ServiceCollection();
        services.AddLogging();
        services.AddSingleton(TimeProvider.System);
        services.AddAppDb(ServerSettings.Database(configuration, dataFolder));
        services.AddSingleton(_ => new FileShelf(DataFolder.FilesIn(dataFolder), ServerSettings.From(configuration).Bucket, beside: true));
        services.AddIdentityCore<Person>(SignIns.Rules).AddEntityFrameworkStores<AppDb>();
        services.Configure<PasswordHasherOptions>(o => o.IterationCount = SignIns.HashRounds);
        return services.BuildServiceProvider();
    }

    private static void Use(WebApplication app)
    {
        app.UseForwardedHeaders();
        app.UseResponseCompression();
        app.UseSafeHeaders();
        app.UseExceptionHandler("/error");
        app.UseStatusCodePagesWithReExecute("/status/{0}");
        app.UseMiddleware<TlsBeyondThisMachine>();
        // From here on a page can be asked for once more inside this process, to be kept on a phone.
        ((IApplicationBuilder)app).Use(app.Services.GetRequiredService<PageShots>().From);
        app.UseRouting();
        app.UseRateLimiter();
        app.UseAuthentication();
        app.UseMiddleware<FamilyScope>();
        app.UseAuthorization();
        app.MapStaticAssets().AllowAnonymous();
        app.MapHealth();
        app.MapPhone();
        app.MapRazorPages().WithStaticAssets();
        // An unknown address is unknown to everybody, rather than closed.
        app.MapFallback("{**path}", () => Results.NotFound()).AllowAnonymous();
    }
}
