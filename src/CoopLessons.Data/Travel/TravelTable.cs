using System.Reflection;
using CoopLessons.Data.Families;
using CoopLessons.Data.Tenancy;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata;

namespace CoopLessons.Data.Travel;

/// <summary>
/// One table of a family's file, as the model has it: a table that is new in the model is in the file by being there.
/// </summary>
/// <param name="Name">Of the table, and of its file.</param>
/// <param name="Columns">What of a row leaves, in the order of their names.</param>
public sealed record TravelTable(string Name, IEntityType Type, IReadOnlyList<IProperty> Columns)
{
    /// <summary>The columns by which its rows are told apart and ordered.</summary>
    public IReadOnlyList<IProperty> Key => Type.FindPrimaryKey()!.Properties;

    /// <summary>The column that says whose the row is.</summary>
    public IProperty Owner => Key[0];

    /// <summary>Every table of a family that leaves with it, each after those that its rows name.</summary>
    public static IReadOnlyList<TravelTable> Of(IModel model) =>
        [.. InOrder(Owned(model).Where(t => !StaysHere(t.ClrType))).Select(t => new TravelTable(t.GetTableName()!, t, [.. t.GetProperties().Where(Leaves).OrderBy(p => p.Name, StringComparer.Ordinal)]))];

    /// <summary>Tables, each after those of them that its rows name; else by name.</summary>
    /// <exception cref="InvalidOperationException">Rows of some name each other in a circle.</exception>
    internal static IEnumerable<IEntityType> InOrder(IEnumerable<IEntityType> tables)
    {
        var left = tables.OrderBy(t => t.GetTableName(), StringComparer.Ordinal).ToList();
        var ordered = new List<IEntityType>();
        while (left.Count > 0)
        {
            var next = left.Find(t => t.GetForeignKeys().All(k => k.PrincipalEntityType == t || !left.Contains(k.PrincipalEntityType)))
                ?? throw new InvalidOperationException($"The rows of {left[0].DisplayName()} name each other in a circle.");
            left.Remove(next);
            ordered.Add(next);
        }

        return ordered;
    }

    /// <summary>What stays, and why: a table, or a column of one as <c>Table.Column</c>.</summary>
    public static IReadOnlyList<(string What, string Why)> Staying(IModel model) =>
    [
        .. Owned(model).SelectMany(t => t.ClrType.GetCustomAttribute<StaysHereAttribute>() is { } whole
            ? [(t.GetTableName()!, whole.Why)]
            : t.GetProperties().Where(p => !Leaves(p)).Select(p => ($"{t.GetTableName()}.{p.Name}", p.PropertyInfo!.GetCustomAttribute<StaysHereAttribute>()!.Why)))
            .OrderBy(s => s.Item1, StringComparer.Ordinal),
    ];

    /// <summary>Whether a value is empty where the family is taken in.</summary>
    public static bool NamesCoop(IProperty column) => column.PropertyInfo?.GetCustomAttribute<NamesCoopAttribute>() is not null;

    /// <summary>Whether a value is the id of somebody who can sign in.</summary>
    public static bool NamesPerson(IProperty column) => column.GetContainingForeignKeys().Any(k => k.PrincipalEntityType.ClrType == typeof(People.Person));

    public override string ToString() => Name;

    private static IEnumerable<IEntityType> Owned(IModel model) => model.GetEntityTypes().Where(t => t.ClrType.IsAssignableTo(typeof(IFamilyOwned)));

    private static bool StaysHere(Type type) => type.GetCustomAttribute<StaysHereAttribute>() is not null;

    private static bool Leaves(IProperty property) => property.PropertyInfo?.GetCustomAttribute<StaysHereAttribute>() is null;
}
