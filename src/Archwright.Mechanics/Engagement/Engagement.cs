using System.Collections.Immutable;
using Archwright.Mechanics.Numerics;
using Archwright.Mechanics.Slots;

namespace Archwright.Mechanics.Engagement;

/// <summary>Which edges of a slot the wire touches.</summary>
public enum ContactState
{
    /// <summary>The wire passes without touching.</summary>
    None,

    /// <summary>It touches at one place along the slot.</summary>
    OneEdge,

    /// <summary>It touches at the mesial and at the distal half of the slot.</summary>
    BothEdges,
}

/// <summary>What the wire does at one slot.</summary>
/// <param name="Label">Label of the slot.</param>
/// <param name="OnTooth">Load on the tooth; moment about the centre of the actual slot.</param>
/// <param name="Contact">Where it touches.</param>
/// <param name="Drawn">Length of wire drawn through the slot since the rest shape, positive toward the patient's left
/// [mm].</param>
/// <param name="PullOnTie">Outward force that the tie has to hold [N].</param>
/// <param name="Friction">Part of the load that is friction, along the slot, positive toward the patient's left
/// [N].</param>
public sealed record SlotLoad(
    string Label, Wrench OnTooth, ContactState Contact, double Drawn, double PullOnTie, double Friction = 0);

/// <summary>Why a wire could not be engaged.</summary>
/// <param name="Slot">Index of the slot where it fails; −1 when it is the whole wire.</param>
/// <param name="Force">Force that it would take there [N]; NaN when it is not a matter of force.</param>
/// <param name="Holds">Force that the tie can hold [N]; NaN when it is not a matter of force.</param>
/// <param name="Reason">One sentence, in words of the trade.</param>
public sealed record Obstacle(int Slot, double Force, double Holds, string Reason);

/// <summary>Result of engaging a wire: loads on every tooth, state of the wire, and how far to trust it.</summary>
public sealed record EngagementResult
{
    /// <summary>Equilibrium was found to the tolerance asked for.</summary>
    public required bool Converged { get; init; }

    /// <summary>Largest out-of-balance nodal force [N].</summary>
    public required double Residual { get; init; }

    /// <summary>Force along the arch that holds a wire which finds no rest within a few millimetres of sliding [N];
    /// at most 10⁻⁴ N for a wire that rests by itself, 5·10⁻⁴ of the largest force for a new one with memory. It is
    /// tied in without friction: a real wire is held by that. The loads on the teeth do not sum to nil by this
    /// force.</summary>
    public double HeldAlong { get; init; }

    /// <summary>Why the wire cannot be engaged; null when it can. A converged result may still be obstructed
    /// (a tie would open).</summary>
    public Obstacle? Obstacle { get; init; }

    /// <summary>One a slot, in order.</summary>
    public required ImmutableArray<SlotLoad> Slots { get; init; }

    /// <summary>Largest absolute fibre strain.</summary>
    public required double LargestStrain { get; init; }

    /// <summary>Index of the slot nearest to the largest strain.</summary>
    public int LargestStrainNear { get; init; }

    /// <summary>Largest share of a section that is transformed; zero for alloys that do not transform.</summary>
    public double TransformedShare { get; init; }

    /// <summary>Largest permanent offset after release [mm]; zero for alloys without memory.</summary>
    public double Set { get; init; }

    /// <summary>Elastic energy stored [N·mm].</summary>
    public required double StoredEnergy { get; init; }

    /// <summary>Points of the engaged centre line, from the patient's right to the left [mm].</summary>
    public required ImmutableArray<Vector3> CentreLine { get; init; }

    /// <summary>Newton iterations used.</summary>
    public required int Iterations { get; init; }

    /// <summary>Temperature at which it holds [°C].</summary>
    public double Temperature { get; init; }
}
