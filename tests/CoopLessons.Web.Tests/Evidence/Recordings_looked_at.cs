using CoopLessons.Documents.Uploads;
using MetadataExtractor;
using MetadataExtractor.Formats.QuickTime;

namespace CoopLessons.Web.Tests.Evidence;

public sealed class Recordings_looked_at
{
    public static TheoryData<string> Places => ["user data", "3GPP", "keys", "notes"];

    [Theory]
    [MemberData(nameof(Places))]
    public void Lose_the_place_where_they_were_made_and_nothing_else_moves(string where)
    {
        var video = SampleRecordings.Video(where switch
        {
            "user data" => SampleRecordings.UserData(),
            "3GPP" => SampleRecordings.Loci(),
            "keys" => SampleRecordings.Keyed(),
            _ => SampleRecordings.Xmp(),
        });
        byte[][] told = [[.. "+39.2583"u8], [.. "The mill pond"u8], [.. "GPSLatitude"u8], [0xFF, 0xA1, 0xCC, 0x5D]];
        Assert.Contains(told, t => video.AsSpan().IndexOf(t) > 0);

        var (verdict, kept, small) = Looked.At(video);
        Assert.Equal((null, EvidenceForm.Mp4, true, true), (verdict.Fault, verdict.Form, verdict.HasPicture, verdict.Changed));
        Assert.Equal(video.Length, kept.Length);
        Assert.Empty(small);
        Assert.All(told, t => Assert.True(kept.AsSpan().IndexOf(t) < 0));
        // What stands before and behind is as it was.
        Assert.Equal(video[..24], kept[..24]);
        Assert.Equal(video[^520..], kept[^520..]);
    }

    // Independent reader: MetadataExtractor, which finds the place in what came.
    [Fact]
    public void Tell_another_reader_no_place_any_more_and_still_who_made_the_device()
    {
        var video = SampleRecordings.Video(SampleRecordings.Keyed());
        Assert.Contains(Told(video), t => t.Contains("+39.2583", StringComparison.Ordinal));
        var (_, kept, _) = Looked.At(video);
        Assert.DoesNotContain(Told(kept), t => t.Contains("39.2", StringComparison.Ordinal));
        Assert.Contains(Told(kept), t => t.Contains("Millrace", StringComparison.Ordinal));
    }

    [Theory]
    [InlineData("gpmd")]
    [InlineData("camm")]
    public void Are_refused_where_a_track_of_theirs_is_a_list_of_places(string format)
    {
        var video = SampleRecordings.Video("meta", format);
        Assert.Equal(FileFault.Located, Looked.At(video).Verdict.Fault);
    }

    [Fact]
    public void Without_a_place_are_kept_to_the_byte()
    {
        foreach (var (file, form, hasPicture) in new[]
        {
            (SampleRecordings.Video(), EvidenceForm.Mp4, true),
            (SampleRecordings.Video("soun", "mp4a"), EvidenceForm.Mp4, false),
            (SampleRecordings.Mp3(), EvidenceForm.Mp3, false),
            (SampleRecordings.Mp3()[20..], EvidenceForm.Mp3, false),
            (SampleRecordings.Wav(), EvidenceForm.Wav, false),
            (SampleRecordings.Ogg(), EvidenceForm.Ogg, false),
            (SampleRecordings.WebM(1), EvidenceForm.WebM, true),
            (SampleRecordings.WebM(2), EvidenceForm.WebM, false),
        })
        {
            var (verdict, kept, _) = Looked.At(file);
            Assert.Equal(new EvidenceVerdict(null, form, hasPicture, 1, false, null, file.Length), verdict);
            Assert.Equal(file, kept);
        }
    }

    [Fact]
    public void Cut_anywhere_are_broken_and_break_nothing()
    {
        foreach (var file in new[] { SampleRecordings.Video(SampleRecordings.Keyed(), SampleRecordings.UserData()), SampleRecordings.Wav(), SampleRecordings.Ogg() })
        {
            for (var length = 13; length < file.Length; length += 7)
                Assert.NotNull(Looked.At(file[..length]).Verdict.Fault);
        }
    }

    [Fact]
    public void With_any_byte_of_their_head_turned_over_break_nothing()
    {
        var video = SampleRecordings.Video(SampleRecordings.Keyed(), SampleRecordings.UserData());
        for (var at = 0; at < video.Length - 512; at++)
        {
            var broken = video.ToArray();
            broken[at] ^= 0x80;
            var (verdict, kept, _) = Looked.At(broken);
            Assert.Equal(verdict.Fault is null ? video.Length : 0, kept.Length);
        }
    }

    private static List<string> Told(byte[] video) =>
        [.. QuickTimeMetadataReader.ReadMetadata(new MemoryStream(video)).SelectMany(d => d.Tags).Select(t => t.Description ?? "")];
}
