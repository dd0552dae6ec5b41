using System.Collections.Immutable;

namespace Archwright.Dentition.Comparison;

/// <summary>The forces of one state of a wire in a few figures.</summary>
/// <param name="LargestForce">Largest force on a tooth [N].</param>
/// <param name="LargestForceSlot">Index of the slot that bears it.</param>
/// <param name="LargestMoment">Largest moment on a tooth, about its slot's centre [N·mm].</param>
/// <param name="LargestMomentSlot">Index of the slot that bears it.</param>
/// <param name="TeethAboveCeiling">Teeth above a ceiling, by slot and kind; a tooth may be named for several
/// kinds.</param>
/// <param name="LargestShareOfCeiling">Largest share of a ceiling that is used, on any tooth in any kind.</param>
public sealed record ForceFigures(
    double LargestForce, int LargestForceSlot, double LargestMoment, int LargestMomentSlot,
    ImmutableArray<ToothAboveCeiling> TeethAboveCeiling, double LargestShareOfCeiling)
{
    /// <summary>Number of teeth above a ceiling, each counted once.</summary>
    public int CountAboveCeiling => TeethAboveCeiling.Select(one => one.Slot).Distinct().Count();
}

/// <summary>What a wire still pushes with once the teeth have come part of their way.</summary>
/// <param name="OffsetLeft">Share of every tooth's offset that remains, from 1 (on engagement) downward.</param>
/// <param name="Force">Force on the tooth that bears the most on engagement [N].</param>
/// <param name="LargestForce">Largest force on any tooth [N].</param>
/// <param name="LargestForceSlot">Index of the slot that bears it.</param>
public sealed record RemainingForce(double OffsetLeft, double Force, double LargestForce, int LargestForceSlot);
