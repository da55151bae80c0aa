using System.Net;
using CoopLessons.Data.Files;
using CoopLessons.Web.Hosting;
using CoopLessons.Web.Tests.App;
using CoopLessons.Web.Tests.Documents;
using Microsoft.Extensions.Configuration;

namespace CoopLessons.Web.Tests.Evidence;

public sealed class Files_in_a_bucket
{
    // Amazon Simple Storage Service API Reference, "Authenticating Requests: Using the Authorization Header (AWS Signature
    // Version 4)", example "GET Object": the key, the request and the signature as published there.
    [Fact]
    public void Are_asked_for_under_a_signature_that_is_computed_here_as_in_the_published_example()
    {
        const string empty = "e3b0c44298fc1c149afbf4c8996fb92427ae41e4649b934ca495991b7852b855";
        var signature = Signature.Of(
            "wJalrXUtnFEMI/K7MDENG/bPxRfiCYEXAMPLEKEY", "GET", "/test.txt",
            [("host", "examplebucket.s3.amazonaws.com"), ("range", "bytes=0-9"), ("x-amz-content-sha256", empty), ("x-amz-date", "20130524T000000Z")],
            empty, "20130524T000000Z", "20130524/us-east-1/s3/aws4_request");
        Assert.Equal("f0e8bdb87c964420e857bd35b5d6ed310bd44f0170aba48dd91039c6036bdb41", signature);
    }

    [Fact]
    public async Task Lie_under_family_and_hash_and_come_back_as_they_were()
    {
        using var bench = new Workbench();
        await using var bucket = await Bucket.OpenAsync();
        using var shelf = Shelf(bench, bucket);
        var (mine, other) = (Guid.CreateVersion7(), Guid.CreateVersion7());
        var hash = await shelf.PutAsync(mine, new MemoryStream([.. "abc"u8]), default);
        // FIPS 180-4's one-block example, "abc".
        Assert.Equal("ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad", hash);
        Assert.Equal([$"{mine:N}/{hash}"], bucket.Objects.Keys);
        Assert.Equal((true, false), (await shelf.HasAsync(mine, hash, default), await shelf.HasAsync(other, hash, default)));
        Assert.Null(await shelf.AtHandAsync(other, hash, default));
        using (var file = await shelf.AtHandAsync(mine, hash, default))
            Assert.Equal(System.Text.Encoding.ASCII.GetBytes("abc"), await File.ReadAllBytesAsync(file!.Path));

        await shelf.RemoveAsync(other, hash, default);
        Assert.True(await shelf.HasAsync(mine, hash, default));
        await shelf.RemoveAsync(mine, hash, default);
        Assert.Empty(bucket.Objects);
        Assert.Empty(bucket.Refused);
        // Nothing stays on this machine's disk.
        Assert.Empty(Directory.GetFiles(bench.Folder("files"), "*", SearchOption.AllDirectories));
    }

    [Fact]
    public async Task Are_swept_by_family_and_forgotten_by_family()
    {
        using var bench = new Workbench();
        await using var bucket = await Bucket.OpenAsync();
        using var shelf = Shelf(bench, bucket);
        var (mine, other) = (Guid.CreateVersion7(), Guid.CreateVersion7());
        var hashes = new List<string>();
        foreach (var content in new byte[][] { [1], [2], [3] })
            hashes.Add(await shelf.PutAsync(mine, new MemoryStream(content), default));
        await shelf.PutAsync(other, new MemoryStream([1]), default);

        await shelf.SweepAsync(mine, new HashSet<string> { hashes[0] }, DateTime.UtcNow.AddHours(-1), default);
        Assert.Equal(4, bucket.Objects.Count);
        await shelf.SweepAsync(mine, new HashSet<string> { hashes[0] }, DateTime.UtcNow.AddHours(1), default);
        Assert.Equal(new[] { $"{mine:N}/{hashes[0]}", $"{other:N}/{hashes[0]}" }.Order(StringComparer.Ordinal), bucket.Objects.Keys.Order(StringComparer.Ordinal));
        await shelf.ForgetAsync(other, default);
        Assert.Single(bucket.Objects);
        Assert.Empty(bucket.Refused);
    }

    [Fact]
    public async Task Serve_photos_and_packets_as_a_folder_does()
    {
        await using var bucket = await Bucket.OpenAsync();
        using var server = new OwnServer(
            new("CoopLessons:S3Address", bucket.Address), new("CoopLessons:S3Bucket", Bucket.Name), new("CoopLessons:S3Key", Bucket.Key), new("CoopLessons:S3Secret", Bucket.Secret));
        var family = await EvidenceFamily.MakeAsync(server);
        var piece = await family.KeptAsync(SamplePhotos.Photo());
        Assert.Equal(2, bucket.Objects.Count);
        Assert.Empty(family.OnDisk());
        Assert.Equal(bucket.Objects[$"{family.Family.Id:N}/{piece.Hash}"].Bytes, await family.BytesAsync($"/evidence/{piece.Id}/file"));

        var printing = await Printing.PrintingFamily.MakeAsync(server);
        using var brought = await printing.BringAsync(SamplePages.Sheet("mill-visit"), "visit.pdf");
        Assert.Equal(HttpStatusCode.Redirect, brought.StatusCode);
        Assert.True((await printing.PacketPdfAsync()).AsSpan().StartsWith("%PDF"u8));
        Assert.Empty(bucket.Refused);
    }

    [Theory]
    [InlineData("S3Address", "storage", "CoopLessons__S3Address")]
    [InlineData("S3Address", "http://storage.example.org", "https")]
    [InlineData("S3Bucket", "", "CoopLessons__S3Bucket")]
    [InlineData("S3Key", "", "CoopLessons__S3Key")]
    [InlineData("S3Secret", "", "CoopLessons__S3Secret")]
    [InlineData("S3Secret_FILE", "/nowhere/at/all", "cannot be read")]
    public void Are_not_looked_for_where_a_setting_is_missing(string name, string value, string words)
    {
        var settings = new Dictionary<string, string?> { ["S3Address"] = "https://storage.example.org", ["S3Bucket"] = "files", ["S3Key"] = "key", ["S3Secret"] = "quernstone" };
        settings[name] = value;
        var fault = Assert.Throws<SettingUnfitException>(() => Read(settings));
        Assert.Contains(words, fault.Message, StringComparison.Ordinal);
        Assert.DoesNotContain("quernstone", fault.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void Are_opened_with_a_secret_that_lies_in_a_file()
    {
        using var bench = new Workbench();
        var file = bench.Put("secret", [.. "from a file\n"u8]);
        var read = Read(new() { ["S3Address"] = "https://storage.example.org", ["S3Bucket"] = "files", ["S3Key"] = "key", ["S3Secret_FILE"] = file, ["S3PathStyle"] = "false" });
        Assert.Equal(("from a file", false), (read.Bucket!.Secret, read.Bucket.PathStyle));
        Assert.Null(Read([]).Bucket);
    }

    private static FileShelf Shelf(Workbench bench, Bucket bucket) => new(bench.Folder("files"), new BucketAddress(new Uri(bucket.Address), Bucket.Name, Bucket.Key, Bucket.Secret));

    private static ServerSettings Read(Dictionary<string, string?> settings) =>
        ServerSettings.From(new ConfigurationBuilder().AddInMemoryCollection(settings.ToDictionary(s => $"CoopLessons:{s.Key}", s => s.Value)).Build());
}
