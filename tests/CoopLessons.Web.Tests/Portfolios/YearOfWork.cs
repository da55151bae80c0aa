using System.Net;
using CoopLessons.Core.Requirements;
using CoopLessons.Data.Evidence;
using CoopLessons.Data.Files;
using CoopLessons.Data.Log;
using CoopLessons.Web.Pages.Records;
using CoopLessons.Web.Planning;
using CoopLessons.Web.Tests.App;
using CoopLessons.Web.Tests.Documents;
using CoopLessons.Web.Tests.Evidence;
using CoopLessons.Web.Tests.Records;
using Microsoft.Extensions.DependencyInjection;
using SkiaSharp;

namespace CoopLessons.Web.Tests.Portfolios;

/// <summary>Linnet’s year under Missouri’s law with a log and samples, as far as a test puts them there.</summary>
internal sealed class YearOfWork
{
    public static readonly DateOnly September = new(2025, 9, 1);

    private YearOfWork(KeptLog log) => Log = log;

    public KeptLog Log { get; }
    public TestFamily Family => Log.Family;
    public Visitor Guardian => Log.Guardian;

    public static async Task<YearOfWork> OfAsync(TestServer server)
    {
        var log = await KeptLog.OfAsync(server, "Linnet", "Wren").StandsAsync("US-MO", "home-school");
        await log.GradeAsync(4);
        return new YearOfWork(log);
    }

    public string Page => $"/records/portfolio?learner={Log.Linnet}&year={Log.YearId}";

    public string File(string size = "short", string learner = "Linnet") => $"/records/{Log.Learners[learner]}/{Log.YearId}/portfolio-{size}.pdf";

    public string Samples(string key) => $"/records/portfolio/{Log.Linnet}/{Log.YearId}/samples/{key}";

    public string Subject(string more = "") => $"/records/subject?learner={Log.Linnet}&year={Log.YearId}{more}";

    /// <summary>A photo on the shelf, as if it had been brought.</summary>
    public async Task<Guid> PhotoAsync(
        DateOnly date, string subject = "science", string caption = "", bool setAside = false, bool facesOut = false, string[]? who = null, Guid? entry = null, int size = 240, int? high = null)
    {
        using var picture = SamplePhotos.Quarters(size, high ?? size * 3 / 5);
        var jpeg = SamplePhotos.Encoded(picture, SKEncodedImageFormat.Jpeg);
        return await PieceAsync(jpeg, StoredKind.Jpeg, PieceKind.Photo, 1, date, subject, caption, setAside, facesOut, who, entry);
    }

    public async Task<Guid> PieceAsync(
        byte[] bytes, StoredKind stored, PieceKind kind, int pages, DateOnly date, string subject, string caption = "", bool setAside = false, bool facesOut = false, string[]? who = null, Guid? entry = null)
    {
        var shelf = Family.Server.Services.GetRequiredService<FileShelf>();
        var hash = await shelf.PutAsync(Family.Id, new MemoryStream(bytes), default);
        var (id, now, author) = (Guid.CreateVersion7(), TestServer.Start.UtcDateTime, new Author(Family.GuardianId, "Iris"));
        await Family.WithDbAsync(async db =>
        {
            var file = await db.StoredFiles.FindAsync(Family.Id, hash) ?? db.StoredFiles.Add(new StoredFile(hash, stored, bytes.Length, pages, "Iris", now)).Entity;
            var facts = new PieceFacts(date, [.. (who ?? ["Linnet"]).Select(w => Log.Learners[w])], Log.Subjects[subject], entry, caption, facesOut, setAside);
            db.Pieces.Add(new Piece(id, kind, new PieceFiles("it", file), null, facts, author, now));
            await db.SaveChangesAsync();
        });
        return id;
    }

    /// <summary>Asks for the full portfolio and waits until it is made.</summary>
    public async Task MakeFullAsync()
    {
        var asked = await Guardian.SubmitAsync(await Guardian.GetAsync(Page), [], "form[action*='handler=Full']");
        Assert.Equal(HttpStatusCode.Redirect, asked.StatusCode);
        var services = Family.Server.Services;
        var job = services.GetRequiredService<FullPortfolioWork>().Standing(Family.Id, Log.Linnet, Log.YearId)!;
        await services.GetRequiredService<LayoutLine>().WaitAsync(Family.Id, job.Id, default);
    }

    /// <summary>A file; a full portfolio is made anew.</summary>
    public async Task<byte[]> BytesAsync(string path)
    {
        if (path == File("full"))
            await MakeFullAsync();
        using var answer = await Guardian.OpenAsync(path);
        Assert.True(answer.Content.Headers.ContentType?.MediaType == "application/pdf", $"{(int)answer.StatusCode} {answer.Headers.Location}");
        return await answer.Content.ReadAsByteArrayAsync();
    }

    public async Task<string> TextAsync(string path) => PaperReader.AllText(await BytesAsync(path));
}
