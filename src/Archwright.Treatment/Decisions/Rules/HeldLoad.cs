using Archwright.Dentition.Comparison;

namespace Archwright.Treatment.Decisions.Rules;

/// <summary>A load that is held against its ceiling.</summary>
/// <param name="Load">The tooth, the kind, the figure that counts, and the ceiling.</param>
/// <param name="AtFirst">The load once the ligament has given, or on tying in: as the policy says.</param>
/// <param name="Days">Days after which the figure that counts is read, since the load at first is above the ceiling and
/// might be brief; 0 where the load at first counts.</param>
internal sealed record HeldLoad(ToothAboveCeiling Load, double AtFirst, int Days)
{
    public double Ratio => Load.Ratio;

    /// <summary>Whether it is let pass because it is brief.</summary>
    public bool IsBrief => Days > 0 && Ratio <= 1;
}
