using System.Data.Common;
using Microsoft.Data.Sqlite;
using Microsoft.EntityFrameworkCore.Diagnostics;

namespace Heapwright.Storage.Sqlite;

/// <summary>
/// What every connection must be told: a write that was answered has reached the disk (write-ahead log, full
/// synchronisation), and rows that belong together stay together.
/// </summary>
internal sealed class SqlitePragmas : DbConnectionInterceptor
{
    private const string Pragmas =
        "pragma synchronous=FULL; pragma foreign_keys=ON; pragma busy_timeout=5000;";

    private const string Writing = "pragma journal_mode=WAL; " + Pragmas;

    public override void ConnectionOpened(DbConnection connection, ConnectionEndEventData eventData)
    {
        using var command = connection.CreateCommand();
        command.CommandText = For(connection);
        command.ExecuteNonQuery();
    }

    public override async Task ConnectionOpenedAsync(
        DbConnection connection,
        ConnectionEndEventData eventData,
        CancellationToken cancellationToken = default
    )
    {
        await using var command = connection.CreateCommand();
        command.CommandText = For(connection);
        await command.ExecuteNonQueryAsync(cancellationToken);
    }

    // Whether a file exists is asked over a connection that may only read, and that one cannot set the journal.
    private static string For(DbConnection connection) =>
        new SqliteConnectionStringBuilder(connection.ConnectionString).Mode
        == SqliteOpenMode.ReadOnly
            ? Pragmas
            : Writing;
}
