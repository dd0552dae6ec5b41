using System.Diagnostics.CodeAnalysis;
using Archwright.Dentition.Tables;

namespace Archwright.Dentition.Catalogue;

/// <summary>The alloys and wires that a practice can hold, every figure with its source.</summary>
/// <remarks>Immutable, safe to share among threads. The tables are <c>Catalogue/alloys.csv</c>,
/// <c>Catalogue/wires.csv</c> and <c>Catalogue/sizes.csv</c>; a row without a source does not load.</remarks>
public sealed class WireCatalogue
{
    private static readonly Lazy<WireCatalogue> Embedded = new(() => new WireCatalogue(
        Table.Embedded("Catalogue/alloy-names.csv"),
        Table.Embedded("Catalogue/alloys.csv"),
        Table.Embedded("Catalogue/wires.csv"),
        Table.Embedded("Catalogue/sizes.csv")));

    private readonly Dictionary<string, CatalogueWire> wiresById;
    private readonly Dictionary<string, CatalogueAlloy> alloysById;

    internal WireCatalogue(
        IReadOnlyList<TableRow> alloyNames, IReadOnlyList<TableRow> alloyFigures, IReadOnlyList<TableRow> wires,
        IReadOnlyList<TableRow> sizes)
    {
        Alloys = AlloyTable.Read(alloyNames, alloyFigures);
        Wires = WireTable.Read(wires, Alloys, sizes);
        alloysById = Alloys.ToDictionary(alloy => alloy.Id, StringComparer.OrdinalIgnoreCase);
        wiresById = Wires.ToDictionary(wire => wire.Id, StringComparer.OrdinalIgnoreCase);
    }

    /// <summary>The catalogue that comes with the library.</summary>
    /// <exception cref="TableException">A table of the library is faulty: table, line and mend in the
    /// message.</exception>
    public static WireCatalogue Default => Embedded.Value;

    /// <summary>All alloys, in the order of the table.</summary>
    public IReadOnlyList<CatalogueAlloy> Alloys { get; }

    /// <summary>All wires: by alloy, round before rectangular, thin before thick.</summary>
    public IReadOnlyList<CatalogueWire> Wires { get; }

    /// <summary>Looks a wire up by its id, in capitals or not.</summary>
    public bool TryFind(string id, [NotNullWhen(true)] out CatalogueWire? wire) => wiresById.TryGetValue(id, out wire);

    /// <summary>Looks an alloy up by its id, in capitals or not.</summary>
    public bool TryFindAlloy(string id, [NotNullWhen(true)] out CatalogueAlloy? alloy) =>
        alloysById.TryGetValue(id, out alloy);
}
