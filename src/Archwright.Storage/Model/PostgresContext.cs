using Microsoft.EntityFrameworkCore;

namespace Archwright.Storage.Model;

/// <summary>The records on a server, for several chairs and sites.</summary>
/// <param name="options">Which server.</param>
public sealed class PostgresContext(DbContextOptions<PostgresContext> options) : PracticeContext(options);
