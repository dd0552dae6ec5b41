using Archwright.Mechanics.Numerics;

namespace Archwright.Mechanics.Slots;

/// <summary>How a slot restrains the wire.</summary>
public enum Hold
{
    /// <summary>By its walls, with clearance: the real thing.</summary>
    Walls,

    /// <summary>As <see cref="Walls"/>, but at the mesial and distal edge alone (bench cases).</summary>
    EdgesOnly,

    /// <summary>The section is fixed in place and direction.</summary>
    Clamped,

    /// <summary>The centre line passes through the slot's centre; direction, sliding and twist are free.</summary>
    Point,

    /// <summary>The centre line passes through two such points, at the two edges; twist and sliding are free.</summary>
    EdgePoints,

    /// <summary>A fixed point of the wire glides along the slot's axis; direction and twist are free (bench: the
    /// variant that general finite-element programs can do).</summary>
    Glide,
}

/// <summary>A slot: a rectangular channel on a tooth, where it rests and where it is.</summary>
public sealed record Slot
{
    /// <summary>ISO 3950 number of the tooth, or any label of a bench set-up.</summary>
    public required string Label { get; init; }

    /// <summary>Where the wire would be passive.</summary>
    public required SlotFrame Rest { get; init; }

    /// <summary>Where the slot is now.</summary>
    public required SlotFrame Actual { get; init; }

    /// <summary>Mesiodistal length of the channel [mm].</summary>
    public required double Width { get; init; }

    /// <summary>Occlusogingival opening [mm]; ignored for <see cref="Hold.Clamped"/> and the point holds.</summary>
    public double Height { get; init; }

    /// <summary>From base to lid [mm]; ignored for <see cref="Hold.Clamped"/> and the point holds.</summary>
    public double Depth { get; init; }

    /// <summary>What keeps the wire in.</summary>
    public Tie Tie { get; init; } = Tie.Closed();

    /// <summary>How it restrains the wire.</summary>
    public Hold Hold { get; init; }

    /// <summary>Coefficient of Coulomb friction between wire and slot, from 0 (none). It acts in the steps after
    /// engagement: as it is tied in, the wire finds its place along the arch without friction.</summary>
    public double Friction { get; init; }

    /// <summary>Whether there is a bracket; false for a crown without one. It holds no wire, and its frames say where
    /// the slot would be.</summary>
    public bool IsBonded { get; init; } = true;

    /// <summary>The same place without a bracket.</summary>
    public Slot Unbonded() => this with
    {
        IsBonded = false, Tie = Tie.None, Hold = Hold.Walls, Friction = 0, Width = NoWidth,
    };

    // The wire at rest is straight for this length there, which hardly shows [mm].
    private const double NoWidth = 0.5;
}
