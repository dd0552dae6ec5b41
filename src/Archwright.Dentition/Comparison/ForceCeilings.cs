using System.Collections.Immutable;
using Archwright.Dentition.Tables;
using Archwright.Dentition.Teeth;

namespace Archwright.Dentition.Comparison;

/// <summary>The most of one kind of load that a practice allows one tooth to bear.</summary>
/// <param name="Tooth">The tooth.</param>
/// <param name="Kind">Kind of load.</param>
/// <param name="Limit">Ceiling with its source; in N or N·mm.</param>
public sealed record ForceCeiling(ToothNumber Tooth, LoadKind Kind, Sourced Limit);

/// <summary>Ceilings by tooth and kind of load. Immutable.</summary>
/// <remarks>Teaching values to warn at, no limits of safety; the practice may edit them. Third molars have none.
/// </remarks>
public sealed class ForceCeilings
{
    private static readonly Lazy<ForceCeilings> Embedded = new(() => Read(Table.Embedded("Comparison/ceilings.csv")));

    private readonly ImmutableDictionary<(ToothNumber, LoadKind), ForceCeiling> byTooth;

    /// <summary>A table of ceilings.</summary>
    /// <param name="ceilings">At most one for a tooth and kind.</param>
    /// <exception cref="ArgumentException">A ceiling is not positive and finite, or given twice.</exception>
    public ForceCeilings(IEnumerable<ForceCeiling> ceilings)
        : this(Collect(ceilings))
    {
    }

    private ForceCeilings(ImmutableDictionary<(ToothNumber, LoadKind), ForceCeiling> byTooth) => this.byTooth = byTooth;

    /// <summary>The table that comes with the library, each row with its source.</summary>
    public static ForceCeilings Default => Embedded.Value;

    /// <summary>No ceilings at all.</summary>
    public static ForceCeilings None { get; } = new(Array.Empty<ForceCeiling>());

    /// <summary>All ceilings, by tooth and kind.</summary>
    public IReadOnlyList<ForceCeiling> All =>
        [.. byTooth.Values.OrderBy(one => one.Tooth.Iso).ThenBy(one => one.Kind)];

    /// <summary>The ceiling of a tooth for a kind of load; null when there is none.</summary>
    public ForceCeiling? Find(ToothNumber tooth, LoadKind kind) => byTooth.GetValueOrDefault((tooth, kind));

    /// <summary>This table with some ceilings in place of its own.</summary>
    /// <exception cref="ArgumentException">A ceiling is not positive and finite, or given twice.</exception>
    public ForceCeilings With(IEnumerable<ForceCeiling> ceilings) => new(byTooth.SetItems(Collect(ceilings)));

    internal static ForceCeilings Read(IReadOnlyList<TableRow> rows)
    {
        List<ForceCeiling> ceilings = [];
        foreach (TableRow row in rows)
        {
            if (!LoadKinds.TryParse(row.Required("kind"), out LoadKind kind))
                throw row.Fault($"'{row.Required("kind")}' is no kind of load.", "Known: " + Known + ".");
            Sourced limit = row.Figure();
            if (limit.Unit != kind.Unit())
                throw row.Fault($"the ceiling is given in {limit.Unit}.", $"Give it in {kind.Unit()}.");
            if (limit.Value <= 0)
                throw row.Fault($"the ceiling is {limit.Value}.", "It must be positive.");

            ceilings.AddRange(ToothRows.Teeth(row).Select(tooth => new ForceCeiling(tooth, kind, limit)));
        }

        return new ForceCeilings(ceilings);
    }

    private static string Known => string.Join(", ", LoadKinds.All.Select(kind => kind.Code()));

    private static ImmutableDictionary<(ToothNumber, LoadKind), ForceCeiling> Collect(
        IEnumerable<ForceCeiling> ceilings)
    {
        var builder = ImmutableDictionary.CreateBuilder<(ToothNumber, LoadKind), ForceCeiling>();
        foreach (ForceCeiling one in ceilings)
        {
            if (!(double.IsFinite(one.Limit.Value) && one.Limit.Value > 0))
            {
                throw new ArgumentException(
                    $"The ceiling of {one.Tooth} for {one.Kind.Words()} must be positive and finite.",
                    nameof(ceilings));
            }

            if (!builder.TryAdd((one.Tooth, one.Kind), one))
            {
                throw new ArgumentException(
                    $"The ceiling of {one.Tooth} for {one.Kind.Words()} is given twice.", nameof(ceilings));
            }
        }

        return builder.ToImmutable();
    }
}
