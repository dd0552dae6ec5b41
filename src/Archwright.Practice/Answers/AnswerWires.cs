using Archwright.Dentition.Catalogue;

namespace Archwright.Practice.Answers;

/// <summary>Which two wires the picture of the answers compares.</summary>
public static class AnswerWires
{
    private const string Steel = "ss";
    private const string Springy = "niti";

    /// <summary>A springy first wire against steel of the same size, for nobody in particular.</summary>
    public static (CatalogueWire First, CatalogueWire Other) General { get; } = Pair("niti-016");

    /// <summary>A patient's wire against steel of the same size; steel against a springy one.</summary>
    /// <param name="id">The patient's wire.</param>
    /// <returns>Null for a wire that the catalogue does not know.</returns>
    public static (CatalogueWire First, CatalogueWire Other)? For(string id) =>
        WireCatalogue.Default.TryFind(id, out _) ? Pair(id) : null;

    private static (CatalogueWire, CatalogueWire) Pair(string id)
    {
        if (!WireCatalogue.Default.TryFind(id, out CatalogueWire? wire))
            throw new ArgumentException($"The catalogue has no wire '{id}'.", nameof(id));

        return (wire, Like(wire, wire.Alloy.Id == Steel ? Springy : Steel));
    }

    // The wire of an alloy that is nearest in size, round for round.
    private static CatalogueWire Like(CatalogueWire wire, string alloy) => WireCatalogue.Default.Wires
        .Where(one => one.Alloy.Id == alloy && one.Section.IsRound == wire.Section.IsRound)
        .MinBy(one => Math.Abs(one.Section.Thickness - wire.Section.Thickness)
            + Math.Abs(one.Section.Width - wire.Section.Width))!; // both alloys have round and rectangular wires
}
