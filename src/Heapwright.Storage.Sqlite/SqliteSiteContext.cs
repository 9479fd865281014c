using Microsoft.EntityFrameworkCore;

namespace Heapwright.Storage.Sqlite;

/// <summary>The tables in a SQLite file.</summary>
/// <param name="options">Which file.</param>
public sealed class SqliteSiteContext(DbContextOptions<SqliteSiteContext> options)
    : SiteContext(options);
