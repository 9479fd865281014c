using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Design;

namespace Heapwright.Storage.Sqlite;

/// <summary>Makes a context for writing migrations; no file is opened.</summary>
internal sealed class DesignTimeContexts : IDesignTimeDbContextFactory<SqliteSiteContext>
{
    public SqliteSiteContext CreateDbContext(string[] args)
    {
        var options = new DbContextOptionsBuilder<SqliteSiteContext>();
        SqliteStorage.Configure(options, Path.GetTempPath());
        return new SqliteSiteContext(options.Options);
    }
}
