using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Storage.ValueConversion;

namespace Archwright.Storage.Model;

/// <summary>The records in a file of this computer.</summary>
/// <param name="options">Which file.</param>
public sealed class SqliteContext(DbContextOptions<SqliteContext> options) : PracticeContext(options)
{
    /// <inheritdoc/>
    protected override void ConfigureConventions(ModelConfigurationBuilder configurationBuilder) =>
        // SQLite has no type for a point in time; numbers can be put in order.
        configurationBuilder.Properties<DateTimeOffset>().HaveConversion<DateTimeOffsetToBinaryConverter>();
}
