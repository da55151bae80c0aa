using System.Net.Sockets;
using CoopLessons.Web.Hosting;
using MailKit;
using MailKit.Net.Smtp;
using MailKit.Security;
using MimeKit;

namespace CoopLessons.Web.Notices;

/// <summary>Hands mails to the host's mail server (RFC 5321).</summary>
public sealed class MailPost(ServerSettings settings, ILogger<MailPost> log)
{
    private const int PatienceMs = 20_000;
    private const int FirstLasting = 500;

    public async Task<Delivery> SendAsync(MimeMessage letter, CancellationToken ct)
    {
        var server = settings.Mail!;
        // Asking whether a certificate was withdrawn would connect to others than the mail server.
        using var client = new SmtpClient { Timeout = PatienceMs, CheckCertificateRevocation = false };
        try
        {
            await client.ConnectAsync(server.Host, server.Port, server.Tls, ct);
            if (server is { User: { } user, Password: { } password })
                await client.AuthenticateAsync(user, password, ct);
            await client.SendAsync(letter, ct);
        }
        catch (SmtpCommandException fault) when (fault.ErrorCode is SmtpErrorCode.RecipientNotAccepted or SmtpErrorCode.MessageNotAccepted && (int)fault.StatusCode >= FirstLasting)
        {
            log.LogWarning("The mail server {Host} refused a mail for good ({Status})", server.Host, (int)fault.StatusCode);
            return Delivery.Refused;
        }
        catch (Exception fault) when (IsTrouble(fault) || (fault is OperationCanceledException && !ct.IsCancellationRequested))
        {
            // The fault's own words may hold somebody's address.
            log.LogWarning("The mail server {Host} took nothing ({Fault}); it is tried again", server.Host, fault.GetType().Name);
            return Delivery.Later;
        }

        try
        {
            await client.DisconnectAsync(quit: true, ct);
        }
        catch (Exception fault) when (IsTrouble(fault) || fault is OperationCanceledException)
        {
            // It has the mail already.
            log.LogDebug("The mail server {Host} did not say goodbye", server.Host);
        }

        return Delivery.Taken;
    }

    private static bool IsTrouble(Exception fault) => fault is CommandException or ProtocolException or IOException or SocketException or TimeoutException
        or AuthenticationException or SslHandshakeException or ServiceNotConnectedException or NotSupportedException;
}
