using CoopLessons.Data.Databases;

namespace CoopLessons.Web.Hosting;

/// <summary>
/// What a host can set, by environment (<c>CoopLessons__SignUp=open</c>), by <c>appsettings.json</c> or by flags.
/// </summary>
public sealed class ServerSettings
{
    public const string Section = "CoopLessons";

    /// <summary>The folder that holds database, files and keys.</summary>
    public string Data { get; set; } = "data";

    /// <summary>The address under which people reach the server, where a proxy stands before it.</summary>
    public string? PublicUrl { get; set; }

    /// <summary><c>open</c> lets anybody found a family; <c>invited</c> only the first one and those with a link.</summary>
    public string SignUp { get; set; } = "invited";

    /// <summary>Addresses or networks (CIDR) of proxies whose forwarding headers are believed; comma-separated.</summary>
    public string TrustedProxies { get; set; } = "";

    /// <summary>Serves machines other than this one without TLS. Names and passwords then travel readable.</summary>
    public bool PlainHttpBeyondThisMachine { get; set; }

    /// <summary>How many secrets (passwords, codes, links) may be tried in a minute from one address.</summary>
    public int TriesPerMinute { get; set; } = 20;

    public bool SignUpIsOpen => string.Equals(SignUp, "open", StringComparison.OrdinalIgnoreCase);

    public bool PublicIsHttps => PublicUrl?.StartsWith("https://", StringComparison.OrdinalIgnoreCase) == true;

    public static ServerSettings From(IConfiguration configuration) => configuration.GetSection(Section).Get<ServerSettings>() ?? new();

    public static DatabaseChoice Database(IConfiguration configuration, string dataFolder)
    {
        var serving = configuration.GetConnectionString("Postgres");
        if (string.IsNullOrWhiteSpace(serving))
            return new DatabaseChoice.Sqlite(Path.Combine(Path.GetFullPath(dataFolder), "cooplessons.db"));
        var owner = configuration.GetConnectionString("PostgresOwner");
        return new DatabaseChoice.Postgres(serving, string.IsNullOrWhiteSpace(owner) ? serving : owner);
    }
}
