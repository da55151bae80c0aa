using CoopLessons.Documents.Uploads;
using MetadataExtractor;
using MetadataExtractor.Formats.Exif;
using MetadataExtractor.Formats.Xmp;
using SkiaSharp;

namespace CoopLessons.Web.Tests.Evidence;

/// <summary>What is kept is read by another library (MetadataExtractor), which first finds everything in what came.</summary>
public sealed class Pictures_looked_at
{
    [Fact]
    public void Lose_place_device_and_time_and_tell_the_time_first()
    {
        var photo = SamplePhotos.Photo();
        var came = ImageMetadataReader.ReadMetadata(new MemoryStream(photo));
        var place = Assert.Single(came.OfType<GpsDirectory>()).GetGeoLocation();
        Assert.Equal((39.2583, -94.2017), (Math.Round(place!.Latitude, 4), Math.Round(place.Longitude, 4)));
        Assert.Equal(ExifBlock.Device, Assert.Single(came.OfType<ExifIfd0Directory>()).GetDescription(ExifDirectoryBase.TagModel));

        var (verdict, kept, small) = Looked.At(photo);
        Assert.Equal(new EvidenceVerdict(null, EvidenceForm.Jpeg, true, 1, true, new DateTime(2026, 3, 10, 9, 41, 7), kept.Length), verdict);
        Assert.All([kept, small], AssertNothingTold);
        // A device that is not known for its tags may still have been named somewhere.
        Assert.All([kept, small], bytes => Assert.True(bytes.AsSpan().IndexOf("pinhole"u8) < 0));
    }

    [Fact]
    public void Lose_them_as_WebP_and_PNG_too()
    {
        var png = SamplePhotos.Encoded(SamplePhotos.Quarters(), SKEncodedImageFormat.Png);
        // The PNG specification, third edition, 11.3.3.3: eXIf before the picture's own chunks.
        byte[] tagged = [.. png[..33], .. SamplePhotos.Chunk("eXIf", ExifBlock.Of(takenAt: "2026:03:10 09:41:07")), .. png[33..]];
        foreach (var (photo, form) in new[] { (SamplePhotos.WebP(), EvidenceForm.Jpeg), (tagged, EvidenceForm.Png) })
        {
            Assert.True(photo.AsSpan().IndexOf("pinhole"u8) > 0);
            var (verdict, kept, small) = Looked.At(photo);
            Assert.Equal((null, form, new DateTime(2026, 3, 10, 9, 41, 7)), (verdict.Fault, verdict.Form, verdict.TakenAt!.Value));
            Assert.All([kept, small], AssertNothingTold);
        }
    }

    [Theory]
    [InlineData(1)]
    [InlineData(2)]
    [InlineData(3)]
    [InlineData(4)]
    [InlineData(5)]
    [InlineData(6)]
    [InlineData(7)]
    [InlineData(8)]
    public void Stand_upright_from_every_way_a_device_was_held(int orientation)
    {
        var (verdict, kept, small) = Looked.At(SamplePhotos.Turned(orientation));
        Assert.Null(verdict.Fault);
        foreach (var bytes in new[] { kept, small })
        {
            using var upright = SKBitmap.Decode(bytes);
            Assert.Equal((320, 192), (upright.Width, upright.Height));
            SKColor[] seen = [upright.GetPixel(40, 24), upright.GetPixel(280, 24), upright.GetPixel(40, 168), upright.GetPixel(280, 168)];
            Assert.All(seen.Zip(SamplePhotos.Corners), pair => Assert.True(Near(pair.First, pair.Second), $"{pair.First} instead of {pair.Second}"));
        }
    }

    [Theory]
    [InlineData(4000, 1000, 2048, 512, 400, 100)]
    [InlineData(1000, 3000, 682, 2048, 133, 400)]
    [InlineData(300, 200, 300, 200, 300, 200)]
    public void Are_as_large_as_a_screen_shows_and_small_once_more(int width, int height, int keptWidth, int keptHeight, int smallWidth, int smallHeight)
    {
        using var large = SamplePhotos.Quarters(width, height);
        var (_, kept, small) = Looked.At(SamplePhotos.Encoded(large, SKEncodedImageFormat.Jpeg));
        using var one = SKBitmap.Decode(kept);
        using var two = SKBitmap.Decode(small);
        Assert.Equal((keptWidth, keptHeight, smallWidth, smallHeight), (one.Width, one.Height, two.Width, two.Height));
    }

    [Fact]
    public void Are_refused_by_their_head_where_unpacking_them_would_take_too_much()
    {
        var bomb = SamplePhotos.Bomb();
        Assert.True(bomb.Length < 1_000_000);
        var (verdict, kept, small) = Looked.At(bomb);
        Assert.Equal(FileFault.TooManyDots, verdict.Fault);
        Assert.Empty(kept);
        Assert.Empty(small);
    }

    [Fact]
    public void Of_many_dots_are_taken_as_JPEG_line_by_line_but_not_where_it_sharpens_as_it_loads()
    {
        byte[] large;
        using (var grey = new SKBitmap(new SKImageInfo(8200, 5000, SKColorType.Gray8, SKAlphaType.Opaque)))
            large = SamplePhotos.Encoded(grey, SKEncodedImageFormat.Jpeg);
        Assert.True(8200L * 5000 > EvidenceFile.MostDots);
        var (verdict, kept, _) = Looked.At(large);
        Assert.Null(verdict.Fault);
        using var picture = SKBitmap.Decode(kept);
        Assert.Equal(2048, picture.Width);

        // The frame's mark says how it was made: ITU-T T.81, table B.1, SOF0 and SOF2.
        var mark = large.AsSpan().IndexOf((ReadOnlySpan<byte>)[0xFF, 0xC0]);
        large[mark + 1] = 0xC2;
        Assert.Equal(FileFault.TooManyDots, Looked.At(large).Verdict.Fault);
    }

    [Fact]
    public void Keep_nothing_of_a_page_that_was_hidden_in_them()
    {
        byte[] both = [.. SamplePhotos.Photo(), .. "<!doctype html><script>alert(1)</script>"u8];
        var (verdict, kept, small) = Looked.At(both);
        Assert.Null(verdict.Fault);
        Assert.All([kept, small], bytes => Assert.True(bytes.AsSpan().IndexOf("script"u8) < 0));
    }

    [Theory]
    [InlineData("2026:02:30 10:00:00")]
    [InlineData("0000:00:00 00:00:00")]
    [InlineData("yesterday morning..")]
    public void Tell_no_time_that_no_calendar_has(string taken)
    {
        var (verdict, _, _) = Looked.At(SamplePhotos.Photo(taken));
        Assert.Null(verdict.Fault);
        Assert.Null(verdict.TakenAt);
    }

    [Fact]
    public void Tell_no_time_where_their_tags_lead_nowhere()
    {
        var block = ExifBlock.Of(takenAt: "2026:03:10 09:41:07");
        for (var at = 4; at < block.Length; at++)
        {
            var broken = block.ToArray();
            broken[at] ^= 0xFF;
            var (verdict, _, _) = Looked.At(ExifBlock.InJpeg(SamplePhotos.Encoded(SamplePhotos.Quarters(32, 32), SKEncodedImageFormat.Jpeg), broken));
            Assert.Null(verdict.Fault);
        }
    }

    private static void AssertNothingTold(byte[] bytes)
    {
        var told = ImageMetadataReader.ReadMetadata(new MemoryStream(bytes));
        Assert.DoesNotContain(told, d => d is ExifDirectoryBase or XmpDirectory || d.Name.Contains("ICC", StringComparison.Ordinal) || d.Name.Contains("IPTC", StringComparison.Ordinal) || d.HasError);
        Assert.NotEmpty(told);
    }

    private static bool Near(SKColor a, SKColor b) => Math.Abs(a.Red - b.Red) + Math.Abs(a.Green - b.Green) + Math.Abs(a.Blue - b.Blue) < 40;
}

/// <summary>A file looked at in this process, for what needs no other.</summary>
internal static class Looked
{
    public static (EvidenceVerdict Verdict, byte[] Kept, byte[] Small) At(byte[] file)
    {
        using var kept = new MemoryStream();
        using var small = new MemoryStream();
        var verdict = EvidenceFile.Look(new MemoryStream(file), kept, small, CancellationToken.None);
        return (verdict, kept.ToArray(), small.ToArray());
    }
}
