using System.Data.Common;
using Microsoft.EntityFrameworkCore.Diagnostics;

namespace CoopLessons.Data.Tenancy;

/// <summary>
/// Tells PostgreSQL whose rows the connection may see, each time before a command runs under another setting than the
/// one it was told last. The pool resets the setting to the empty string on return, which the policies read as nobody.
/// </summary>
public sealed class FamilyConnection(CurrentFamily current) : DbCommandInterceptor, IDbConnectionInterceptor
{
    private const string Tell = "select set_config('app.family', @f, false), set_config('app.person', @p, false), set_config('app.link', @l, false), set_config('app.coops', @c, false)";
    private int _told = -1;

    public void ConnectionOpened(DbConnection connection, ConnectionEndEventData eventData) => Say(connection, null);

    public Task ConnectionOpenedAsync(DbConnection connection, ConnectionEndEventData eventData, CancellationToken cancellationToken = default) =>
        SayAsync(connection, null, cancellationToken);

    public override InterceptionResult<DbDataReader> ReaderExecuting(DbCommand command, CommandEventData eventData, InterceptionResult<DbDataReader> result)
    {
        if (_told != current.Version)
            Say(command.Connection!, command.Transaction);
        return result;
    }

    public override async ValueTask<InterceptionResult<DbDataReader>> ReaderExecutingAsync(
        DbCommand command, CommandEventData eventData, InterceptionResult<DbDataReader> result, CancellationToken cancellationToken = default)
    {
        if (_told != current.Version)
            await SayAsync(command.Connection!, command.Transaction, cancellationToken);
        return result;
    }

    public override InterceptionResult<int> NonQueryExecuting(DbCommand command, CommandEventData eventData, InterceptionResult<int> result)
    {
        if (_told != current.Version)
            Say(command.Connection!, command.Transaction);
        return result;
    }

    public override async ValueTask<InterceptionResult<int>> NonQueryExecutingAsync(
        DbCommand command, CommandEventData eventData, InterceptionResult<int> result, CancellationToken cancellationToken = default)
    {
        if (_told != current.Version)
            await SayAsync(command.Connection!, command.Transaction, cancellationToken);
        return result;
    }

    private void Say(DbConnection connection, DbTransaction? transaction)
    {
        using var command = Command(connection, transaction);
        command.ExecuteNonQuery();
        _told = current.Version;
    }

    private async Task SayAsync(DbConnection connection, DbTransaction? transaction, CancellationToken ct)
    {
        await using var command = Command(connection, transaction);
        await command.ExecuteNonQueryAsync(ct);
        _told = current.Version;
    }

    private DbCommand Command(DbConnection connection, DbTransaction? transaction)
    {
        var command = connection.CreateCommand();
        command.Transaction = transaction;
        command.CommandText = Tell;
        Add(command, "f", current.FamilyId?.ToString());
        Add(command, "p", current.PersonId?.ToString());
        Add(command, "l", current.LinkHash);
        Add(command, "c", string.Join(',', current.Coops));
        return command;
    }

    private static void Add(DbCommand command, string name, string? value)
    {
        var parameter = command.CreateParameter();
        parameter.ParameterName = name;
        parameter.Value = value ?? "";
        command.Parameters.Add(parameter);
    }
}
