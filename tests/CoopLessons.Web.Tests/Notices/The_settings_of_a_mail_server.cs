using CoopLessons.Web.Hosting;
using MailKit.Security;
using Microsoft.Extensions.Configuration;

namespace CoopLessons.Web.Tests.Notices;

public sealed class The_settings_of_a_mail_server
{
    [Theory]
    [InlineData("MailPort", "0", "CoopLessons__MailPort")]
    [InlineData("MailPort", "70000", "CoopLessons__MailPort")]
    [InlineData("MailPort", "many", "MailPort")]
    [InlineData("MailTls", "yes", "CoopLessons__MailTls")]
    [InlineData("MailTls", "off", "travel readable")]
    [InlineData("MailFrom", "", "CoopLessons__MailFrom")]
    [InlineData("MailFrom", "the co-op", "CoopLessons__MailFrom")]
    [InlineData("MailFrom", "a@b.example\r\nBcc: c@d.example", "CoopLessons__MailFrom")]
    [InlineData("PublicUrl", "", "CoopLessons__PublicUrl")]
    [InlineData("MailPassword", "", "CoopLessons__MailPassword")]
    [InlineData("MailPassword_FILE", "/nowhere/at/all", "cannot be read")]
    [InlineData("MailUser", "", "CoopLessons__MailUser")]
    public void Stop_the_start_with_a_sentence_where_one_cannot_be_used(string name, string value, string words)
    {
        var told = Full();
        told[name] = value;
        var fault = Assert.Throws<SettingUnfitException>(() => Read(told));
        Assert.Contains(words, fault.Message, StringComparison.Ordinal);
        Assert.DoesNotContain("quernstone", fault.Message, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("starttls", SecureSocketOptions.StartTls)]
    [InlineData("Implicit", SecureSocketOptions.SslOnConnect)]
    public void Are_a_mail_server_where_all_is_there(string tls, SecureSocketOptions meant)
    {
        var told = Full();
        told["MailTls"] = tls;
        var mail = Read(told).Mail!;
        Assert.Equal(("mail.example.org", 587, meant, "coop", "quernstone", "co-op@lessons.example.org"), (mail.Host, mail.Port, mail.Tls, mail.User, mail.Password, mail.From.Address));
    }

    [Fact]
    public void Take_the_password_from_a_file_and_no_tls_on_this_machine()
    {
        var file = Path.GetTempFileName();
        try
        {
            File.WriteAllText(file, "from a file\n");
            var told = Full();
            (told["MailPassword"], told["MailPassword_FILE"], told["MailHost"], told["MailTls"]) = (null, file, "localhost", "off");
            Assert.Equal("from a file", Read(told).Mail!.Password);
        }
        finally
        {
            File.Delete(file);
        }
    }

    [Fact]
    public void Are_none_where_no_host_is_named() => Assert.Null(Read([]).Mail);

    private static Dictionary<string, string?> Full() => new()
    {
        ["MailHost"] = "mail.example.org",
        ["MailUser"] = "coop",
        ["MailPassword"] = "quernstone",
        ["MailFrom"] = "Millrace <co-op@lessons.example.org>",
        ["PublicUrl"] = "https://lessons.example.org",
    };

    private static ServerSettings Read(Dictionary<string, string?> told) =>
        ServerSettings.From(new ConfigurationBuilder().AddInMemoryCollection(told.ToDictionary(s => $"CoopLessons:{s.Key}", s => s.Value)).Build());
}
