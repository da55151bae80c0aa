using System.CommandLine;
using CoopLessons.Data.Databases;
using CoopLessons.Web.Hosting;

namespace CoopLessons.Web.Commands;

/// <summary>The flags that every command shares, and the settings they make together with environment and file.</summary>
public sealed class HostOptions
{
    private readonly Option<string?> _data = new("--data") { Description = "Folder that holds database, files and keys.", HelpName = "DIR" };
    private readonly Option<string?> _urls = new("--urls") { Description = "Addresses to listen on, as ASP.NET has it.", HelpName = "URLS" };

    // Test hosts and service managers pass these; they are ASP.NET's own.
    private readonly Option<string?> _environment = new("--environment") { Hidden = true };
    private readonly Option<string?> _contentRoot = new("--contentRoot") { Hidden = true };
    private readonly Option<string?> _applicationName = new("--applicationName") { Hidden = true };

    private readonly string[] _settings;

    private HostOptions(string[] settings) => _settings = settings;

    /// <param name="settings">Settings given as flags by their full names.</param>
    public static HostOptions AddTo(Command command, string[] settings, bool listens)
    {
        var options = new HostOptions(settings);
        command.Add(options._data);
        if (listens)
        {
            command.Add(options._urls);
            command.Add(options._environment);
            command.Add(options._contentRoot);
            command.Add(options._applicationName);
        }

        return options;
    }

    public WebApplicationBuilder Builder(ParseResult parsed)
    {
        var args = new List<string>(_settings);
        foreach (var (option, key) in new[] { (_urls, "urls"), (_environment, "environment"), (_applicationName, "applicationName") })
        {
            if (parsed.GetValue(option) is { } value)
                args.Add($"--{key}={value}");
        }

        if (parsed.GetValue(_data) is { } data)
            args.Add($"--{ServerSettings.Section}:{nameof(ServerSettings.Data)}={data}");
        return WebApplication.CreateBuilder(new WebApplicationOptions { Args = [.. args], ContentRootPath = OwnFolder(parsed.GetValue(_contentRoot)) });
    }

    /// <summary>Settings for a command that serves nothing.</summary>
    public (IConfiguration Configuration, string DataFolder) Settings(ParseResult parsed)
    {
        var configuration = new ConfigurationBuilder().SetBasePath(OwnFolder(null) ?? Directory.GetCurrentDirectory())
            .AddJsonFile("appsettings.json", optional: true).AddEnvironmentVariables().AddCommandLine(_settings).Build();
        return (configuration, parsed.GetValue(_data) ?? ServerSettings.From(configuration).Data);
    }

    /// <summary>
    /// A published program has its style sheets and <c>appsettings.json</c> beside it, wherever it is started from; one
    /// that is run from the sources has them in the folder it is started in.
    /// </summary>
    private static string? OwnFolder(string? named) =>
        named ?? (Directory.Exists(Path.Combine(AppContext.BaseDirectory, "wwwroot")) ? AppContext.BaseDirectory : null);

    /// <summary>The services of a command that works beside a running server: the database must be there already.</summary>
    public ServiceProvider Services(ParseResult parsed)
    {
        var (configuration, folder) = Settings(parsed);
        if (ServerSettings.Database(configuration, folder) is DatabaseChoice.Sqlite sqlite && !File.Exists(sqlite.File))
            throw new WrongUseException($"There is no database in {Path.GetFullPath(folder)}; name the data folder with --data.");
        return Server.BuildForCommand(configuration, folder);
    }
}
