using System.Globalization;
using Archwright.Dentition.Teeth;
using Archwright.Practice.Visits;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;

namespace Archwright.Storage.Model;

/// <summary>Wires of a visit as columns that the database computes from the document, so that they cannot differ from
/// it: a day of hundreds of visits is listed without reading a document. See decision 28.</summary>
internal static class WireColumns
{
    /// <summary>Column with the wires found: upper id, since when, lower id, since when.</summary>
    public const string Found = "WiresFound";

    /// <summary>Column with the wires decided: upper id, lower id.</summary>
    public const string Left = "WiresLeft";

    // Unit separator: no name of a wire holds it.
    private const char Between = '\u001f';

    private static readonly string[] FoundPaths =
        ["upper.found.wire_id", "upper.found.since", "lower.found.wire_id", "lower.found.since"];

    private static readonly string[] LeftPaths = ["upper.decided.wire_id", "lower.decided.wire_id"];

    /// <summary>Adds the columns to the model: read from the document each time in SQLite, where they cost neither
    /// room nor a rewriting of the table; kept beside it in PostgreSQL.</summary>
    public static void AddTo(EntityTypeBuilder<Visit> visit, bool isSqlite)
    {
        foreach ((string column, string[] paths) in new[] { (Found, FoundPaths), (Left, LeftPaths) })
        {
            visit.Property<string>(column).HasComputedColumnSql(
                isSqlite ? InSqlite(paths) : InPostgres(paths), stored: !isSqlite);
        }
    }

    /// <summary>The wire found in an arch; null when none is noted.</summary>
    public static WireFound? FoundOf(string column, Jaw jaw)
    {
        string[] parts = column.Split(Between);
        int at = jaw == Jaw.Upper ? 0 : 2;
        return parts[at + 1].Length == 0 ? null : new WireFound(
            parts[at], DateOnly.ParseExact(parts[at + 1], "yyyy-MM-dd", CultureInfo.InvariantCulture));
    }

    /// <summary>Id of the wire decided for an arch; empty when none is.</summary>
    public static string LeftOf(string column, Jaw jaw) => column.Split(Between)[jaw == Jaw.Upper ? 0 : 1];

    private static string InSqlite(string[] paths) => string.Join(
        " || char(31) || ", paths.Select(path => $"coalesce(json_extract(\"Content\", '$.{path}'), '')"));

    private static string InPostgres(string[] paths) => string.Join(
        " || chr(31) || ",
        paths.Select(path => $"coalesce(\"Content\"::jsonb #>> '{{{path.Replace('.', ',')}}}', '')"));
}
