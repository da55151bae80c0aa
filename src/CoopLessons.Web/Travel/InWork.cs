using CoopLessons.Core.Schedule;
using CoopLessons.Data;
using CoopLessons.Data.Files;
using CoopLessons.Data.People;
using CoopLessons.Data.Travel;
using CoopLessons.Web.Files;
using CoopLessons.Web.Planning;
using Microsoft.AspNetCore.Identity;

namespace CoopLessons.Web.Travel;

/// <summary>How the taking in of a family ended.</summary>
/// <param name="Family">Null where it was refused.</param>
/// <param name="Fault">Why it was, in one sentence; null where it was not.</param>
public sealed record FamilyTaken(BroughtFamily? Family, string? Fault);

/// <summary>Takes in a family's file in the line of long works; the work belongs to whoever brought it.</summary>
public sealed class InWork(LayoutLine line, IServiceScopeFactory scopes, FileShelf shelf, FileRoom room, TravelLook look, TimeProvider clock, ILogger<InWork> log)
{
    public const string Key = "everything in";

    /// <summary>The newest of this person; null where none is known.</summary>
    public JobStanding? Standing(Guid personId) => line.Newest(personId, Key);

    public void CallOff(Guid personId)
    {
        if (Standing(personId) is { IsOver: false } job)
            line.Cancel(personId, job.Id);
    }

    /// <summary>Keeps a copy of the file, which lasts as long as the work, and puts the work in line. False where the line is full.</summary>
    public async Task<bool> AskAsync(Guid personId, Stream file, CancellationToken ct)
    {
        var copy = new Copy(shelf.Scratch());
        try
        {
            await file.CopyToAsync(copy.File, ct);
        }
        catch
        {
            copy.Close();
            throw;
        }

        var job = line.Ask(personId, Key, async (progress, ended) =>
        {
            if (!copy.Claim())
                return new FamilyTaken(null, "This was called off.");
            await using (copy.File)
                return await TakeAsync(personId, copy.File, p => progress.Report(new LayoutProgress(p.Step, p.Share)), ended);
        });
        // Work that is called off before its turn closes nothing.
        _ = (job is { } id ? line.WaitAsync(personId, id, CancellationToken.None) : Task.CompletedTask).ContinueWith(_ => copy.Close(), TaskScheduler.Default);
        return job is not null;
    }

    private async Task<FamilyTaken> TakeAsync(Guid personId, Stream file, Action<TravelProgress> tell, CancellationToken ct)
    {
        await using var scope = scopes.CreateAsyncScope();
        if (await scope.ServiceProvider.GetRequiredService<UserManager<Person>>().FindByIdAsync(personId.ToString()) is not { } person)
            return new FamilyTaken(null, "Whoever brought this file is not here any more.");
        try
        {
            return new FamilyTaken(await new FamilyIn(scope.ServiceProvider.GetRequiredService<AppDb>(), shelf, LookAsync).TakeAsync(file, person, clock.GetUtcNow().UtcDateTime, tell, ct), null);
        }
        catch (FamilyUnfitException unfit)
        {
            log.LogInformation(unfit.InnerException, "A family was not taken in");
            return new FamilyTaken(null, unfit.Message);
        }

        async Task<string?> LookAsync(StoredKind kind, Stream one, CancellationToken stop)
        {
            using var turn = await room.EnterPatientlyAsync(personId, stop);
            return await look.OfAsync(kind, one, stop);
        }
    }

    /// <summary>The file while the work waits: either the work takes it and closes it, or it is closed because there is none any more.</summary>
    private sealed class Copy(FileStream file)
    {
        private int _claimed;

        public FileStream File => file;

        public bool Claim() => Interlocked.Exchange(ref _claimed, 1) == 0;

        public void Close()
        {
            if (Claim())
                file.Dispose();
        }
    }
}
