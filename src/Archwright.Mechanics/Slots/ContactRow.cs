using Archwright.Mechanics.Numerics;

namespace Archwright.Mechanics.Slots;

/// <summary>What a restraint of the wire acts on.</summary>
internal enum RowKind
{
    /// <summary>Two walls facing each other: base and lid, or gingival and occlusal wall, against one pair of corners
    /// of the section.</summary>
    Walls,

    /// <summary>The pull of a seating tie.</summary>
    Seating,

    /// <summary>A thread of given length round the wire.</summary>
    Thread,

    /// <summary>Coulomb friction along the wire, one row for a slot.</summary>
    Friction,

    /// <summary>A fixed point of the wire keeps its place in one direction.</summary>
    Place,

    /// <summary>The tangent at a fixed point of the wire stays at right angles to a direction.</summary>
    Direction,

    /// <summary>The section at a fixed point of the wire does not turn in the slot.</summary>
    Turn,

    /// <summary>Keeps a wire that slides freely from wandering while it is settled: a fixed point of it stays in a
    /// plane in the middle of the arch. Its force is brought to nil by letting the wire slide; it belongs to no
    /// tooth.</summary>
    Pin,
}

/// <summary>One restraint between the wire and a slot, with its multiplier.</summary>
/// <remarks>
/// Walls, with y the distance of the centre line from the slot's middle along the row's axis, and φ the turn of the
/// section:
/// <code>
///     upper:  y + k sin φ + a cos φ − room ≤ 0
///     lower:  y + k sin φ − a cos φ + room ≥ 0
/// </code>
/// a is half of the section's extent across the walls less the edge radius, k plus or minus half of the other extent
/// less the radius (one row for each pair of opposite corners), room half of the opening less the radius. So vertical
/// shift and twist share one clearance: play and torque come out of the same inequality. A round wire has a = k = 0.
/// </remarks>
internal struct ContactRow
{
    public RowKind Kind;

    /// <summary>The row is felt only where the wire touches: walls and threads.</summary>
    public readonly bool CanTouch => Kind is RowKind.Walls or RowKind.Thread;

    /// <summary>The row acts where the wire crosses a station, not at a fixed point of the wire.</summary>
    public readonly bool IsAtStation => CanTouch || Kind is RowKind.Seating or RowKind.Friction;

    /// <summary>The row is a spring of its own, without a multiplier.</summary>
    public readonly bool IsSpring => Kind is RowKind.Seating or RowKind.Friction;

    /// <summary>Index of the station (walls, seating, thread) or of the slot (others).</summary>
    public int Station;

    /// <summary>Index of the slot.</summary>
    public int Slot;

    /// <summary>Axis of the slot that the row acts along: 0 along, 1 outward, 2 third.</summary>
    public int Axis;

    /// <summary>Half extents and room as above [mm].</summary>
    public double Corner, Across, Room;

    /// <summary>The wall on the positive and on the negative side exists.</summary>
    public bool Upper, Lower;

    /// <summary>The row pushes and pulls as it stands: no play, or a point that is held.</summary>
    public bool BothWays;

    /// <summary>The row is one of an interior-point search now.</summary>
    public bool Inside;

    /// <summary>How deep the wire stands in the upper and in the lower wall; negative where it stands free
    /// [mm].</summary>
    public double Over, Under;

    /// <summary>The wall that is held as touched: 1 the upper, −1 the lower, 0 none.</summary>
    public int Touched;

    /// <summary>Seating tie: pull on a seated wire [N], its rise [N/mm], and the seated place [mm].</summary>
    public double Pull, Rise, Seat;

    /// <summary>Friction: its coefficient, what it can hold now and at the last committed step [N], and the point of
    /// the wire that would stand at the station without a force along it [mm].</summary>
    public double Coefficient, Bound, CommittedBound, StuckAt;

    /// <summary>Friction: the wire slips, the force stays at its bound.</summary>
    public bool Slips;

    /// <summary>Node of the wire for rows at a fixed point.</summary>
    public int Node;

    /// <summary>A stop or cinch at the wire's end: its point is the one that rests at <see cref="Target"/>.</summary>
    public bool EndStop;

    /// <summary>Where the fixed point has to stay, along the row's axis from the slot's centre [mm].</summary>
    public double Target;

    /// <summary>Plane of a pin: a point of it and its normal.</summary>
    public Vector3 PinAt, PinNormal;

    /// <summary>Multiplier: force of the slot against the row's positive direction on the wire [N] (or moment
    /// [N·mm]).</summary>
    public double Multiplier;

    /// <summary>Force kept by <see cref="ContactSet.KeepForces"/>.</summary>
    public double Kept;

    /// <summary>Multiplier as the augmented Lagrangian sees it at the last evaluation.</summary>
    public double Effective;

    /// <summary>How far the row is from being fulfilled, by its complementarity: |effective − multiplier| /
    /// ρ.</summary>
    public double Violation;
}
