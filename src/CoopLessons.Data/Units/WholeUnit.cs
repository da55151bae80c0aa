using Microsoft.EntityFrameworkCore;

namespace CoopLessons.Data.Units;

/// <summary>A unit read with everything that is in it.</summary>
public static class WholeUnit
{
    /// <summary>The family's unit with its subjects and activities, or null.</summary>
    public static Task<Unit?> WholeUnitAsync(this AppDb db, Guid id, CancellationToken ct) =>
        db.Units.Include(u => u.Subjects).Include(u => u.Activities).AsSplitQuery().SingleOrDefaultAsync(u => u.Id == id, ct);
}
