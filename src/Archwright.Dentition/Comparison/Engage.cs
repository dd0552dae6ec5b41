using Archwright.Mechanics.Engagement;

namespace Archwright.Dentition.Comparison;

/// <summary>Engages a wire, to be disposed of.</summary>
/// <param name="arrangement">The arch with the wire.</param>
/// <param name="near">An elastic wire of the same section, engaged in the same slots and not relieved: where to start.
/// Null for a wire alone.</param>
/// <param name="cancellation">Gives up.</param>
internal delegate IEngagedWire Engage(
    Arrangement arrangement, IEngagedWire? near, CancellationToken cancellation);
