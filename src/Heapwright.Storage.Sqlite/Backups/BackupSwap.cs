using Microsoft.Data.Sqlite;

namespace Heapwright.Storage.Sqlite.Backups;

/// <summary>
/// Puts the content of one database in the place of that of another, in one transaction over an ordinary connection: who
/// reads meanwhile sees the old or the new, who writes waits, and a crash leaves the old.
/// </summary>
internal static class BackupSwap
{
    private const string NotOurs = "name not like 'sqlite_%'";

    /// <summary>Tables whose tokens, once taken back, must not come back with an older backup.</summary>
    private static readonly string[] WithTokens = ["device", "link"];

    /// <summary>Replaces everything.</summary>
    /// <param name="live">The file whose content goes.</param>
    /// <param name="copy">The file whose content comes; in the same form.</param>
    /// <param name="locked">Runs while nobody else can write, before anything is changed.</param>
    /// <param name="cancel">Gives up, until the last step.</param>
    public static async Task Replace(
        string live,
        string copy,
        Func<Task> locked,
        CancellationToken cancel
    )
    {
        await using var connection = Sql.Open(live);
        await Sql.Run(connection, "pragma synchronous=FULL", cancel);
        await Sql.Run(connection, "attach @copy as copy", cancel, ("@copy", copy));
        await Sql.Run(connection, "begin immediate", cancel);
        try
        {
            await locked();
            foreach (var table in WithTokens)
            {
                await Sql.Run(
                    connection,
                    $"create temp table revoked_{table} as select token_sha256, revoked_at_utc from main.{table} where revoked_at_utc is not null",
                    cancel
                );
            }

            await Clear(connection, cancel);
            await Fill(connection, cancel);
            foreach (var table in WithTokens)
            {
                await Sql.Run(
                    connection,
                    $"update main.{table} set revoked_at_utc = (select r.revoked_at_utc from temp.revoked_{table} r where r.token_sha256 = {table}.token_sha256) where revoked_at_utc is null and token_sha256 in (select token_sha256 from temp.revoked_{table})",
                    cancel
                );
            }

            await Sql.Run(connection, "commit", CancellationToken.None);
        }
        catch
        {
            await Sql.Run(connection, "rollback", CancellationToken.None);
            throw;
        }
    }

    // Triggers first, since those of a diary would not let its rows go; indexes go with their tables.
    private static async Task Clear(SqliteConnection connection, CancellationToken cancel)
    {
        foreach (var kind in new[] { "trigger", "view", "table" })
        {
            var names = await Sql.Texts(
                connection,
                $"select name from main.sqlite_master where type = '{kind}' and {NotOurs}",
                cancel
            );
            foreach (var name in names)
            {
                await Sql.Run(connection, $"drop {kind} main.{Sql.Quoted(name)}", cancel);
            }
        }
    }

    private static async Task Fill(SqliteConnection connection, CancellationToken cancel)
    {
        var tables = await Sql.Texts(
            connection,
            $"select name from copy.sqlite_master where type = 'table' and {NotOurs}",
            cancel
        );
        foreach (var sql in await Statements(connection, "type = 'table'", cancel))
        {
            await Sql.Run(connection, sql, cancel);
        }

        foreach (var table in tables.Select(Sql.Quoted))
        {
            await Sql.Run(
                connection,
                $"insert into main.{table} select * from copy.{table} order by rowid",
                cancel
            );
        }

        // Numbers that were given once are not given again.
        await Sql.Run(connection, "delete from main.sqlite_sequence", cancel);
        await Sql.Run(
            connection,
            "insert into main.sqlite_sequence select * from copy.sqlite_sequence",
            cancel
        );
        foreach (var sql in await Statements(connection, "type <> 'table'", cancel))
        {
            await Sql.Run(connection, sql, cancel);
        }
    }

    private static Task<List<string>> Statements(
        SqliteConnection connection,
        string which,
        CancellationToken cancel
    ) =>
        Sql.Texts(
            connection,
            $"select sql from copy.sqlite_master where {which} and sql is not null and {NotOurs} order by rowid",
            cancel
        );
}
