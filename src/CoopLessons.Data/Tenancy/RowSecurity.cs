using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata;

namespace CoopLessons.Data.Tenancy;

/// <summary>
/// The second wall on PostgreSQL: policies by which the database itself shows a connection only the rows of the family
/// it was told. They are made anew after each migration from the same model as the first wall, so that a new table
/// cannot be forgotten.
/// </summary>
public static class RowSecurity
{
    private const string Family = "NULLIF(current_setting('app.family', true), '')::uuid";
    private const string Person = "NULLIF(current_setting('app.person', true), '')::uuid";
    private const string InCoops = "string_to_array(NULLIF(current_setting('app.coops', true), ''), ',')::uuid[]";
    private const string Link = "NULLIF(current_setting('app.link', true), '')";

    /// <summary>Statements that put every family-owned table behind its policy, and grant the serving role its work.</summary>
    /// <param name="servingRole">The role that serves; null where owner and serving role are one.</param>
    public static IEnumerable<string> Statements(IModel model, string? servingRole)
    {
        foreach (var type in model.GetEntityTypes().Where(t => t.ClrType.IsAssignableTo(typeof(IFamilyOwned))))
        {
            var table = Quoted(type.GetTableName()!);
            yield return $"ALTER TABLE {table} ENABLE ROW LEVEL SECURITY";
            yield return $"ALTER TABLE {table} FORCE ROW LEVEL SECURITY";
            yield return $"DROP POLICY IF EXISTS family ON {table}";
            yield return $"CREATE POLICY family ON {table} USING ({Own(type)}) WITH CHECK ({Own(type)})";
            foreach (var statement in Beside(type, table))
                yield return statement;
        }

        foreach (var type in model.GetEntityTypes().Where(t => t.ClrType.IsAssignableTo(typeof(ICoopOwned))))
        {
            foreach (var statement in OfCoop(type, Quoted(type.GetTableName()!)))
                yield return statement;
        }

        if (servingRole is null)
            yield break;
        var role = Quoted(servingRole);
        yield return $"GRANT USAGE ON SCHEMA public TO {role}";
        yield return $"GRANT SELECT, INSERT, UPDATE, DELETE ON ALL TABLES IN SCHEMA public TO {role}";
        yield return $"GRANT USAGE ON ALL SEQUENCES IN SCHEMA public TO {role}";
    }

    private static string Own(IEntityType type) => $"{(type.ClrType == typeof(Families.Family) ? "\"Id\"" : "\"FamilyId\"")} = {Family}";

    // The co-op's families read; what one family shows is written by that family alone.
    private static IEnumerable<string> OfCoop(IEntityType type, string table)
    {
        var ours = $"{(type.ClrType == typeof(Data.Coops.Coop) ? "\"Id\"" : "\"CoopId\"")} = ANY({InCoops})";
        var mine = type.ClrType.IsAssignableTo(typeof(IShownByFamily)) ? $"{ours} AND \"FamilyId\" = {Family}" : ours;
        yield return $"ALTER TABLE {table} ENABLE ROW LEVEL SECURITY";
        yield return $"ALTER TABLE {table} FORCE ROW LEVEL SECURITY";
        foreach (var (name, rule) in new[]
        {
            ("coop_read", $"FOR SELECT USING ({ours})"),
            ("coop_add", $"FOR INSERT WITH CHECK ({mine})"),
            ("coop_change", $"FOR UPDATE USING ({mine}) WITH CHECK ({mine})"),
            ("coop_remove", $"FOR DELETE USING ({ours})"),
        })
        {
            yield return $"DROP POLICY IF EXISTS {name} ON {table}";
            yield return $"CREATE POLICY {name} ON {table} {rule}";
        }

        // A family's own parts tell which co-ops are its; whoever holds an invitation's secret reads that one.
        var beside = type.ClrType.Name switch
        {
            nameof(Data.Coops.CoopFamily) => $"\"FamilyId\" = {Family}",
            nameof(Data.Coops.CoopInvitation) => $"\"SecretHash\" = {Link}",
            _ => null,
        };
        yield return $"DROP POLICY IF EXISTS beside ON {table}";
        if (beside is not null)
            yield return $"CREATE POLICY beside ON {table} FOR SELECT USING ({beside})";
    }

    // What a person may read before a family is chosen: their own memberships, the names of those families, and the
    // one invitation, calendar address, reader’s link or tablet whose secret they hold.
    private static IEnumerable<string> Beside(IEntityType type, string table)
    {
        var reading = type.ClrType.Name switch
        {
            nameof(Families.Membership) => $"\"PersonId\" = {Person}",
            nameof(Families.Family) => $"EXISTS (SELECT 1 FROM \"Memberships\" m WHERE m.\"FamilyId\" = \"Families\".\"Id\" AND m.\"PersonId\" = {Person})",
            // The one row that looks across families: whoever holds a paper's digits reads what they stand for.
            nameof(Sealing.KnownMark) => $"\"Opening\" = {Link}",
            nameof(OwnLists.FamilyTablet) => $"\"KeyHash\" = {Link}",
            nameof(Families.Invitation) or nameof(Requirements.CalendarAddress) or nameof(Evidence.ReaderLink) => $"\"SecretHash\" = {Link}",
            _ => null,
        };
        yield return $"DROP POLICY IF EXISTS beside ON {table}";
        if (reading is not null)
            yield return $"CREATE POLICY beside ON {table} FOR SELECT USING ({reading})";
    }

    private static string Quoted(string name) => "\"" + name.Replace("\"", "\"\"", StringComparison.Ordinal) + "\"";
}
