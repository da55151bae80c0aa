using CoopLessons.Data;
using CoopLessons.Data.Families;
using CoopLessons.Data.People;
using CoopLessons.Data.Tenancy;
using Microsoft.AspNetCore.Hosting;
using Microsoft.AspNetCore.Identity;
using Microsoft.AspNetCore.Mvc.Testing;
using Microsoft.AspNetCore.TestHost;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.Extensions.Time.Testing;

namespace CoopLessons.Web.Tests.App;

/// <summary>
/// The web program in this process on a database of its own. Tests share it and make families of their own: tenancy
/// keeps them apart.
/// </summary>
public class TestServer : WebApplicationFactory<Program>
{
    /// <summary>A Thursday in term time, ten in the morning in the Central zone.</summary>
    public static readonly DateTimeOffset Start = new(2026, 3, 12, 15, 0, 0, TimeSpan.Zero);
    public static readonly DateOnly Today = new(2026, 3, 12);
    public const string Password = "mill wheel under seven stars";
    private const int HashRounds = 1_000;
    private readonly TestDatabase _database;
    private readonly KeyValuePair<string, string>[] _settings;

    public TestServer()
        : this([])
    {
    }

    private protected TestServer(KeyValuePair<string, string>[] settings)
        : this(settings, new TestDatabase(), new FakeTimeProvider(Start))
    {
    }

    private protected TestServer(KeyValuePair<string, string>[] settings, TestDatabase database, FakeTimeProvider clock) => (_settings, _database, Clock) = (settings, database, clock);

    public FakeTimeProvider Clock { get; }

    public TestDatabase Database => _database;

    /// <summary>Somebody in front of a browser of their own, not signed in.</summary>
    public virtual Visitor Visitor() => new(CreateClient(new WebApplicationFactoryClientOptions { AllowAutoRedirect = false, HandleCookies = false }));

    /// <summary>A family with one guardian, who is signed in.</summary>
    public async Task<TestFamily> FamilyAsync(string name = "Alder", string timeZone = "America/Chicago")
    {
        var person = await PersonAsync("Iris " + name);
        var familyId = Guid.CreateVersion7();
        await WithDbAsync(null, async db =>
        {
            NewFamily.Found(db, familyId, name, timeZone, person.Id, person.Name, Today, Start.UtcDateTime);
            await db.SaveChangesAsync();
        });
        return new TestFamily(this, familyId, person.Id, await SignInAsync(person.Email!));
    }

    /// <summary>A helper of the family, signed in.</summary>
    public async Task<Visitor> HelperAsync(TestFamily family)
    {
        var person = await PersonAsync("Basil");
        await WithDbAsync(family.Id, async db =>
        {
            db.Memberships.Add(new Membership(person.Id, person.Name, Role.Helper, Start.UtcDateTime));
            await db.SaveChangesAsync();
        });
        return await SignInAsync(person.Email!);
    }

    public async Task<Person> PersonAsync(string name)
    {
        await using var scope = Services.CreateAsyncScope();
        var person = Person.Named(name, $"{Guid.NewGuid():N}@millrace.example");
        var made = await scope.ServiceProvider.GetRequiredService<UserManager<Person>>().CreateAsync(person, Password);
        Assert.True(made.Succeeded, string.Join(" ", made.Errors.Select(e => e.Description)));
        return person;
    }

    public async Task<Visitor> SignInAsync(string email, string password = Password)
    {
        var visitor = Visitor();
        var page = await visitor.GetAsync("/sign-in");
        var answer = await visitor.SubmitAsync(page, new() { ["Input.Email"] = email, ["Input.Password"] = password });
        Assert.Equal(System.Net.HttpStatusCode.Redirect, answer.StatusCode);
        return visitor;
    }

    /// <summary>Work on the database as the given family, or as nobody.</summary>
    public async Task WithDbAsync(Guid? familyId, Func<AppDb, Task> work)
    {
        await using var scope = Services.CreateAsyncScope();
        if (familyId is { } id)
            scope.ServiceProvider.GetRequiredService<CurrentFamily>().ActForProgram(id);
        await work(scope.ServiceProvider.GetRequiredService<AppDb>());
    }

    public async Task<T> FromDbAsync<T>(Guid? familyId, Func<AppDb, Task<T>> read)
    {
        T? value = default;
        await WithDbAsync(familyId, async db => value = await read(db));
        return value!;
    }

    protected override void ConfigureWebHost(IWebHostBuilder builder)
    {
        builder.UseEnvironment("Development");
        builder.UseSetting("Serilog:MinimumLevel:Default", "Warning");
        // All tests come from one address.
        builder.UseSetting("CoopLessons:TriesPerMinute", "1000000");
        foreach (var (key, value) in _database.Settings().Concat(_settings))
            builder.UseSetting(key, value);
        builder.ConfigureTestServices(s =>
        {
            s.AddSingleton<TimeProvider>(Clock);
            // Each test makes people of its own; how slow a real hash is has a test by itself.
            s.PostConfigure<PasswordHasherOptions>(o => o.IterationCount = HashRounds);
        });
    }

    protected override void Dispose(bool disposing)
    {
        base.Dispose(disposing);
        if (disposing)
            _database.Dispose();
    }
}

/// <summary>A server of one test's own, with settings of its own.</summary>
public sealed class OwnServer(params KeyValuePair<string, string>[] settings) : TestServer(settings);

/// <summary>Another web program on the database of a first one that has started, with its clock, as two stand behind one proxy.</summary>
public sealed class SecondNode(TestServer first, params KeyValuePair<string, string>[] settings) : TestServer(settings, first.Database.Beside(), first.Clock)
{
    /// <summary>The same browser, whose next request the proxy sends here.</summary>
    public Visitor AsSeenBy(Visitor visitor)
    {
        var here = Visitor();
        foreach (var (name, value) in visitor.Cookies)
            here.SetCookie(name, value);
        return here;
    }
}

/// <summary>A server of one test's own that is spoken to through a port of the machine.</summary>
public sealed class NetworkServer : TestServer
{
    public NetworkServer() => UseKestrel(0);

    public override Visitor Visitor()
    {
        StartServer();
        return new(new HttpClient(new SocketsHttpHandler { AllowAutoRedirect = false, UseCookies = false }) { BaseAddress = ClientOptions.BaseAddress });
    }
}

/// <summary>The server that most tests share.</summary>
[CollectionDefinition(Name)]
public sealed class SharedServer : ICollectionFixture<TestServer>
{
    public const string Name = "shared server";
}

/// <summary>The tests of units, weeks and days share a second server, so that they run beside the others.</summary>
[CollectionDefinition(Name)]
public sealed class PlanningServer : ICollectionFixture<TestServer>
{
    public const string Name = "planning server";
}

/// <summary>A family of a test, and its guardian's browser.</summary>
public sealed record TestFamily(TestServer Server, Guid Id, Guid GuardianId, Visitor Guardian)
{
    public Task WithDbAsync(Func<AppDb, Task> work) => Server.WithDbAsync(Id, work);

    public Task<T> FromDbAsync<T>(Func<AppDb, Task<T>> read) => Server.FromDbAsync(Id, read);
}
