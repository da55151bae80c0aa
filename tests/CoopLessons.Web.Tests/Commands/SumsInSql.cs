using System.Data.Common;
using System.Globalization;
using CoopLessons.Data.Databases;
using CoopLessons.Web.Tests.App;
using Microsoft.Data.Sqlite;
using Npgsql;

namespace CoopLessons.Web.Tests.Commands;

/// <summary>
/// A learner's minutes summed by the database itself, written anew in SQL from the rule's words and sharing no line with
/// the program: newest revisions that stand, and the parts of each by largest remainders (Hamilton's method, as the
/// apportionment act of 1792 has it), equal remainders to the subject that the family lists first.
/// </summary>
public sealed class SumsInSql(TestDatabase database, Guid family, Guid learner, DateOnly from, DateOnly to)
{
    private const string Standing =
        """
        WITH standing AS (
          SELECT r."EntryId", r."Number", r."Date", r."Place", t."Minutes"
          FROM "LogRevisions" r
          JOIN "LogEntries" e ON e."FamilyId" = r."FamilyId" AND e."Id" = r."EntryId" AND e."Newest" = r."Number"
          JOIN "LogTime" t ON t."FamilyId" = r."FamilyId" AND t."EntryId" = r."EntryId" AND t."Number" = r."Number"
          WHERE r."FamilyId" = @family AND t."LearnerId" = @learner AND NOT r."Removed" AND r."Date" BETWEEN @from AND @to
        )
        """;

    public Task<Dictionary<string, int>> TotalAsync() => AskAsync($"{Standing} SELECT 'total', SUM(\"Minutes\") FROM standing");

    public Task<Dictionary<string, int>> ByPlaceAsync() => AskAsync($"{Standing} SELECT \"Place\", SUM(\"Minutes\") FROM standing GROUP BY \"Place\"");

    public Task<Dictionary<string, int>> BySubjectAsync() => AskAsync(Standing +
        """
        , shares AS (
          SELECT s."EntryId", f."Name", f."Order", standing."Minutes",
            standing."Minutes" * s."Weight" / SUM(s."Weight") OVER (PARTITION BY s."EntryId") AS whole,
            standing."Minutes" * s."Weight" % SUM(s."Weight") OVER (PARTITION BY s."EntryId") AS remainder
          FROM standing
          JOIN "LogSubject" s ON s."FamilyId" = @family AND s."EntryId" = standing."EntryId" AND s."Number" = standing."Number" AND s."Weight" > 0
          JOIN "Subjects" f ON f."FamilyId" = @family AND f."Id" = s."SubjectId"
        ), ranked AS (
          SELECT "Name", whole,
            ROW_NUMBER() OVER (PARTITION BY "EntryId" ORDER BY remainder DESC, "Order") AS turn,
            "Minutes" - SUM(whole) OVER (PARTITION BY "EntryId") AS missing
          FROM shares
        )
        SELECT "Name", SUM(whole + CASE WHEN turn <= missing THEN 1 ELSE 0 END) FROM ranked GROUP BY "Name"
        """);

    private async Task<Dictionary<string, int>> AskAsync(string sql)
    {
        await using var connection = Connection();
        await connection.OpenAsync();
        await using var command = connection.CreateCommand();
        command.CommandText = sql;
        Add(command, "family", family);
        Add(command, "learner", learner);
        Add(command, "from", from);
        Add(command, "to", to);
        var sums = new Dictionary<string, int>();
        await using var reader = await command.ExecuteReaderAsync();
        while (await reader.ReadAsync())
            sums[reader.GetString(0)] = Convert.ToInt32(reader.GetValue(1), CultureInfo.InvariantCulture);
        return sums;
    }

    // The owner of the tables, who as a superuser of the test cluster is shown every row.
    private DbConnection Connection() => database.Choice switch
    {
        DatabaseChoice.Postgres postgres => new NpgsqlConnection(postgres.Owner),
        DatabaseChoice.Sqlite sqlite => new SqliteConnection(sqlite.ConnectionString),
        _ => throw new InvalidOperationException("No such database."),
    };

    private static void Add(DbCommand command, string name, object value)
    {
        var parameter = command.CreateParameter();
        parameter.ParameterName = name;
        parameter.Value = value;
        command.Parameters.Add(parameter);
    }
}
