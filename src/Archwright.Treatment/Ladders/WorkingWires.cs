using Archwright.Dentition.Catalogue;
using Archwright.Treatment.Decisions;

namespace Archwright.Treatment.Ladders;

/// <summary>The wire that an arch usually works with in the end.</summary>
/// <remarks>Taught for many years, found in teaching texts and practices' own pages: steel of 0.019 × 0.025 in for
/// slots of 0.022 in, the end of all three sequences that Mandall N et al. tried (Eur J Orthod 2006;28:561–566);
/// steel of 0.016 × 0.022 in for slots of 0.018 in, where others take 0.017 × 0.025 (common practice, no
/// source).</remarks>
public static class WorkingWires
{
    private const double Between = 0.020 * 25.4;

    /// <summary>The usual working wire for the slots of an arch.</summary>
    public static CatalogueWire Usual(ArchToday arch)
    {
        ArgumentNullException.ThrowIfNull(arch);
        double smallest = arch.Arrangement.Slots.Min(slot => slot.Height);
        string id = smallest > Between ? "ss-019x025" : "ss-016x022";
        return WireCatalogue.Default.TryFind(id, out CatalogueWire? wire)
            ? wire : throw new InvalidOperationException($"The catalogue has lost {id}.");
    }
}
