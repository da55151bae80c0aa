using System.Net;
using MailKit.Security;
using MimeKit;

namespace CoopLessons.Web.Hosting;

/// <summary>The mail server that takes what this program sends.</summary>
/// <param name="User">Null where the mail server asks for nobody's name.</param>
/// <param name="From">The address that stands as the sender.</param>
public sealed record MailServer(string Host, int Port, SecureSocketOptions Tls, string? User, string? Password, MailboxAddress From)
{
    /// <returns>Null where the host has set none.</returns>
    /// <exception cref="SettingUnfitException">A setting cannot be used.</exception>
    public static MailServer? Of(ServerSettings told)
    {
        if (string.IsNullOrWhiteSpace(told.MailHost))
            return null;
        if (told.MailPort is < 1 or > 65535)
            throw new SettingUnfitException($"CoopLessons__MailPort: {told.MailPort} is not between 1 and 65,535.");
        var tls = told.MailTls.ToUpperInvariant() switch
        {
            "STARTTLS" => SecureSocketOptions.StartTls,
            "IMPLICIT" => SecureSocketOptions.SslOnConnect,
            "OFF" => SecureSocketOptions.None,
            _ => throw new SettingUnfitException($"CoopLessons__MailTls: “{told.MailTls}” is none of starttls, implicit and off."),
        };
        if (tls == SecureSocketOptions.None && !IsHere(told.MailHost) && !told.PlainHttpBeyondThisMachine)
            throw new SettingUnfitException("CoopLessons__MailTls: without TLS, notices and the password would travel readable. Use starttls or implicit, or a mail server on this machine.");
        if (string.IsNullOrWhiteSpace(told.MailFrom) || !MailboxAddress.TryParse(told.MailFrom, out var from) || !from.Address.Contains('@', StringComparison.Ordinal))
            throw new SettingUnfitException($"CoopLessons__MailFrom: “{told.MailFrom}” is no address such as co-op@lessons.example.org.");
        if (string.IsNullOrWhiteSpace(told.PublicUrl))
            throw new SettingUnfitException("CoopLessons__PublicUrl is not set; mail needs it for its links.");
        var (user, password) = (string.IsNullOrWhiteSpace(told.MailUser) ? null : told.MailUser, ServerSettings.SecretOf(told.MailPassword, told.MailPasswordFile, "MailPassword"));
        if (user is not null && string.IsNullOrEmpty(password))
            throw new SettingUnfitException("CoopLessons__MailPassword is not set, nor is CoopLessons__MailPassword_FILE; CoopLessons__MailUser needs one of them.");
        if (user is null && !string.IsNullOrEmpty(password))
            throw new SettingUnfitException("CoopLessons__MailUser is not set; the password is of somebody.");
        return new MailServer(told.MailHost, told.MailPort, tls, user, password, from);
    }

    private static bool IsHere(string host) => host.Equals("localhost", StringComparison.OrdinalIgnoreCase) || (IPAddress.TryParse(host, out var address) && IPAddress.IsLoopback(address));
}
