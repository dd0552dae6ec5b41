using System.Collections.Immutable;
using Archwright.Dentition.Catalogue;

namespace Archwright.Treatment.Ladders;

/// <summary>What wires cost, in whatever currency the list is written.</summary>
/// <param name="ById">Price of one wire by its id.</param>
public sealed record WirePrices(ImmutableDictionary<string, decimal> ById)
{
    /// <summary>Price of one wire; null where the list does not have it.</summary>
    public decimal? Of(CatalogueWire wire)
    {
        ArgumentNullException.ThrowIfNull(wire);
        return ById.TryGetValue(wire.Id, out decimal price) ? price : null;
    }
}
