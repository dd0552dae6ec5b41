using Archwright.Mechanics.Engagement;
using Archwright.Mechanics.Numerics;
using Archwright.Mechanics.Rods;
using Archwright.Mechanics.Slots;

namespace Archwright.Mechanics.Bench;

/// <summary>A straight wire through a bracket that is tipped against it, between two neighbours that hold it in place:
/// how hard the two edges of the bracket press on it.</summary>
/// <remarks>
/// <see cref="EdgeForces"/> is without friction. What the edges press, times the coefficient of friction, is the part
/// of the resistance to sliding that comes from the tip; the tie's own force adds to it. R. P. Kusy, "Ongoing
/// innovations in biomechanics and materials for the new millennium", Angle Orthod 70 (2000) 366–376: resistance = μ N
/// of ligation + μ Σ N of binding (found). Friction does not act back on the edges there, so it is right to the first
/// order in the coefficient; <see cref="DrawingForce"/> draws the wire with friction. Two opposite forces N at the
/// ends of a bracket of width W make the moment N W, so Σ N = 2 |M|/W.
/// </remarks>
public sealed record SlidingTest
{
    /// <summary>Largest tip that can be asked for [rad].</summary>
    public const double MostTip = Math.PI / 6;

    /// <summary>Section and alloy.</summary>
    public required Wire Wire { get; init; }

    /// <summary>Opening of the slot [mm].</summary>
    public required double SlotHeight { get; init; }

    /// <summary>Mesiodistal width of the bracket [mm].</summary>
    public required double BracketWidth { get; init; }

    /// <summary>From each edge of the bracket to where the neighbour holds the wire [mm].</summary>
    public required double Span { get; init; }

    /// <summary>Temperature of the wire [°C].</summary>
    public required double Temperature { get; init; }

    /// <summary>Tip at which the straight wire touches both edges, and beyond which they press [rad].</summary>
    /// <exception cref="ArgumentOutOfRangeException">The wire does not go into the slot.</exception>
    public double CriticalTip =>
        ContactAngle.CriticalContactAngle(SlotHeight, BracketWidth, Wire.Section.Thickness);

    /// <summary>Sum of the forces at the two edges [N].</summary>
    /// <param name="tip">Of the bracket against the wire [rad].</param>
    /// <exception cref="ArgumentOutOfRangeException">A figure is out of range.</exception>
    /// <exception cref="InvalidOperationException">No equilibrium was found; the message says where.</exception>
    public double EdgeForces(double tip)
    {
        Require.PositiveLength(BracketWidth);
        Require.Between(Span, 0.5, 50, "mm");
        Require.Between(tip, -MostTip, MostTip, "rad");
        EngagementResult result = Checked(tip, new Engager(SetUp(tip)).Engage());
        return 2 * Math.Abs(result.Slots[1].OnTooth.Moment.Y) / BracketWidth;
    }

    /// <summary>Force along the bracket when the wire is drawn through it with friction, far enough to slip, by a grip
    /// beyond one of the neighbours [N].</summary>
    /// <param name="tip">Of the bracket against the wire [rad].</param>
    /// <param name="coefficient">Of friction, 0 to 2.</param>
    /// <param name="tie">What ties the wire in; null for a passive lid.</param>
    /// <exception cref="ArgumentOutOfRangeException">A figure is out of range.</exception>
    /// <exception cref="InvalidOperationException">No equilibrium was found; the message says where.</exception>
    public double DrawingForce(double tip, double coefficient, Tie? tie = null)
    {
        Require.PositiveLength(BracketWidth);
        Require.Between(Span, 0.5, 50, "mm");
        Require.Between(tip, -MostTip, MostTip, "rad");
        Require.Between(coefficient, 0, 2, "");
        Arrangement held = SetUp(tip);
        Slot grip = OnFreeEnd(Checked(tip, new Engager(held).Engage()), held.Slots[^1]);
        Slot rough = held.Slots[1] with { Friction = coefficient };
        var engager = new Engager(held with
        {
            Slots =
            [
                held.Slots[0],
                tie is null ? rough : Seated(rough with { Tie = tie }),
                held.Slots[2],
                grip,
            ],
        });
        Checked(tip, engager.Engage());
        SlotFrame drawn = grip.Actual.Moved(grip.Actual.Along * Drawn, default);
        return Math.Abs(Checked(tip, engager.Apply(new Step(null, [(3, drawn)]))).Slots[1].Friction);
    }

    // The base stands where the straight wire lies, so that the tie bends nothing.
    private Slot Seated(Slot bracket)
    {
        Vector3 room = bracket.Rest.Outward * ((bracket.Depth - Wire.Section.Width) / 2);
        return bracket with
        {
            Rest = bracket.Rest.Moved(room, default), Actual = bracket.Actual.Moved(room, default),
        };
    }

    // Beyond the last neighbour the wire is straight and free: gripped in line there it bears nothing but the pull.
    private Slot OnFreeEnd(EngagementResult engaged, Slot last)
    {
        Vector3 end = engaged.CentreLine[^1];
        Vector3 along = (end - engaged.CentreLine[^2]).Unit();
        Slot grip = Hold(last.Rest.Centre.X + Span, Slots.Hold.Clamped);
        double beyond = Span - (end - last.Actual.Centre).Length;
        return grip with
        {
            Actual = SlotFrame.Create(end + along * beyond, along, new Vector3(0, 1, 0)),
        };
    }

    // Many times what a wire gives before it slips [mm].
    private const double Drawn = 0.1;

    private Arrangement SetUp(double tip)
    {
        double neighbour = BracketWidth / 2 + Span;
        Slot bracket = Hold(0, Slots.Hold.Walls) with
        {
            // Deep enough for any wire: what is asked is the tip alone.
            Width = BracketWidth, Height = SlotHeight, Depth = SlotHeight + Wire.Section.Width,
        };
        return new Arrangement
        {
            Wire = Wire,
            Rest = new RestShape.Straight(),
            Temperature = Temperature,
            Slots =
            [
                Hold(-neighbour, Slots.Hold.Point),
                bracket with { Actual = bracket.Rest.Moved(default, new Vector3(0, tip, 0)) },
                Hold(neighbour, Slots.Hold.Point),
            ],
        };
    }

    private static EngagementResult Checked(double tip, EngagementResult result) => result.Converged
        ? result
        : throw new InvalidOperationException(
            $"No equilibrium at a tip of {tip * 180 / Math.PI:0.0} degrees. {result.Obstacle?.Reason}");

    private static Slot Hold(double x, Hold hold)
    {
        SlotFrame rest = SlotFrame.Create(new Vector3(x, 0, 0), new Vector3(1, 0, 0), new Vector3(0, 1, 0));
        return new Slot
        {
            Label = $"{x:0.###}", Rest = rest, Actual = rest, Width = 1, Height = 0.5, Depth = 0.5, Hold = hold,
        };
    }
}
