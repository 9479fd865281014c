using System.Globalization;
using Microsoft.Data.Sqlite;

namespace Heapwright.Storage.Sqlite.Backups;

/// <summary>Plain SQL on a file; the statements are our own, names from a file are quoted.</summary>
internal static class Sql
{
    /// <summary>A connection of its own, closed when disposed; it waits ten seconds for other writers.</summary>
    /// <param name="file">The file, which must be there.</param>
    public static SqliteConnection Open(string file)
    {
        var connection = new SqliteConnection(
            new SqliteConnectionStringBuilder
            {
                DataSource = file,
                Mode = SqliteOpenMode.ReadWrite,
                Pooling = false,
                ForeignKeys = false,
                DefaultTimeout = 10,
            }.ToString()
        );
        connection.Open();
        return connection;
    }

    public static async Task Run(
        SqliteConnection connection,
        string sql,
        CancellationToken cancel,
        params (string Name, object Value)[] values
    )
    {
        await using var command = Command(connection, sql, values);
        await command.ExecuteNonQueryAsync(cancel);
    }

    public static async Task<long> Number(
        SqliteConnection connection,
        string sql,
        CancellationToken cancel
    )
    {
        await using var command = Command(connection, sql, []);
        return Convert.ToInt64(
            await command.ExecuteScalarAsync(cancel),
            CultureInfo.InvariantCulture
        );
    }

    public static async Task<List<string>> Texts(
        SqliteConnection connection,
        string sql,
        CancellationToken cancel
    )
    {
        await using var command = Command(connection, sql, []);
        await using var reader = await command.ExecuteReaderAsync(cancel);
        var rows = new List<string>();
        while (await reader.ReadAsync(cancel))
        {
            rows.Add(reader.GetString(0));
        }

        return rows;
    }

    public static string Quoted(string name) =>
        "\"" + name.Replace("\"", "\"\"", StringComparison.Ordinal) + "\"";

    private static SqliteCommand Command(
        SqliteConnection connection,
        string sql,
        (string Name, object Value)[] values
    )
    {
        var command = connection.CreateCommand();
#pragma warning disable CA2100 // Statements are our own; names that come from a file are quoted.
        command.CommandText = sql;
#pragma warning restore CA2100
        foreach (var (name, value) in values)
        {
            command.Parameters.AddWithValue(name, value);
        }

        return command;
    }
}
