using Heapwright.App.Backups;
using Microsoft.Data.Sqlite;
using Microsoft.EntityFrameworkCore;

namespace Heapwright.Storage.Sqlite.Backups;

/// <summary>The database of a backup, unpacked: checked, brought to the form of today, counted.</summary>
internal static class BackupCopy
{
    /// <summary>Checks the copy in a folder and brings it to the form this program reads.</summary>
    /// <param name="folder">The folder it was unpacked to.</param>
    /// <param name="name">What the backup is called.</param>
    /// <param name="cancel">Gives up.</param>
    /// <exception cref="BackupProblem">It is damaged, or newer than it says.</exception>
    public static async Task BringUpToDate(string folder, string name, CancellationToken cancel)
    {
        try
        {
            await using (var connection = Sql.Open(Path.Combine(folder, SqliteStorage.FileName)))
            {
                var check = await Sql.Texts(connection, "pragma integrity_check", cancel);
                if (check is not ["ok"])
                {
                    throw BackupProblem.Of("damaged", name, check[0]);
                }
            }

            var options = new DbContextOptionsBuilder<SqliteSiteContext>();
            SqliteStorage.Configure(options, folder, pooled: false);
            var number = await SqliteFile.SchemaNumber(options.Options, cancel);
            if (number > SiteContext.Schema)
            {
                throw BackupProblem.Of("newer_schema", name, number, SiteContext.Schema);
            }

            if (number == 0)
            {
                throw BackupProblem.Of("damaged", name, "schema_number");
            }

            await using var context = new SqliteSiteContext(options.Options);
            await context.Database.MigrateAsync(cancel);
        }
        catch (SqliteException problem)
        {
            throw BackupProblem.Of("damaged", name, problem.Message);
        }
    }

    /// <summary>What a database holds.</summary>
    /// <param name="connection">The connection.</param>
    /// <param name="schema">Which of the databases of the connection.</param>
    /// <param name="cancel">Gives up.</param>
    public static async Task<BackupCounts> Count(
        SqliteConnection connection,
        string schema,
        CancellationToken cancel
    ) =>
        new(
            await Sql.Number(
                connection,
                $"select count(*) from {schema}.heap where not is_removed",
                cancel
            ),
            await Sql.Number(connection, $"select count(*) from {schema}.diary_entry", cancel),
            await Sql.Number(
                connection,
                $"select count(*) from {schema}.stock_entry where not is_removed",
                cancel
            ),
            await Sql.Number(connection, $"select count(*) from {schema}.photo", cancel)
        );

    /// <summary>What one database holds and the other does not.</summary>
    /// <param name="connection">A connection with both.</param>
    /// <param name="here">The one that holds it.</param>
    /// <param name="there">The one that does not.</param>
    /// <param name="cancel">Gives up.</param>
    public static async Task<(BackupCounts Things, long Acts)> Missing(
        SqliteConnection connection,
        string here,
        string there,
        CancellationToken cancel
    )
    {
        Task<long> Items(string table) =>
            Sql.Number(
                connection,
                $"select count(*) from {here}.{table} h where not h.is_removed and not exists (select 1 from {there}.{table} t where t.id = h.id and not t.is_removed)",
                cancel
            );
        return (
            new BackupCounts(
                await Items("heap"),
                await Sql.Number(
                    connection,
                    $"select count(*) from {here}.diary_entry h where not exists (select 1 from {there}.diary_entry t where t.entry_id = h.entry_id)",
                    cancel
                ),
                await Items("stock_entry"),
                await Sql.Number(
                    connection,
                    $"select count(*) from {here}.photo h where not exists (select 1 from {there}.photo t where t.content_sha256 = h.content_sha256)",
                    cancel
                )
            ),
            await Sql.Number(
                connection,
                $"select count(*) from {here}.act h where not exists (select 1 from {there}.act t where t.number = h.number and t.at_utc = h.at_utc)",
                cancel
            )
        );
    }
}
