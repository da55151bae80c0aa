using System.Linq.Expressions;
using System.Reflection;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata;

namespace CoopLessons.Data.Travel;

/// <summary>Reads the rows of a table of the family at hand as they come, in the order of their keys, the same from both databases.</summary>
internal static class TravelRows
{
    private static readonly MethodInfo s_generic = typeof(TravelRows).GetMethod(nameof(Rows), BindingFlags.Static | BindingFlags.NonPublic)!;

    public static IAsyncEnumerable<object> Of(AppDb db, TravelTable table) =>
        (IAsyncEnumerable<object>)s_generic.MakeGenericMethod(table.Type.ClrType).Invoke(null, [db, table])!;

    private static IAsyncEnumerable<object> Rows<T>(AppDb db, TravelTable table)
        where T : class
    {
        IQueryable<T> rows = db.Set<T>().IgnoreAutoIncludes().AsNoTracking();
        // Servers order text by their language; hashes and codes are ordered by their bytes.
        var bytes = db.Database.IsNpgsql() ? "C" : "BINARY";
        for (var i = 0; i < table.Key.Count; i++)
        {
            var row = Expression.Parameter(typeof(T));
            Expression value = Expression.Call(typeof(EF), nameof(EF.Property), [table.Key[i].ClrType], row, Expression.Constant(table.Key[i].Name));
            if (table.Key[i].ClrType == typeof(string))
                value = Expression.Call(typeof(RelationalDbFunctionsExtensions), nameof(RelationalDbFunctionsExtensions.Collate), [typeof(string)], Expression.Constant(EF.Functions), value, Expression.Constant(bytes));
            var order = Expression.Call(
                typeof(Queryable), i == 0 ? nameof(Queryable.OrderBy) : nameof(Queryable.ThenBy), [typeof(T), table.Key[i].ClrType], rows.Expression, Expression.Quote(Expression.Lambda(value, row)));
            rows = rows.Provider.CreateQuery<T>(order);
        }

        return rows.AsAsyncEnumerable();
    }

    public static object? Value(IProperty column, object row) => column.GetGetter().GetClrValue(row);
}
