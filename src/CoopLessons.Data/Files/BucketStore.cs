using System.Net;
using Amazon.Runtime;
using Amazon.S3;
using Amazon.S3.Model;

namespace CoopLessons.Data.Files;

/// <summary>Where a bucket is, and the key that opens it.</summary>
/// <param name="Address">Of the service, such as <c>https://storage.example.org</c>.</param>
/// <param name="Region">The name that requests are signed for; services of one's own take any.</param>
/// <param name="PathStyle">Whether the bucket's name stands in the path rather than before the host's name.</param>
public sealed record BucketAddress(Uri Address, string Bucket, string Key, string Secret, string Region = "us-east-1", bool PathStyle = true);

/// <summary>
/// Files in a bucket of a service that speaks the S3 protocol: <c>family/hash</c>. What is read is copied to this machine's
/// disk first, since packets and videos are read from many places at once.
/// </summary>
public sealed class BucketStore : FileStore
{
    private readonly AmazonS3Client _client;
    private readonly string _bucket;
    private readonly Func<FileStream> _scratch;

    /// <param name="scratch">Makes a file that is gone when it is closed.</param>
    public BucketStore(BucketAddress at, Func<FileStream> scratch)
    {
        (_bucket, _scratch) = (at.Bucket, scratch);
        _client = new AmazonS3Client(new BasicAWSCredentials(at.Key, at.Secret), new AmazonS3Config
        {
            ServiceURL = at.Address.AbsoluteUri,
            ForcePathStyle = at.PathStyle,
            AuthenticationRegion = at.Region,
            // Checksums that travel behind the body are understood by few services; the signature holds the body's hash anyway.
            RequestChecksumCalculation = RequestChecksumCalculation.WHEN_REQUIRED,
            ResponseChecksumValidation = ResponseChecksumValidation.WHEN_REQUIRED,
            MaxErrorRetry = 2,
            Timeout = TimeSpan.FromMinutes(2),
        });
    }

    public override async Task<string> PutAsync(Guid familyId, Stream content, CancellationToken ct)
    {
        await using var whole = _scratch();
        var hash = await FolderStore.HashAsync(content, whole, ct);
        whole.Position = 0;
        await _client.PutObjectAsync(
            new PutObjectRequest
            {
                BucketName = _bucket,
                Key = KeyOf(familyId, hash),
                InputStream = whole,
                AutoCloseStream = false,
                UseChunkEncoding = false,
                ContentType = "application/octet-stream",
            },
            ct);
        return hash;
    }

    public override async Task<bool> HasAsync(Guid familyId, string hash, CancellationToken ct)
    {
        try
        {
            await _client.GetObjectMetadataAsync(_bucket, KeyOf(familyId, hash), ct);
            return true;
        }
        catch (AmazonS3Exception fault) when (fault.StatusCode == HttpStatusCode.NotFound)
        {
            return false;
        }
    }

    public override async Task<FileAtHand?> AtHandAsync(Guid familyId, string hash, CancellationToken ct)
    {
        var copy = _scratch();
        try
        {
            using var answer = await _client.GetObjectAsync(_bucket, KeyOf(familyId, hash), ct);
            await answer.ResponseStream.CopyToAsync(copy, ct);
            await copy.FlushAsync(ct);
            return new FileAtHand(copy.Name, copy);
        }
        catch (AmazonS3Exception fault) when (fault.StatusCode == HttpStatusCode.NotFound)
        {
            await copy.DisposeAsync();
            return null;
        }
        catch
        {
            await copy.DisposeAsync();
            throw;
        }
    }

    public override Task RemoveAsync(Guid familyId, string hash, CancellationToken ct) =>
        _client.DeleteObjectAsync(_bucket, KeyOf(familyId, hash), ct);

    public override async Task SweepAsync(Guid familyId, IReadOnlySet<string> kept, DateTime untouchedSince, CancellationToken ct)
    {
        var prefix = PrefixOf(familyId);
        foreach (var there in await ListAsync(prefix, ct))
        {
            if (!kept.Contains(there.Key[prefix.Length..]) && there.LastModified is { } at && at.ToUniversalTime() < untouchedSince)
                await _client.DeleteObjectAsync(_bucket, there.Key, ct);
        }
    }

    public override async Task ForgetAsync(Guid familyId, CancellationToken ct)
    {
        foreach (var there in await ListAsync(PrefixOf(familyId), ct))
            await _client.DeleteObjectAsync(_bucket, there.Key, ct);
    }

    protected override void Dispose(bool disposing)
    {
        if (disposing)
            _client.Dispose();
        base.Dispose(disposing);
    }

    private async Task<List<S3Object>> ListAsync(string prefix, CancellationToken ct)
    {
        var all = new List<S3Object>();
        var asked = new ListObjectsV2Request { BucketName = _bucket, Prefix = prefix };
        ListObjectsV2Response answer;
        do
        {
            answer = await _client.ListObjectsV2Async(asked, ct);
            all.AddRange(answer.S3Objects ?? []);
            asked.ContinuationToken = answer.NextContinuationToken;
        }
        while (answer.IsTruncated == true);
        return all;
    }

    private static string PrefixOf(Guid familyId) => familyId.ToString("N") + "/";

    private static string KeyOf(Guid familyId, string hash) => PrefixOf(familyId) + Checked(hash);
}
