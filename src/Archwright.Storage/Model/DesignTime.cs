using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Design;

namespace Archwright.Storage.Model;

/// <summary>For the tool that writes migrations; no database is opened.</summary>
internal sealed class SqliteAtDesignTime : IDesignTimeDbContextFactory<SqliteContext>
{
    public SqliteContext CreateDbContext(string[] args) =>
        new(new DbContextOptionsBuilder<SqliteContext>().UseSqlite("Data Source=unused").WithPasskeys().Options);
}

/// <summary>For the tool that writes migrations; no database is opened.</summary>
internal sealed class PostgresAtDesignTime : IDesignTimeDbContextFactory<PostgresContext>
{
    public PostgresContext CreateDbContext(string[] args) =>
        new(new DbContextOptionsBuilder<PostgresContext>().UseNpgsql("Host=unused").WithPasskeys().Options);
}
