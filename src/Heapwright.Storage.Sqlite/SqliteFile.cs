using System.Globalization;
using Microsoft.Data.Sqlite;
using Microsoft.EntityFrameworkCore;

namespace Heapwright.Storage.Sqlite;

/// <summary>The file itself: brought up to date with a copy taken first, and checked.</summary>
/// <param name="folder">The data folder.</param>
/// <param name="contexts">Makes contexts on the file.</param>
/// <param name="clock">Names the copies.</param>
public sealed class SqliteFile(
    string folder,
    IDbContextFactory<SqliteSiteContext> contexts,
    TimeProvider clock
)
{
    private const int Corrupt = 11;
    private const int NotADatabase = 26;

    /// <summary>Where copies are put before the form of the file changes.</summary>
    public string BackupFolder => Path.Combine(folder, "backups");

    /// <summary>
    /// Makes the file, or brings it to the form this program reads, after taking a copy. A file made by a newer
    /// version is left alone.
    /// </summary>
    /// <param name="cancel">Gives up.</param>
    /// <returns>The copy that was taken, or null where none was needed.</returns>
    /// <exception cref="NewerSchemaException">A newer version made the file.</exception>
    public async Task<string?> BringUpToDate(CancellationToken cancel)
    {
        await using var context = await contexts.CreateDbContextAsync(cancel);
        var pending = (await context.Database.GetPendingMigrationsAsync(cancel)).Count();
        var number = await SchemaNumber(context, cancel);
        if (number > SiteContext.Schema)
        {
            throw new NewerSchemaException(
                Path.Combine(folder, SqliteStorage.FileName),
                number,
                SiteContext.Schema
            );
        }

        if (pending == 0)
        {
            return null;
        }

        var copy = number > 0 ? await Copy(context, number, cancel) : null;
        await context.Database.MigrateAsync(cancel);
        return copy;
    }

    /// <summary>What SQLite says of the file; one line <c>ok</c> when it is whole.</summary>
    /// <param name="cancel">Gives up.</param>
    public async Task<IReadOnlyList<string>> IntegrityCheck(CancellationToken cancel)
    {
        await using var context = await contexts.CreateDbContextAsync(cancel);
        try
        {
            return await context
                .Database.SqlQueryRaw<string>(
                    "select integrity_check as Value from pragma_integrity_check"
                )
                .ToListAsync(cancel);
        }
        catch (SqliteException problem) when (problem.SqliteErrorCode is Corrupt or NotADatabase)
        {
            return [problem.Message];
        }
    }

    /// <summary>What a connection of this program is set to.</summary>
    /// <param name="name">The name of a pragma that gives one number.</param>
    /// <param name="cancel">Gives up.</param>
    internal async Task<int> Pragma(string name, CancellationToken cancel)
    {
        await using var context = await contexts.CreateDbContextAsync(cancel);
        await context.Database.OpenConnectionAsync(cancel);
        await using var command = context.Database.GetDbConnection().CreateCommand();
        command.CommandText = "pragma " + name;
        return Convert.ToInt32(
            await command.ExecuteScalarAsync(cancel),
            CultureInfo.InvariantCulture
        );
    }

    internal static async Task<int> SchemaNumber(
        DbContextOptions<SqliteSiteContext> options,
        CancellationToken cancel
    )
    {
        await using var context = new SqliteSiteContext(options);
        return await SchemaNumber(context, cancel);
    }

    private static async Task<int> SchemaNumber(SqliteSiteContext context, CancellationToken cancel)
    {
        var tables = await context
            .Database.SqlQueryRaw<int>(
                "select count(*) as Value from sqlite_master where type = 'table' and name = 'schema_number'"
            )
            .SingleAsync(cancel);
        return tables == 0
            ? 0
            : await context
                .Database.SqlQueryRaw<int>(
                    "select coalesce(max(number), 0) as Value from schema_number"
                )
                .SingleAsync(cancel);
    }

    private async Task<string> Copy(SqliteSiteContext context, int number, CancellationToken cancel)
    {
        Directory.CreateDirectory(BackupFolder);
        var stamp = clock
            .GetUtcNow()
            .ToString("yyyyMMdd'T'HHmmss'Z'", CultureInfo.InvariantCulture);
        var name = string.Create(
            CultureInfo.InvariantCulture,
            $"heapwright-schema{number}-{stamp}.db"
        );
        var copy = Path.Combine(BackupFolder, name);
        await context.Database.ExecuteSqlRawAsync(
            "vacuum into @copy",
            [new SqliteParameter("@copy", copy)],
            cancel
        );
        return copy;
    }
}
