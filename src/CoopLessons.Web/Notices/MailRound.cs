using CoopLessons.Data;
using CoopLessons.Data.Families;
using CoopLessons.Data.Notices;
using CoopLessons.Data.Tenancy;
using CoopLessons.Web.Security;
using Microsoft.EntityFrameworkCore;
using MimeKit;

namespace CoopLessons.Web.Notices;

/// <summary>
/// Writes down which mails are to go out, and sends those that are due. What is written down outlasts a start; two servers on
/// one database send each mail once.
/// </summary>
public sealed class MailRound(IServiceScopeFactory scopes, MailPost post, MailLetters letters, TimeProvider clock, ILogger<MailRound> log) : IDisposable
{
    /// <summary>A notice that is older goes out no more; it stands on its page.</summary>
    private static readonly TimeSpan Fresh = MailToSend.Patience;

    /// <summary>How long it is remembered that a mail went out.</summary>
    private static readonly TimeSpan Memory = TimeSpan.FromDays(60);

    private const int MostInARound = 200;

    private readonly SemaphoreSlim _turn = new(1, 1);

    private sealed record Told(Guid CoopId, Guid NoticeId, DateTime At);

    public async Task RunAsync(CancellationToken ct)
    {
        await _turn.WaitAsync(ct);
        try
        {
            await WriteDownAsync(ct);
            await SendAsync(ct);
        }
        finally
        {
            _turn.Release();
        }
    }

    public void Dispose() => _turn.Dispose();

    private async Task WriteDownAsync(CancellationToken ct)
    {
        var now = clock.GetUtcNow().UtcDateTime;
        var read = new Dictionary<Guid, IReadOnlyList<Told>>();
        foreach (var choice in await WhoAsync(now, ct))
        {
            try
            {
                foreach (var familyId in await FamiliesAsync(choice.PersonId, ct))
                {
                    if (!read.TryGetValue(familyId, out var told))
                        read[familyId] = told = await ToldAsync(familyId, now, ct);
                    foreach (var notice in told.Where(n => n.At >= choice.Since))
                        await WriteDownAsync(new MailToSend(Guid.CreateVersion7(), choice.PersonId, familyId, notice.CoopId, notice.NoticeId, now), ct);
                }
            }
            catch (Exception fault) when (fault is not OperationCanceledException and not OutOfMemoryException)
            {
                // One person's trouble is no other's.
                log.LogError(fault, "Mails of a person could not be written down");
            }
        }
    }

    /// <summary>Those whose address has proven to be theirs.</summary>
    private async Task<List<MailChoice>> WhoAsync(DateTime now, CancellationToken ct)
    {
        await using var scope = scopes.CreateAsyncScope();
        var db = scope.ServiceProvider.GetRequiredService<AppDb>();
        var forgotten = now - Memory;
        await db.MailToSend.Where(m => m.DoneAt < forgotten).ExecuteDeleteAsync(ct);
        return await db.MailChoices.AsNoTracking().Where(c => db.Users.Any(p => p.Id == c.PersonId && p.EmailConfirmed)).OrderBy(c => c.PersonId).ToListAsync(ct);
    }

    private async Task<IReadOnlyList<Guid>> FamiliesAsync(Guid personId, CancellationToken ct)
    {
        await using var scope = scopes.CreateAsyncScope();
        scope.ServiceProvider.GetRequiredService<CurrentFamily>().Know(personId);
        return await FamilyScope.Memberships(scope.ServiceProvider.GetRequiredService<AppDb>(), personId).Where(m => m.Role == Role.Guardian).Select(m => m.FamilyId).ToListAsync(ct);
    }

    private async Task<IReadOnlyList<Told>> ToldAsync(Guid familyId, DateTime now, CancellationToken ct)
    {
        await using var scope = scopes.CreateAsyncScope();
        var db = await ActAsync(scope, familyId, ct);
        var from = now - Fresh;
        return await db.CoopNotices.Where(n => n.At >= from && n.WithdrawnAt == null && db.CoopFamilies.Any(f => f.CoopId == n.CoopId && f.FamilyId == familyId && f.Since <= n.At))
            .OrderBy(n => n.At).Select(n => new Told(n.CoopId, n.Id, n.At)).ToListAsync(ct);
    }

    private async Task WriteDownAsync(MailToSend mail, CancellationToken ct)
    {
        await using var scope = scopes.CreateAsyncScope();
        var db = scope.ServiceProvider.GetRequiredService<AppDb>();
        if (await db.MailToSend.AnyAsync(m => m.PersonId == mail.PersonId && m.Key == mail.Key, ct))
            return;
        try
        {
            db.MailToSend.Add(mail);
            await db.SaveChangesAsync(ct);
        }
        catch (DbUpdateException fault)
        {
            // Another server wrote it down in the same moment, or the person is gone.
            log.LogDebug(fault, "A mail stands already");
        }
    }

    private async Task SendAsync(CancellationToken ct)
    {
        var now = clock.GetUtcNow();
        foreach (var id in await DueAsync(now.UtcDateTime, ct))
        {
            try
            {
                // A mail server that is away now is away for the next mail, too.
                if (await SendAsync(id, now, ct) == Delivery.Later)
                    return;
            }
            catch (Exception fault) when (fault is not OperationCanceledException and not OutOfMemoryException)
            {
                log.LogError(fault, "A mail could not be sent");
            }
        }
    }

    private async Task<List<Guid>> DueAsync(DateTime now, CancellationToken ct)
    {
        await using var scope = scopes.CreateAsyncScope();
        return await scope.ServiceProvider.GetRequiredService<AppDb>().MailToSend.Where(m => m.DoneAt == null && m.NextAt <= now && (m.HeldUntil == null || m.HeldUntil <= now))
            .OrderBy(m => m.MadeAt).ThenBy(m => m.Id).Select(m => m.Id).Take(MostInARound).ToListAsync(ct);
    }

    private async Task<Delivery> SendAsync(Guid id, DateTimeOffset at, CancellationToken ct)
    {
        await using var scope = scopes.CreateAsyncScope();
        var db = scope.ServiceProvider.GetRequiredService<AppDb>();
        var (now, until) = (at.UtcDateTime, at.UtcDateTime + MailToSend.Hold);
        // Whoever changes the row sends; the other finds it held.
        if (await db.MailToSend.Where(m => m.Id == id && m.DoneAt == null && m.NextAt <= now && (m.HeldUntil == null || m.HeldUntil <= now))
            .ExecuteUpdateAsync(s => s.SetProperty(m => m.HeldUntil, until), ct) == 0)
            return Delivery.Gone;
        var mail = await db.MailToSend.SingleAsync(m => m.Id == id, ct);
        var delivery = await LetterAsync(db, mail, at, ct) is { } letter ? await post.SendAsync(letter, ct) : Delivery.Gone;
        if (delivery == Delivery.Later)
            mail.Later(now);
        else
            mail.Done(now);
        // The mail server has it: that is written down even where the server is being stopped.
        await db.SaveChangesAsync(CancellationToken.None);
        return delivery;
    }

    /// <summary>Null where it is not to be sent any more.</summary>
    private async Task<MimeMessage?> LetterAsync(AppDb db, MailToSend mail, DateTimeOffset now, CancellationToken ct)
    {
        var person = await db.Users.AsNoTracking().SingleOrDefaultAsync(p => p.Id == mail.PersonId, ct);
        if (person?.Email is not { Length: > 0 } address || !await db.MailChoices.AnyAsync(c => c.PersonId == mail.PersonId, ct))
            return null;
        if (mail.IsProof)
            return person.EmailConfirmed ? null : letters.Proof(mail, address, now);
        if (!person.EmailConfirmed || !(await FamiliesAsync(mail.PersonId, ct)).Contains(mail.FamilyId!.Value))
            return null;
        await using var scope = scopes.CreateAsyncScope();
        var theirs = await ActAsync(scope, mail.FamilyId.Value, ct);
        // A family that was taken out meanwhile finds nothing here.
        if (await theirs.CoopNotices.AsNoTracking().SingleOrDefaultAsync(n => n.CoopId == mail.CoopId && n.Id == mail.NoticeId && n.WithdrawnAt == null, ct) is not { } notice)
            return null;
        var (coop, family) = (await theirs.Coops.AsNoTracking().SingleAsync(c => c.Id == notice.CoopId, ct), await theirs.Families.AsNoTracking().SingleAsync(ct));
        var meeting = notice.MeetingId is { } id ? await theirs.CoopMeetings.AsNoTracking().SingleOrDefaultAsync(m => m.CoopId == notice.CoopId && m.Id == id, ct) : null;
        return letters.Notice(mail, address, family, coop, notice, meeting, now);
    }

    private static async Task<AppDb> ActAsync(AsyncServiceScope scope, Guid familyId, CancellationToken ct)
    {
        var current = scope.ServiceProvider.GetRequiredService<CurrentFamily>();
        current.ActForProgram(familyId);
        var db = scope.ServiceProvider.GetRequiredService<AppDb>();
        current.BelongTo(await FamilyScope.CoopsOf(db, familyId).ToListAsync(ct));
        return db;
    }
}
