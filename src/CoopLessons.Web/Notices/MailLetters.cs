using System.Globalization;
using CoopLessons.Data.Coops;
using CoopLessons.Data.Coops.Days;
using CoopLessons.Data.Coops.News;
using CoopLessons.Data.Coops.Off;
using CoopLessons.Data.Families;
using CoopLessons.Data.Notices;
using CoopLessons.Web.Hosting;
using MimeKit;
using MimeKit.Text;

namespace CoopLessons.Web.Notices;

/// <summary>What the mails say: plain text alone, and no child's name in a subject, which stands on lock screens and in lists.</summary>
public sealed class MailLetters(ServerSettings settings, MailLinks links)
{
    /// <summary>To an address that may be somebody else's: nothing in it comes from whoever asked.</summary>
    public MimeMessage Proof(MailToSend mail, string address, DateTimeOffset now) => Letter(mail, address, now, "Is this your address?",
    [
        $"Somebody who signed in at {settings.PublicUrl} wants the notices of a co-op by mail, and gave this address. If that was you, open this and say so:",
        links.Proof(mail.PersonId, address, now.UtcDateTime),
        $"It holds for {MailLinks.ProofLife.Days} days. If it was not you, do nothing: no notice comes.",
    ]);

    public MimeMessage Notice(MailToSend mail, string address, Family family, Coop coop, CoopNotice notice, CoopMeeting? meeting, DateTimeOffset now)
    {
        var end = links.End(mail.PersonId);
        var letter = Letter(mail, address, now, $"{coop.Name}: {Subject(notice, meeting)}",
        [
            notice.Title,
            .. notice.Text.Length > 0 ? [notice.Text] : Array.Empty<string>(),
            .. notice.About == NoticeAbout.CalledOff ? ["What each child can do at home stands on its page."] : Array.Empty<string>(),
            $"From the {notice.From} family, {family.Local(notice.At).ToString("d MMMM yyyy, H:mm", CultureInfo.InvariantCulture)}.",
            links.To($"/coop/{coop.Id}/news/{notice.Id}"),
            $"You chose to get the notices of your co-op by mail. To end that, open this:\n{end}",
        ]);
        // RFC 2369 § 3.2 and RFC 8058 § 3.1: a mail program ends it by one POST.
        letter.Headers.Add(HeaderId.ListUnsubscribe, $"<{end}>");
        letter.Headers.Add("List-Unsubscribe-Post", "List-Unsubscribe=One-Click");
        return letter;
    }

    private static string Subject(CoopNotice notice, CoopMeeting? meeting) => (notice.About, meeting) switch
    {
        (NoticeAbout.CalledOff, { } lost) => $"no meeting on {DayOff.Say(lost.On)}",
        (NoticeAbout.MeetAfterAll, { } held) => $"we meet after all on {DayOff.Say(held.On)}",
        (NoticeAbout.MadeUp, { } made) => $"we meet on {DayOff.Say(made.On)} instead",
        _ => $"a notice from the {notice.From} family",
    };

    private MimeMessage Letter(MailToSend mail, string address, DateTimeOffset now, string subject, IReadOnlyList<string> paragraphs)
    {
        var from = settings.Mail!.From;
        var letter = new MimeMessage
        {
            Date = now,
            // The same each time it is tried: a mail server that took it twice can tell.
            MessageId = $"{mail.Id:N}@{from.Domain}",
            Subject = OneLine(subject),
            Body = new TextPart(TextFormat.Plain) { Text = string.Join("\n\n", paragraphs) + "\n", ContentTransferEncoding = ContentEncoding.QuotedPrintable },
        };
        letter.From.Add(from);
        letter.To.Add(new MailboxAddress(null, address));
        // RFC 3834 § 5: nobody's holiday answers it.
        letter.Headers.Add("Auto-Submitted", "auto-generated");
        return letter;
    }

    /// <summary>A line end in a name would begin a header of its writer's own.</summary>
    private static string OneLine(string text) => string.Concat(text.Select(c => char.IsControl(c) || c is '\u2028' or '\u2029' ? ' ' : c));
}
