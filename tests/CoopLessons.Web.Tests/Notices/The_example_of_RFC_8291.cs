using System.Buffers.Text;
using System.Security.Cryptography;
using System.Text;
using CoopLessons.Web.Notices;

namespace CoopLessons.Web.Tests.Notices;

/// <summary>Source of every value: RFC 8291, section 5 and Appendix A (keys, salt, text and the message that comes of them).</summary>
public sealed class The_example_of_RFC_8291
{
    private const string Text = "When I grow up, I want to be a watermelon";
    private const string SenderPublic = "BP4z9KsN6nGRTbVYI_c7VJSPQTBtkgcy27mlmlMoZIIgDll6e3vCYLocInmYWAmS6TlzAC8wEqKK6PBru3jl7A8";
    private const string SenderPrivate = "yfWPiYE-n46HLnH0KqZOF1fJJU3MYrct3AELtAQ-oRw";
    private const string ReceiverPublic = "BCVxsr7N_eNgVRqvHtD0zTZsEc6-VV-JvLexhqUzORcxaOzi6-AYWXvTBHm4bjyPjs7Vd8pZGH6SRpkNtoIAiw4";
    private const string ReceiverPrivate = "q1dXpw3UpT5VOmu_cf_v6ih07Aems3njxI-JWgLcM94";
    private const string Secret = "BTBZMqHH6r4Tts7J_aSIgg";
    private const string Salt = "DGv6ra1nlYgDCS1FRnbzlw";
    private const string Message =
        "DGv6ra1nlYgDCS1FRnbzlwAAEABBBP4z9KsN6nGRTbVYI_c7VJSPQTBtkgcy27mlmlMoZIIgDll6e3vCYLocInmYWAmS6TlzAC8wEqKK6PBru3jl7A_yl95bQpu6cVPTpK4Mqgkf1CXztLVBSt2Ks3oZwbuwXPXLWyouBWLVWGNWQexSgSxsj_Qulcy4a-fN";

    [Fact]
    public void Is_opened_by_the_browser_of_these_tests() =>
        Assert.Equal(Text, OpenedMessage.Of(ReceiverPublic, ReceiverPrivate, Secret).Open(Base64Url.DecodeFromChars(Message)));

    [Fact]
    public void Is_sealed_as_the_RFC_seals_it()
    {
        using var sender = OpenedMessage.Pair(SenderPublic, SenderPrivate);
        var sealedAnew = SealedMessage.Seal(Encoding.UTF8.GetBytes(Text), Base64Url.DecodeFromChars(ReceiverPublic), Base64Url.DecodeFromChars(Secret), sender, Base64Url.DecodeFromChars(Salt));
        Assert.Equal(Message, Base64Url.EncodeToString(sealedAnew));
    }

    [Theory]
    [InlineData(0)]
    [InlineData(1)]
    [InlineData(SealedMessage.LongestText)]
    public void A_message_of_any_length_is_opened(int length)
    {
        var browser = OpenedMessage.New();
        var text = new string('a', length);
        Assert.Equal(text, browser.Open(SealedMessage.Seal(Encoding.UTF8.GetBytes(text), browser.Key, browser.Secret)));
    }

    [Fact]
    public void A_longer_one_is_refused()
    {
        var browser = OpenedMessage.New();
        Assert.Throws<ArgumentException>(() => SealedMessage.Seal(new byte[SealedMessage.LongestText + 1], browser.Key, browser.Secret));
    }

    [Fact]
    public void A_changed_message_is_opened_by_nobody()
    {
        var message = Base64Url.DecodeFromChars(Message);
        message[^1] ^= 1;
        Assert.ThrowsAny<CryptographicException>(() => OpenedMessage.Of(ReceiverPublic, ReceiverPrivate, Secret).Open(message));
    }

    [Fact]
    public void What_is_no_point_of_the_curve_is_no_key()
    {
        var key = Base64Url.DecodeFromChars(ReceiverPublic);
        Assert.True(SealedMessage.IsKey(key));
        key[^1] ^= 1;
        Assert.False(SealedMessage.IsKey(key));
        Assert.False(SealedMessage.IsKey([]));
        Assert.False(SealedMessage.IsKey([.. Base64Url.DecodeFromChars(ReceiverPublic), 0]));
    }
}
