using CoopLessons.Data.Databases;
using CoopLessons.Data.Files;
using Npgsql;

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

    /// <summary>How many weeks may wait to be laid out; one that finds the line full is refused for the moment. 1 to 1,000.</summary>
    public int LayoutsInLine { get; set; } = 32;

    /// <summary>Address of a service that speaks the S3 protocol, where files lie instead of in the data folder.</summary>
    public string? S3Address { get; set; }

    public string? S3Bucket { get; set; }

    public string? S3Key { get; set; }

    public string? S3Secret { get; set; }

    /// <summary>A file that holds the secret, for hosts that hand secrets over so: <c>CoopLessons__S3Secret_FILE</c>.</summary>
    [ConfigurationKeyName("S3Secret_FILE")]
    public string? S3SecretFile { get; set; }

    /// <summary>The region that requests are signed for.</summary>
    public string S3Region { get; set; } = "us-east-1";

    /// <summary>Whether the bucket's name stands in the path, as services of one's own have it.</summary>
    public bool S3PathStyle { get; set; } = true;

    /// <summary>Where files lie, if not in the data folder.</summary>
    public BucketAddress? Bucket { get; private set; }

    /// <summary>
    /// <c>on</c> lets people have notices on their devices: the server then connects to the push services of their browsers,
    /// which it does for nothing else. <c>off</c> connects to nobody.
    /// </summary>
    public string Notices { get; set; } = "off";

    /// <summary>Hosts of push services to which notices are sent, each with what ends in it; comma-separated. The usual ones are from memory.</summary>
    public string NoticeHosts { get; set; } = "fcm.googleapis.com, push.services.mozilla.com, push.apple.com, notify.windows.com";

    /// <summary>Sends notices to this machine itself, without TLS: for trying them out and for tests.</summary>
    public bool NoticesToLoopback { get; set; }

    /// <summary>The mail server that takes notices by mail; none where it is not set.</summary>
    public string? MailHost { get; set; }

    public int MailPort { get; set; } = 587;

    /// <summary><c>starttls</c>, <c>implicit</c> (TLS from the first octet on) or <c>off</c>.</summary>
    public string MailTls { get; set; } = "starttls";

    public string? MailUser { get; set; }

    public string? MailPassword { get; set; }

    /// <summary>A file that holds the password: <c>CoopLessons__MailPassword_FILE</c>.</summary>
    [ConfigurationKeyName("MailPassword_FILE")]
    public string? MailPasswordFile { get; set; }

    /// <summary>The address that stands as the sender: <c>co-op@lessons.example.org</c>.</summary>
    public string? MailFrom { get; set; }

    /// <summary>The mail server, if one is set.</summary>
    public MailServer? Mail { get; private set; }

    public bool NoticesAreOn => string.Equals(Notices, "on", StringComparison.OrdinalIgnoreCase);

    public bool SignUpIsOpen => string.Equals(SignUp, "open", StringComparison.OrdinalIgnoreCase);

    public bool PublicIsHttps => PublicUrl?.StartsWith("https://", StringComparison.OrdinalIgnoreCase) == true;

    /// <summary>A path of this server as people reach it from elsewhere.</summary>
    /// <param name="path">Begins with a slash.</param>
    public string AddressOf(HttpRequest request, string path) =>
        (PublicUrl?.TrimEnd('/') ?? $"{request.Scheme}://{request.Host}{request.PathBase}") + path;

    /// <exception cref="SettingUnfitException">A setting cannot be read.</exception>
    public static ServerSettings From(IConfiguration configuration)
    {
        ServerSettings settings;
        try
        {
            settings = configuration.GetSection(Section).Get<ServerSettings>() ?? new();
        }
        catch (InvalidOperationException fault)
        {
            throw new SettingUnfitException(fault.Message);
        }

        if (!string.IsNullOrWhiteSpace(settings.PublicUrl) && !(Uri.TryCreate(settings.PublicUrl, UriKind.Absolute, out var url) && url.Scheme is "http" or "https"))
            throw new SettingUnfitException($"CoopLessons__PublicUrl: “{settings.PublicUrl}” is no web address such as https://lessons.example.org.");
        if (settings.LayoutsInLine is < 1 or > 1000)
            throw new SettingUnfitException($"CoopLessons__LayoutsInLine: {settings.LayoutsInLine} is not between 1 and 1,000.");
        settings.Bucket = BucketOf(settings);
        settings.Mail = MailServer.Of(settings);
        if (!settings.NoticesAreOn && !string.Equals(settings.Notices, "off", StringComparison.OrdinalIgnoreCase))
            throw new SettingUnfitException($"CoopLessons__Notices: “{settings.Notices}” is neither on nor off.");
        return settings;
    }

    private static BucketAddress? BucketOf(ServerSettings told)
    {
        if (string.IsNullOrWhiteSpace(told.S3Address))
            return null;
        if (!Uri.TryCreate(told.S3Address, UriKind.Absolute, out var address) || address.Scheme is not ("http" or "https"))
            throw new SettingUnfitException($"CoopLessons__S3Address: “{told.S3Address}” is no web address such as https://storage.example.org.");
        if (address.Scheme == "http" && !address.IsLoopback && !told.PlainHttpBeyondThisMachine)
            throw new SettingUnfitException("CoopLessons__S3Address: children's photos would travel readable. Use https, or a service on this machine.");
        if (string.IsNullOrWhiteSpace(told.S3Bucket))
            throw new SettingUnfitException("CoopLessons__S3Bucket is not set; it names the bucket in which the files lie.");
        if (string.IsNullOrWhiteSpace(told.S3Key))
            throw new SettingUnfitException("CoopLessons__S3Key is not set; it names the key that may read and write the bucket.");
        if (SecretOf(told.S3Secret, told.S3SecretFile, nameof(S3Secret)) is not { Length: > 0 } secret)
            throw new SettingUnfitException("CoopLessons__S3Secret is not set, nor is CoopLessons__S3Secret_FILE; one of them gives the key's secret.");
        return new BucketAddress(address, told.S3Bucket, told.S3Key, secret, told.S3Region, told.S3PathStyle);
    }

    /// <summary>A secret from its setting, or from the file that the setting with the same name and <c>_FILE</c> names.</summary>
    internal static string? SecretOf(string? told, string? file, string name)
    {
        if (string.IsNullOrWhiteSpace(file))
            return told;
        try
        {
            return File.ReadAllText(file).Trim();
        }
        catch (Exception fault) when (fault is IOException or UnauthorizedAccessException)
        {
            throw new SettingUnfitException($"CoopLessons__{name}_FILE: {file} cannot be read.");
        }
    }

    public static DatabaseChoice Database(IConfiguration configuration, string dataFolder)
    {
        var serving = configuration.GetConnectionString("Postgres");
        if (string.IsNullOrWhiteSpace(serving))
            return new DatabaseChoice.Sqlite(Path.Combine(Path.GetFullPath(dataFolder), "cooplessons.db"));
        var owner = configuration.GetConnectionString("PostgresOwner");
        return new DatabaseChoice.Postgres(Readable("Postgres", serving), string.IsNullOrWhiteSpace(owner) ? serving : Readable("PostgresOwner", owner));
    }

    // The text itself is not repeated: it holds a password.
    private static string Readable(string name, string connection)
    {
        try
        {
            _ = new NpgsqlConnectionStringBuilder(connection);
            return connection;
        }
        catch (ArgumentException)
        {
            throw new SettingUnfitException($"ConnectionStrings__{name} is not of the form Host=…;Database=…;Username=…;Password=…");
        }
    }
}

/// <summary>A setting cannot be used; the message is the one line that names it.</summary>
public sealed class SettingUnfitException(string message) : Exception(message);
