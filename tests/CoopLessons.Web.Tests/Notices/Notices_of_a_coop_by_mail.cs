using System.Net;
using System.Text.RegularExpressions;
using CoopLessons.Data.Notices;
using CoopLessons.Web.Notices;
using CoopLessons.Web.Tests.App;
using CoopLessons.Web.Tests.Coops;
using Microsoft.EntityFrameworkCore;
using Microsoft.Extensions.DependencyInjection;
using MimeKit;

namespace CoopLessons.Web.Tests.Notices;

/// <summary>What arrives at a mail server, and when.</summary>
public sealed class Notices_of_a_coop_by_mail
{
    [Fact]
    public async Task Come_only_once_the_link_of_a_first_mail_was_opened_and_answered()
    {
        await using var all = await MailedCoop.MakeAsync(proven: false);
        await all.TellAsync("Bring boots", "The meadow is wet.");
        var proof = Assert.Single(await all.AfterARoundAsync());
        Assert.Equal("Is this your address?", proof.Message.Subject);
        Assert.DoesNotContain("boots", proof.Message.TextBody, StringComparison.Ordinal);
        Assert.Empty(await all.AfterARoundAsync());
        await all.ChooseAsync(true);
        Assert.Empty(await all.AfterARoundAsync());

        var link = Link("/mail/yes/").Match(proof.Message.TextBody!).Value;
        var stranger = all.Server.Visitor();
        var page = await stranger.GetAsync(new Uri(link).AbsolutePath);
        Assert.Empty(await all.AfterARoundAsync());
        using var yes = await stranger.SubmitAsync(page);
        Assert.Equal(HttpStatusCode.OK, yes.StatusCode);
        Assert.Contains("Bring boots", Assert.Single(await all.AfterARoundAsync()).Message.TextBody, StringComparison.Ordinal);
        foreach (var forged in new[] { "/mail/yes/nothing", "/mail/end/nothing", new Uri(link).AbsolutePath.Replace("/yes/", "/end/", StringComparison.Ordinal), new Uri(link).AbsolutePath[..^3] + "AAA" })
        {
            using var shut = await stranger.OpenAsync(forged);
            Assert.Equal(HttpStatusCode.NotFound, shut.StatusCode);
        }

        all.Server.Clock.Advance(MailLinks.ProofLife);
        using var late = await stranger.OpenAsync(new Uri(link).AbsolutePath);
        Assert.Equal(HttpStatusCode.NotFound, late.StatusCode);
    }

    [Fact]
    public async Task Say_in_plain_text_what_the_notice_says_where_it_stands_and_how_to_end_it()
    {
        await using var all = await MailedCoop.MakeAsync();
        await all.TellAsync("Wren, bring boots", "The meadow is wet.\n.\nSo is the path.");
        var mailed = Assert.Single(await all.AfterARoundAsync());
        Assert.Empty(await all.AfterARoundAsync());
        var mail = mailed.Message;
        // The title stays out of the subject: its writer may have named a child in it.
        Assert.Equal("Millrace: a notice from the Alder family", mail.Subject);
        Assert.Equal([await all.AddressAsync()], mailed.To);
        Assert.Equal(await all.AddressAsync(), Assert.Single(mail.To.Mailboxes).Address);
        Assert.Equal("co-op@lessons.millrace.example", Assert.Single(mail.From.Mailboxes).Address);
        Assert.Equal(TestServer.Start, mail.Date);
        Assert.Matches("^[0-9a-f]{32}@lessons\\.millrace\\.example$", mail.MessageId);
        var text = Assert.IsType<TextPart>(mail.Body);
        Assert.True(text.IsPlain);
        var body = text.Text.ReplaceLineEndings("\n");
        Assert.StartsWith("Wren, bring boots\n\nThe meadow is wet.\n.\nSo is the path.\n\nFrom the Alder family, 12 March 2026, 10:00.", body, StringComparison.Ordinal);
        Assert.Contains($"{MailedCoop.Url}{all.Coop.Home}/news/", body, StringComparison.Ordinal);

        // RFC 2369 § 2 and RFC 8058 § 3.1: one HTTPS or HTTP address in angle brackets, and exactly this pair beside it. RFC 3834 § 5.
        var end = mail.Headers["List-Unsubscribe"]!;
        Assert.Matches("^<http://lessons\\.millrace\\.example/mail/end/[A-Za-z0-9_-]+>$", end);
        Assert.Equal("List-Unsubscribe=One-Click", mail.Headers["List-Unsubscribe-Post"]);
        Assert.Equal("auto-generated", mail.Headers["Auto-Submitted"]);
        Assert.Contains(end.Trim('<', '>'), body, StringComparison.Ordinal);

        // RFC 8058 § 3.2: the POST brings this pair and no cookie.
        var program = all.Server.Visitor();
        using var ended = await program.PostAsync(new Uri(end.Trim('<', '>')).AbsolutePath, [new("List-Unsubscribe", "One-Click")]);
        Assert.Equal(HttpStatusCode.OK, ended.StatusCode);
        await all.TellAsync("And a hat");
        Assert.Empty(await all.AfterARoundAsync());
    }

    [Fact]
    public async Task Carry_names_in_other_scripts_whole_and_in_signs_that_every_mail_server_takes()
    {
        await using var all = await MailedCoop.MakeAsync();
        const string coop = "Νερόμυλος của gia đình Nguyễn";
        await RenameAsync(all, coop);
        await all.TellAsync("Hôm nay không có lớp: tuyết", "Μένουμε σπίτι. 🌨");
        var mailed = Assert.Single(await all.AfterARoundAsync());
        Assert.Equal($"{coop}: a notice from the Alder family", mailed.Message.Subject);
        Assert.Contains("Hôm nay không có lớp: tuyết", mailed.Message.TextBody, StringComparison.Ordinal);
        Assert.Contains("Μένουμε σπίτι. 🌨", mailed.Message.TextBody, StringComparison.Ordinal);
        // RFC 5322 § 2.1.1 and RFC 2047: 7-bit signs, no line over 998 octets.
        Assert.DoesNotContain(mailed.Raw, c => c > 127);
        Assert.All(mailed.Raw.Split("\r\n"), l => Assert.True(l.Length <= 998));
    }

    [Theory]
    [InlineData("Millrace\r\nBcc: wren@elsewhere.example")]
    [InlineData("Millrace\nBcc: wren@elsewhere.example\n\nBody")]
    [InlineData("Millrace\u2028Bcc: wren@elsewhere.example")]
    public async Task Take_no_header_and_no_receiver_from_a_name_with_a_line_end(string name)
    {
        await using var all = await MailedCoop.MakeAsync();
        await RenameAsync(all, name);
        await all.TellAsync(name);
        var mailed = Assert.Single(await all.AfterARoundAsync());
        Assert.Equal([await all.AddressAsync()], mailed.To);
        Assert.Empty(mailed.Message.Bcc);
        Assert.Null(mailed.Message.Headers["Bcc"]);
        Assert.EndsWith(": a notice from the Alder family", mailed.Message.Subject, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Are_kept_while_the_mail_server_is_away_and_tried_again_after_growing_gaps()
    {
        await using var all = await MailedCoop.MakeAsync();
        await all.Mail.GoAsync();
        await all.TellAsync("Bring boots");
        Assert.Empty(await all.AfterARoundAsync());
        for (var tries = 1; tries <= 3; tries++)
        {
            var row = (await all.WrittenDownAsync()).Single(m => !m.IsProof);
            Assert.Equal((tries, (DateTime?)null, (DateTime?)null), (row.Tries, row.DoneAt, row.HeldUntil));
            var gap = row.NextAt - all.Server.Clock.GetUtcNow().UtcDateTime;
            Assert.Equal(TimeSpan.FromMinutes(1 << (tries - 1)), gap);
            // Not before its time.
            all.Server.Clock.Advance(gap - TimeSpan.FromSeconds(1));
            Assert.Empty(await all.AfterARoundAsync());
            Assert.Equal(tries, (await all.WrittenDownAsync()).Single(m => !m.IsProof).Tries);
            if (tries == 3)
                await all.Mail.ComeAsync();
            all.Server.Clock.Advance(TimeSpan.FromSeconds(1));
            Assert.Equal(tries == 3 ? 1 : 0, (await all.AfterARoundAsync()).Count);
        }

        all.Server.Clock.Advance(TimeSpan.FromHours(1));
        Assert.Empty(await all.AfterARoundAsync());
    }

    [Fact]
    public async Task Outlast_a_start_and_go_out_from_another_server_on_the_same_database()
    {
        await using var all = await MailedCoop.MakeAsync();
        await all.Mail.GoAsync();
        await all.TellAsync("Bring boots");
        Assert.Empty(await all.AfterARoundAsync());
        await all.Mail.ComeAsync();
        await using var second = new SecondNode(all.Server, all.Settings);
        var round = second.Services.GetRequiredService<MailRound>();
        all.Server.Clock.Advance(TimeSpan.FromMinutes(1));
        await round.RunAsync(default);
        await all.Server.Services.GetRequiredService<MailRound>().RunAsync(default);
        Assert.Single(all.Mail.Came());
    }

    [Fact]
    public async Task Go_out_once_from_servers_that_go_round_at_once()
    {
        await using var all = await MailedCoop.MakeAsync();
        await all.TellAsync("Bring boots");
        await all.TellAsync("Bring a hat");
        var rounds = Enumerable.Range(0, 4).Select(_ => ActivatorUtilities.CreateInstance<MailRound>(all.Server.Services)).ToList();
        await Task.WhenAll(rounds.Select(r => r.RunAsync(default)));
        rounds.ForEach(r => r.Dispose());
        var came = all.Mail.Came().Concat(await all.AfterARoundAsync()).ToList();
        Assert.Equal(2, came.Count);
        Assert.Equal(2, came.Select(m => m.Message.MessageId).Distinct().Count());
    }

    [Fact]
    public async Task Do_not_reach_a_family_that_was_taken_out_while_they_waited()
    {
        await using var all = await MailedCoop.MakeAsync();
        await all.Mail.GoAsync();
        await all.TellAsync("Bring boots");
        Assert.Empty(await all.AfterARoundAsync());
        using var taken = await all.Coop.Leader.Guardian.PostAsync(all.Coop.Home + "/families?handler=TakeOut",
            [new("memberId", all.Birch.Id.ToString()), new("__RequestVerificationToken", await all.Coop.Leader.Guardian.TokenAsync())]);
        await all.Mail.ComeAsync();
        all.Server.Clock.Advance(TimeSpan.FromMinutes(1));
        Assert.Empty(await all.AfterARoundAsync());
        Assert.All((await all.WrittenDownAsync()).Where(m => !m.IsProof), m => Assert.NotNull(m.DoneAt));
    }

    [Fact]
    public async Task Of_a_notice_that_was_withdrawn_do_not_go_out()
    {
        await using var all = await MailedCoop.MakeAsync();
        await all.TellAsync("Bring boots");
        await all.Coop.WithDbAsync(async db =>
        {
            (await db.CoopNotices.SingleAsync()).Withdraw(TestServer.Start.UtcDateTime);
            await db.SaveChangesAsync();
        });
        Assert.Empty(await all.AfterARoundAsync());
    }

    [Fact]
    public async Task Are_given_up_where_the_mail_server_refuses_them_for_good()
    {
        await using var all = await MailedCoop.MakeAsync();
        all.Mail.Answers = new SmtpServer.Protocol.SmtpResponse(SmtpServer.Protocol.SmtpReplyCode.MailboxUnavailable, "no such mailbox");
        await all.TellAsync("Bring boots");
        Assert.Empty(await all.AfterARoundAsync());
        all.Mail.Answers = SmtpServer.Protocol.SmtpResponse.Ok;
        all.Server.Clock.Advance(TimeSpan.FromHours(1));
        Assert.Empty(await all.AfterARoundAsync());
        Assert.NotNull((await all.WrittenDownAsync()).Single(m => !m.IsProof).DoneAt);
    }

    [Fact]
    public void Wait_six_hours_at_most_and_three_days_in_all()
    {
        var now = TestServer.Start.UtcDateTime;
        var mail = new MailToSend(Guid.CreateVersion7(), Guid.CreateVersion7(), Guid.CreateVersion7(), Guid.CreateVersion7(), Guid.CreateVersion7(), now);
        var gaps = new List<TimeSpan>();
        while (mail.DoneAt is null)
        {
            mail.Later(now);
            gaps.Add(mail.NextAt - now);
            now = mail.NextAt;
        }

        Assert.Equal([1, 2, 4, 8, 16, 32, 64, 128, 256, 360, 360], gaps.Take(11).Select(g => (int)g.TotalMinutes));
        Assert.All(gaps.Skip(9), g => Assert.Equal(TimeSpan.FromHours(6), g));
        Assert.InRange(mail.DoneAt.Value - TestServer.Start.UtcDateTime, MailToSend.Patience, MailToSend.Patience + TimeSpan.FromHours(6));
    }

    [Fact]
    public async Task Are_not_offered_where_the_host_has_set_no_mail_server()
    {
        await using var server = new OwnServer();
        var family = await server.FamilyAsync();
        var page = await family.Guardian.GetAsync("/person/notices");
        Assert.Contains("Your host has set no mail server.", page.QuerySelector("main")!.TextContent, StringComparison.Ordinal);
        using var none = await family.Guardian.PostAsync("/person/notices?handler=Mail", [new("ByMail", "true"), new("__RequestVerificationToken", await family.Guardian.TokenAsync())]);
        Assert.Equal(HttpStatusCode.NotFound, none.StatusCode);
    }

    private static Task RenameAsync(MailedCoop all, string name) => all.Coop.WithDbAsync(async db =>
    {
        var coop = await db.Coops.SingleAsync();
        coop.Describe(name, coop.SickRule, "");
        await db.SaveChangesAsync();
    });

    private static Regex Link(string path) => new(Regex.Escape(MailedCoop.Url + path) + "[A-Za-z0-9_-]+", RegexOptions.None, TimeSpan.FromSeconds(1));
}
