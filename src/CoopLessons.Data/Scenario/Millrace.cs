using CoopLessons.Core.Calendar;
using CoopLessons.Data.Files;
using CoopLessons.Data.Log;
using CoopLessons.Data.People;
using CoopLessons.Data.Schedule;
using CoopLessons.Data.Tenancy;
using Microsoft.AspNetCore.Identity;
using Microsoft.EntityFrameworkCore;
using Microsoft.Extensions.DependencyInjection;

namespace CoopLessons.Data.Scenario;

/// <summary>The invented Millrace co-op, put into a database: four families with their children, units, plans and logs.</summary>
public static class Millrace
{
    /// <summary>
    /// Loads the co-op, one family at a time, each whole or not at all. The same seed and the same day give the same log,
    /// ids of entries included.
    /// </summary>
    /// <param name="services">Gives a scope with <see cref="AppDb"/>, <see cref="CurrentFamily"/>, the manager of people and the <see cref="FileShelf"/>.</param>
    /// <param name="today">The day in the co-op's time zone; the log ends on the day before.</param>
    /// <param name="password">Of every adult.</param>
    /// <param name="progress">Told a sentence before each step that takes a while.</param>
    /// <exception cref="InvalidOperationException">A person could not be made: the co-op is there already, or the password is refused.</exception>
    public static async Task<MillraceLoaded> LoadAsync(
        IServiceProvider services, DateOnly today, string password, IProgress<string>? progress, CancellationToken ct)
    {
        var coop = Coop.Read();
        var loaded = new List<LoadedFamily>();
        for (var i = 0; i < coop.Families.Count; i++)
        {
            progress?.Report($"Writing the family {coop.Families[i].Name}, {i + 1} of {coop.Families.Count}.");
            await using var scope = services.CreateAsyncScope();
            loaded.Add(await LoadAsync(scope.ServiceProvider, coop, i, today, password, ct));
        }

        await SharedByAll.FoundAsync(services, coop.Name, coop.Meeting, TimeZoneInfo.FindSystemTimeZoneById(coop.TimeZone), loaded, today, ct);
        await new RotaOfCoop(services, loaded, today).AddAsync(ct);
        return new MillraceLoaded(loaded);
    }

    private static async Task<LoadedFamily> LoadAsync(
        IServiceProvider scope, Coop coop, int number, DateOnly today, string password, CancellationToken ct)
    {
        var db = scope.GetRequiredService<AppDb>();
        await using var transaction = await db.Database.BeginTransactionAsync(ct);
        var founding = new Founding(db, scope.GetRequiredService<UserManager<Person>>(), coop, number);
        var (family, house, adults) = await founding.FoundAsync(today, password, ct);
        Dictionary<Guid, PlannedSession> sessions;
        IReadOnlyList<Draft> drafts;
        try
        {
            if (CoopPlanning.Read().Families.TryGetValue(house.Family.Name, out var plan))
                new PlanningOfFamily(db, house, plan).Add();
            if (CoopBooks.Read().Families.TryGetValue(house.Family.Name, out var books))
                new BooksOfFamily(db, house, books, today).Add();
            if (CoopShelf.Read().Families.TryGetValue(house.Family.Name, out var pantry))
                new ShelfOfFamily(db, house, family, pantry, today).Add();
            if (CoopCredits.Read().Families.TryGetValue(house.Family.Name, out var credits))
                new CreditsOfFamily(db, house, credits, today).Add();
            if (CoopPrints.Read().Families.TryGetValue(house.Family.Name, out var prints))
                await new PrintsOfFamily(db, scope.GetRequiredService<FileShelf>(), house, prints).AddAsync(ct);
            await db.SaveChangesAsync(ct);
            db.ChangeTracker.Clear();
            db.ChangeTracker.AutoDetectChangesEnabled = false;
            sessions = PlannedNear(house, today);
            drafts = new HouseholdLog(house, today).Write();
            if (CoopForgotten.Read().Families.TryGetValue(house.Family.Name, out var forgotten))
                drafts = forgotten.Without(drafts, house, today);
            await WriteAsync(db, drafts, sessions, ct);
            await WriteAsync(db, house, today, ct);
            if (CoopPieces.Read().Families.TryGetValue(house.Family.Name, out var pieces))
                await new PiecesOfFamily(db, scope.GetRequiredService<FileShelf>(), house, pieces, drafts, today).AddAsync(ct);
            await BegunAhead.AddAsync(db, today, ct);
            if (CoopLists.Read().Families.TryGetValue(house.Family.Name, out var lists))
                await new ListsOfFamily(db, house, lists, today).AddAsync(ct);
            await db.SaveChangesAsync(ct);
            db.ChangeTracker.Clear();
            if (CoopPortfolios.Read().Families.TryGetValue(house.Family.Name, out var portfolios))
                await new PortfoliosOfFamily(db, house, portfolios, today).AddAsync(ct);
            await db.SaveChangesAsync(ct);
            db.ChangeTracker.Clear();
            if (CoopSeals.Read().Families.TryGetValue(house.Family.Name, out var seal))
                await new SealOfFamily(db, house, seal, today).AddAsync(ct);
            await transaction.CommitAsync(ct);
        }
        catch
        {
            // The rows go with the transaction. The family's folder holds what was written here alone, since a family that is
            // there already cannot be founded again.
            await scope.GetRequiredService<FileShelf>().ForgetAsync(family, CancellationToken.None);
            throw;
        }

        return new LoadedFamily(
            family, house.Family.Name, house.Family.State, adults,
            [.. house.Children.Select(c => new LoadedLearner(c.Id, c.Child.Name, c.Child.Born, c.IsOfSchoolAge))],
            drafts.Count, sessions.Count);
    }

    /// <summary>
    /// The sessions of the unit that runs now, from its first week to the next one; those of past days stand as the log will
    /// have them.
    /// </summary>
    private static Dictionary<Guid, PlannedSession> PlannedNear(Household house, DateOnly today)
    {
        var sessions = new Dictionary<Guid, PlannedSession>();
        var week = Week.Of(today);
        var first = house.Runs.Where(r => r.RunsOn(week.Monday)).Select(r => Week.Of(r.Monday)).DefaultIfEmpty(week).MinBy(w => w.Monday);
        var weeks = new List<Week>();
        for (var next = first; next.Monday <= week.Next.Monday; next = next.Next)
            weeks.Add(next);
        foreach (var placed in weeks.SelectMany(w => HouseholdLog.PlacedIn(house, w)))
        {
            var session = new PlannedSession(
                placed.SessionId, placed.Activity.Id, placed.Date, placed.StartsAt, placed.Order, placed.Pupils.Select(p => p.Id));
            if (placed.Date < today && placed.FellThrough)
                session.NotToday();
            sessions[placed.SessionId] = session;
        }

        return sessions;
    }

    private static async Task WriteAsync(AppDb db, IReadOnlyList<Draft> drafts, Dictionary<Guid, PlannedSession> sessions, CancellationToken ct)
    {
        foreach (var month in drafts.GroupBy(d => Month.Of(d.Facts.Date)))
        {
            db.LogEntries.AddRange(month.Select(d => d.ToEntry(d.Placed is { } placed ? sessions.GetValueOrDefault(placed.SessionId) : null)));
            await db.SaveChangesAsync(ct);
            db.ChangeTracker.Clear();
        }

        db.PlannedSessions.AddRange(sessions.Values);
        await db.SaveChangesAsync(ct);
        db.ChangeTracker.Clear();
    }

    private static async Task WriteAsync(AppDb db, Household house, DateOnly today, CancellationToken ct)
    {
        foreach (var mark in house.Family.Marks.Where(m => m.Date < today))
        {
            var pupil = house.Children.Single(c => c.Child.Name == mark.Child);
            db.DayMarks.Add(new Hours.DayMark(pupil.Id, mark.Date, mark.Counts, house.Adults[0].Name, house.Utc(mark.Date, 21 * 60)));
        }

        await db.SaveChangesAsync(ct);
        db.ChangeTracker.Clear();
    }
}
