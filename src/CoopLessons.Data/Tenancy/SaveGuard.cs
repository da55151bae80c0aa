using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.ChangeTracking;
using Microsoft.EntityFrameworkCore.Diagnostics;

namespace CoopLessons.Data.Tenancy;

/// <summary>A row carries a version that each change raises; saving over a newer version is refused.</summary>
public interface IVersioned
{
    int Version { get; }
}

/// <summary>A row that is written once and never changed or removed while its family exists.</summary>
public interface IAppendOnly;

/// <summary>
/// The last look before rows are saved: each family-owned row belongs to the family at hand, each row of a co-op to one of its co-ops, written rows of the log
/// stay as they are, and versions are raised.
/// </summary>
public sealed class SaveGuard : SaveChangesInterceptor
{
    public override InterceptionResult<int> SavingChanges(DbContextEventData eventData, InterceptionResult<int> result)
    {
        Look(eventData.Context!);
        return result;
    }

    public override ValueTask<InterceptionResult<int>> SavingChangesAsync(
        DbContextEventData eventData, InterceptionResult<int> result, CancellationToken cancellationToken = default)
    {
        Look(eventData.Context!);
        return ValueTask.FromResult(result);
    }

    private static void Look(DbContext context)
    {
        var family = ((AppDb)context).Current.FamilyId;
        foreach (var entry in context.ChangeTracker.Entries())
        {
            if (entry.State is EntityState.Unchanged or EntityState.Detached)
                continue;
            if (entry.Entity is IFamilyOwned owned)
                Check(entry, owned, family);
            if (entry.Entity is ICoopOwned shared)
                Check(entry, shared, ((AppDb)context).Current);
            if (entry.Entity is IAppendOnly && entry.State is (EntityState.Modified or EntityState.Deleted))
                throw new InvalidOperationException($"A written {entry.Metadata.ClrType.Name} is never changed or removed.");
            if (entry.Entity is IVersioned versioned && entry.State == EntityState.Modified)
                entry.Property(nameof(IVersioned.Version)).CurrentValue = versioned.Version + 1;
        }
    }

    private static void Check(EntityEntry entry, IFamilyOwned owned, Guid? family)
    {
        if (family is null)
            throw new ForeignFamilyException($"A {entry.Metadata.ClrType.Name} was saved with no family at hand.");
        if (owned.FamilyId == Guid.Empty && entry.State == EntityState.Added)
            entry.Property(nameof(IFamilyOwned.FamilyId)).CurrentValue = family;
        else if (owned.FamilyId != family)
            throw new ForeignFamilyException($"A {entry.Metadata.ClrType.Name} of another family was to be saved.");
    }

    private static void Check(EntityEntry entry, ICoopOwned shared, CurrentFamily current)
    {
        if (!current.Coops.Contains(shared.CoopId))
            throw new ForeignFamilyException($"A {entry.Metadata.ClrType.Name} of a co-op was to be saved to which the family does not belong.");
        // What a family that left had shown is taken away by whoever takes it out.
        if (shared is IShownByFamily shown && shown.FamilyId != current.FamilyId && entry.State != EntityState.Deleted)
            throw new ForeignFamilyException($"A {entry.Metadata.ClrType.Name} that another family shows was to be saved.");
    }
}

/// <summary>A row of another family was about to be written. Always a fault of the program, never of the person.</summary>
public sealed class ForeignFamilyException(string message) : InvalidOperationException(message);
