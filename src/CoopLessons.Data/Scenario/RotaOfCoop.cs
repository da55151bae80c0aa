using CoopLessons.Core.Coop;
using CoopLessons.Core.Schedule;
using CoopLessons.Data.Coops.Days;
using CoopLessons.Data.Coops.Money;
using CoopLessons.Data.Coops.Turns;
using CoopLessons.Data.Tenancy;
using Microsoft.EntityFrameworkCore;
using Microsoft.Extensions.DependencyInjection;
using MeetingDay = CoopLessons.Data.Coops.Days.CoopMeeting;
using NamedAdult = CoopLessons.Data.Coops.Days.CoopAdult;

namespace CoopLessons.Data.Scenario;

/// <summary>Writes the turns and the money of the invented co-op, upon whatever meetings, rooms and adults it has already.</summary>
internal sealed class RotaOfCoop(IServiceProvider services, IReadOnlyList<LoadedFamily> families, DateOnly today)
{
    private readonly CoopRota _told = CoopRota.Read();
    private readonly DateTime _now = DateTime.SpecifyKind(today.ToDateTime(new TimeOnly(12, 0)), DateTimeKind.Utc);

    public async Task AddAsync(CancellationToken ct)
    {
        var coop = await AsAsync(0, null, db => db.CoopFamilies.IgnoreQueryFilters([AppDb.CoopFilter]).Where(f => f.FamilyId == families[0].FamilyId).Select(f => f.CoopId).SingleAsync(ct));
        await AsAsync(0, coop, db => AddDaysAsync(db, coop, ct));
        for (var i = 0; i < families.Count; i++)
        {
            var family = families[i];
            await AsAsync(i, coop, db => AddAdultsAsync(db, coop, family, ct));
        }

        await AsAsync(0, coop, db => AddRotaAsync(db, coop, ct));
        await AsAsync(0, coop, db => AddMoneyAsync(db, coop, ct));
    }

    private async Task<T> AsAsync<T>(int family, Guid? coop, Func<AppDb, Task<T>> work)
    {
        await using var scope = services.CreateAsyncScope();
        var db = scope.ServiceProvider.GetRequiredService<AppDb>();
        db.Current.ActForProgram(families[family].FamilyId);
        if (coop is { } id)
            db.Current.Enter(id);
        return await work(db);
    }

    private async Task<int> AddDaysAsync(AppDb db, Guid coop, CancellationToken ct)
    {
        var coming = await db.CoopMeetings.CountAsync(m => m.CoopId == coop && m.On >= today, ct);
        if (coming == 0)
        {
            var first = today.AddDays(((int)_told.Day - (int)today.DayOfWeek + 7) % 7);
            for (var i = 0; i < _told.Meetings; i++)
                db.CoopMeetings.Add(new MeetingDay(coop, Guid.CreateVersion7(), first.AddDays(7 * i), _told.Where));
        }

        var room = await db.CoopRooms.Where(r => r.CoopId == coop).OrderBy(r => r.Name).FirstOrDefaultAsync(ct);
        if (room is null)
            db.CoopRooms.Add(room = new CoopRoom(coop, Guid.CreateVersion7(), _told.Room, null));
        for (var i = 0; i < _told.Roles.Count; i++)
        {
            var role = _told.Roles[i];
            db.TurnRoles.Add(new TurnRole(coop, Guid.CreateVersion7(), i, new TurnRoleFacts(role.Name, role.Weight, role.Places, role.InRoom ? room.Id : null, ForAll: true, [])));
        }

        return await db.SaveChangesAsync(ct);
    }

    private async Task<int> AddAdultsAsync(AppDb db, Guid coop, LoadedFamily family, CancellationToken ct)
    {
        var adults = await db.CoopAdults.Where(a => a.CoopId == coop && a.FamilyId == family.FamilyId).ToListAsync(ct);
        if (adults.Count == 0)
        {
            adults = [.. family.Adults.Select(a => new NamedAdult(coop, family.FamilyId, Guid.CreateVersion7(), a.Name))];
            db.CoopAdults.AddRange(adults);
        }

        var roles = await db.TurnRoles.Where(r => r.CoopId == coop).ToListAsync(ct);
        var meetings = await db.CoopMeetings.Where(m => m.CoopId == coop && m.On >= today && m.CalledOffAt == null).OrderBy(m => m.On).ToListAsync(ct);
        foreach (var adult in adults)
        {
            db.TurnWishes.AddRange(_told.Wishes.Where(w => w.Adult == adult.Name).Select(w => new TurnWish(adult, roles.Single(r => r.Name == w.Role).Id, w.Liked)));
            db.AdultsAway.AddRange(_told.Away.Where(a => a.Adult == adult.Name && a.Meeting <= meetings.Count).Select(a => new AdultAway(adult, meetings[a.Meeting - 1].Id, family.Name)));
        }

        return await db.SaveChangesAsync(ct);
    }

    private async Task<int> AddRotaAsync(AppDb db, Guid coop, CancellationToken ct)
    {
        var last = await db.CoopMeetings.Where(m => m.CoopId == coop).MaxAsync(m => m.On, ct);
        var atHand = await RotaAtHand.LoadAsync(db, coop, today, last, withKept: false, ct);
        var rota = RotaPlanning.Solve(atHand.Problem, Effort.Usual, ct);
        await RotaTaking.TakeAsync(db, coop, Guid.CreateVersion7(), atHand, rota, today, last, families[0].Name, _now, ct);
        return await db.SaveChangesAsync(ct);
    }

    private async Task<int> AddMoneyAsync(AppDb db, Guid coop, CancellationToken ct)
    {
        var last = await db.CoopMeetings.Where(m => m.CoopId == coop).MaxAsync(m => m.On, ct);
        var fee = new TermFee(_told.Fee.FamilyCents, 0);
        db.CoopFees.Add(new CoopFee(coop, Guid.CreateVersion7(), _told.Fee.Name, today, last, fee, today.AddDays(14), Of(_told.Fee.Keeper),
            [.. families.Select(f => new FamilyFee(f.FamilyId, f.Name, f.Learners.Count, fee.For(f.Learners.Count)))]));
        foreach (var bought in _told.Bought)
        {
            List<CostBearer> bearers = [.. families.Select(f => new CostBearer(f.FamilyId, bought.By == SharedBy.Learner ? f.Learners.Count : 1))];
            List<KeptShare> shares = [.. SharedCost.Divide(bought.Cents, bought.By, bearers).Zip(bearers, (s, b) => new KeptShare(s.Family, families.Single(f => f.FamilyId == s.Family).Name, b.Learners, s.Cents))];
            db.CoopExpenses.Add(new CoopExpense(coop, Guid.CreateVersion7(), bought.What, bought.Cents, today.AddDays(-bought.DaysAgo), Of(bought.PaidBy), bought.By, shares, Of(bought.PaidBy), _now));
        }

        var payment = new CoopPayment(coop, Guid.CreateVersion7(), Of(_told.Paid.From), Of(_told.Paid.To), _told.Paid.Cents, today.AddDays(-_told.Paid.DaysAgo));
        payment.Came(_told.Paid.To, _now);
        db.CoopPayments.Add(payment);
        return await db.SaveChangesAsync(ct);
    }

    private MoneyFamily Of(string name) => families.Where(f => f.Name == name).Select(f => new MoneyFamily(f.FamilyId, f.Name)).Single();
}
