using CoopLessons.Core.Sealing;

namespace CoopLessons.Core.Tests.Sealing;

public class A_fingerprint
{
    // FIPS 180-4, as in NIST's example for SHA-256 of the message "abc".
    private const string OfAbc = "ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad";

    [Fact]
    public void Is_the_published_digest_of_the_published_message() => Assert.Equal(OfAbc, Fingerprint.Of("abc").Hex);

    [Fact]
    public void Is_shown_in_sixteen_groups_and_in_short()
    {
        var mark = Fingerprint.Of("abc");
        Assert.Equal("ba78 16bf 8f01 cfea 4141 40de 5dae 2223 b003 61a3 9617 7a9c b410 ff61 f200 15ad", mark.Groups);
        Assert.Equal("ba78-16bf-8f01", mark.ShortForm);
    }

    [Theory]
    [InlineData(OfAbc, 64)]
    [InlineData("ba78-16bf-8f01", 12)]
    [InlineData("  BA78 16BF\r\n8F01 cfea.", 16)]
    public void Is_read_as_it_was_pasted(string typed, int digits)
    {
        Assert.True(Fingerprint.TryRead(typed, out var read));
        Assert.Equal(OfAbc[..digits], read);
    }

    [Theory]
    [InlineData(null)]
    [InlineData("")]
    [InlineData("ba78-16bf-8f0")]
    [InlineData("ba78-16bf-8f0g")]
    [InlineData("Fingerprint ba78-16bf-8f01")]
    [InlineData("ba78-16bf-8f0é")]
    [InlineData(OfAbc + "0")]
    public void Is_not_read_out_of_what_is_none(string? typed) => Assert.False(Fingerprint.TryRead(typed, out _));

    [Theory]
    [InlineData("ba78")]
    [InlineData("BA7816BF8F01CFEA414140DE5DAE2223B00361A396177A9CB410FF61F20015AD")]
    public void Is_kept_whole_and_in_small_letters(string hex) => Assert.Throws<ArgumentException>(() => Fingerprint.Kept(hex));

    // jq 1.6 and sha256sum of GNU coreutils 9.1 over the record's text, written to a file:
    // jq -jcS . record.json | sha256sum
    [Fact]
    public void Of_a_record_is_what_general_programs_compute() =>
        Assert.Equal("3c38026a6e2ce9b146826b76ca29f92e4a5f68a2ac56c34ee073c8fd3c2d45f8", AlderYear.Record().Fingerprint.Hex);
}
