using CoopLessons.Data;
using CoopLessons.Data.Notices;
using CoopLessons.Data.Tenancy;
using CoopLessons.Web.Security;
using Microsoft.EntityFrameworkCore;

namespace CoopLessons.Web.Notices;

/// <summary>Looks once over everybody who wants notices, and sends what is due. Two servers on one database send each notice once.</summary>
public sealed class NoticeRound(IServiceScopeFactory scopes, NoticePost post, TimeProvider clock, ILogger<NoticeRound> log) : IDisposable
{
    /// <summary>How long it is remembered that a notice went out.</summary>
    private static readonly TimeSpan Memory = TimeSpan.FromDays(60);

    /// <summary>On which day a family's dates were read last: they are the same until midnight.</summary>
    private readonly Dictionary<Guid, (DateOnly Day, IReadOnlyList<Notice> Notices)> _dates = [];

    private enum Kind { Waits, LawDates, CoopNews }

    private readonly SemaphoreSlim _turn = new(1, 1);

    public async Task RunAsync(CancellationToken ct)
    {
        await _turn.WaitAsync(ct);
        try
        {
            await GoAsync(ct);
        }
        finally
        {
            _turn.Release();
        }
    }

    public void Dispose() => _turn.Dispose();

    private async Task GoAsync(CancellationToken ct)
    {
        var now = clock.GetUtcNow();
        var read = new Dictionary<(Guid Family, Kind Kind), IReadOnlyList<Notice>>();
        foreach (var (choice, devices) in await WhoAsync(now, ct))
        {
            foreach (var (familyId, role) in await FamiliesAsync(choice.PersonId, ct))
            {
                try
                {
                    var due = new List<Notice>();
                    if (choice.Waits)
                        due.AddRange(await DueAsync(read, familyId, Kind.Waits, now, ct));
                    // Papers and the co-op are a guardian's affair.
                    if (choice.LawDates && role == Role.Guardian)
                        due.AddRange(await DueAsync(read, familyId, Kind.LawDates, now, ct));
                    if (choice.CoopNews && role == Role.Guardian)
                        due.AddRange(await DueAsync(read, familyId, Kind.CoopNews, now, ct));
                    foreach (var notice in due)
                        await SendAsync(notice, devices, now, ct);
                }
                catch (Exception fault) when (fault is not OperationCanceledException and not OutOfMemoryException)
                {
                    // One family's trouble is no other's.
                    log.LogError(fault, "Notices of a family could not be sent");
                }
            }
        }
    }

    private async Task<IReadOnlyList<(NoticeChoice Choice, IReadOnlyList<NoticeDevice> Devices)>> WhoAsync(DateTimeOffset now, CancellationToken ct)
    {
        await using var scope = scopes.CreateAsyncScope();
        var db = scope.ServiceProvider.GetRequiredService<AppDb>();
        var forgotten = (now - Memory).UtcDateTime;
        await db.SentNotices.Where(s => s.At < forgotten).ExecuteDeleteAsync(ct);
        var choices = await db.NoticeChoices.AsNoTracking().Where(c => c.Waits || c.LawDates || c.CoopNews).OrderBy(c => c.PersonId).ToListAsync(ct);
        var devices = (await db.NoticeDevices.AsNoTracking().OrderBy(d => d.Since).ToListAsync(ct)).ToLookup(d => d.PersonId);
        return [.. choices.Where(c => devices[c.PersonId].Any()).Select(c => (c, (IReadOnlyList<NoticeDevice>)[.. devices[c.PersonId]]))];
    }

    private async Task<IReadOnlyList<(Guid Family, Role Role)>> FamiliesAsync(Guid personId, CancellationToken ct)
    {
        await using var scope = scopes.CreateAsyncScope();
        scope.ServiceProvider.GetRequiredService<CurrentFamily>().Know(personId);
        return [.. (await FamilyScope.Memberships(scope.ServiceProvider.GetRequiredService<AppDb>(), personId).ToListAsync(ct)).Select(m => (m.FamilyId, m.Role))];
    }

    private async Task<IReadOnlyList<Notice>> DueAsync(Dictionary<(Guid, Kind), IReadOnlyList<Notice>> read, Guid familyId, Kind kind, DateTimeOffset now, CancellationToken ct)
    {
        if (read.TryGetValue((familyId, kind), out var known))
            return known;
        await using var scope = scopes.CreateAsyncScope();
        var current = scope.ServiceProvider.GetRequiredService<CurrentFamily>();
        current.ActForProgram(familyId);
        var db = scope.ServiceProvider.GetRequiredService<AppDb>();
        var family = await db.Families.AsNoTracking().SingleAsync(ct);
        if (kind == Kind.CoopNews)
            current.BelongTo(await FamilyScope.CoopsOf(db, familyId).ToListAsync(ct));
        return read[(familyId, kind)] = kind switch
        {
            Kind.Waits => await DueNotices.WaitsAsync(db, family, now, ct),
            Kind.LawDates => await DatesAsync(db, family, now, ct),
            _ => await DueNotices.CoopNewsAsync(db, family, now, ct),
        };
    }

    // The law of a whole year is long to read, and is not read every minute.
    private async Task<IReadOnlyList<Notice>> DatesAsync(AppDb db, Data.Families.Family family, DateTimeOffset now, CancellationToken ct)
    {
        var local = family.Local(now).DateTime;
        if (local.Hour is < DueNotices.FirstHour or >= DueNotices.LastHour)
            return [];
        var day = DateOnly.FromDateTime(local);
        // Each hour anew, since a paper may have been handed in meanwhile.
        if (_dates.TryGetValue(family.Id, out var known) && known.Day == day && local.Minute != 0)
            return known.Notices;
        _dates[family.Id] = (day, await DueNotices.LawDatesAsync(db, family, now, ct));
        return _dates[family.Id].Notices;
    }

    private async Task SendAsync(Notice notice, IReadOnlyList<NoticeDevice> devices, DateTimeOffset now, CancellationToken ct)
    {
        foreach (var device in devices)
        {
            await using var scope = scopes.CreateAsyncScope();
            var db = scope.ServiceProvider.GetRequiredService<AppDb>();
            if (!await ClaimAsync(db, device, notice, now, ct))
                continue;
            var delivery = await post.SendAsync(device, notice, ct);
            if (delivery == Delivery.Gone)
                await db.NoticeDevices.Where(d => d.Id == device.Id).ExecuteDeleteAsync(ct);
            else if (delivery == Delivery.Later)
                await db.SentNotices.Where(s => s.DeviceId == device.Id && s.Key == notice.Key).ExecuteDeleteAsync(ct);
        }
    }

    /// <summary>Whoever writes the row sends; the other finds it there.</summary>
    private static async Task<bool> ClaimAsync(AppDb db, NoticeDevice device, Notice notice, DateTimeOffset now, CancellationToken ct)
    {
        if (await db.SentNotices.AnyAsync(s => s.DeviceId == device.Id && s.Key == notice.Key, ct))
            return false;
        try
        {
            db.SentNotices.Add(new SentNotice(device, notice.Key, now.UtcDateTime));
            await db.SaveChangesAsync(ct);
            return true;
        }
        catch (DbUpdateException)
        {
            return false;
        }
    }
}
