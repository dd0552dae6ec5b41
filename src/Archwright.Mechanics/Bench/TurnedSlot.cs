using Archwright.Mechanics.Engagement;
using Archwright.Mechanics.Numerics;
using Archwright.Mechanics.Slots;

namespace Archwright.Mechanics.Bench;

/// <summary>The turned slot of a <see cref="TwistTest"/>, with a bracket that may give way.</summary>
/// <param name="engager">The engaged wire.</param>
/// <param name="rest">The slot before it is turned.</param>
/// <param name="axis">Axis of the turn.</param>
/// <param name="compliance">What the bracket gives way by [rad/(N·mm)].</param>
internal sealed class TurnedSlot(Engager engager, SlotFrame rest, Vector3 axis, double compliance)
{
    /// <summary>How closely the twist is met; the torque of a wire with memory is good to some 1e-4 N·mm
    /// [rad].</summary>
    private const double Tolerance = 1e-5;

    private const int MostTrials = 40;

    private double turn;
    private double torque;

    /// <summary>Turns the slot until what carries it has the twist: turn + compliance · torque(turn) = twist.</summary>
    /// <param name="twist">Twist of what carries the slot [rad].</param>
    /// <returns>Torque that turns the slot, positive with the twist [N·mm].</returns>
    /// <exception cref="InvalidOperationException">No equilibrium was found.</exception>
    /// <remarks>By the rule of secants: the left side grows by 1 or more for each unit of turn, so the turn lies
    /// between where it is and where that of a rigid bracket would be. Every trial starts from the same state: only the
    /// last leaves a trace in the history of the wire.</remarks>
    public double Reach(double twist)
    {
        double near = turn;
        double gapNear = twist - turn - compliance * torque;
        double far = turn + gapNear;
        for (int trial = 0; trial < MostTrials; trial++)
        {
            double there = Turned(far);
            double gap = twist - far - compliance * there;
            if (compliance == 0 || Math.Abs(gap) <= Tolerance)
            {
                (turn, torque) = (far, there);
                return there;
            }

            engager.Undo();
            double next = far + gap * (far - near) / (gapNear - gap);
            (near, gapNear, far) = (far, gap, next);
        }

        throw new InvalidOperationException(
            $"No equilibrium at a twist of {twist * 180 / Math.PI:0.0} degrees with brackets that give way.");
    }

    private double Turned(double to)
    {
        EngagementResult result = engager.Apply(new Step(null, [(1, rest.Moved(default, axis * to))]));
        TwistTest.Check(result, to);
        return -Vector3.Dot(result.Slots[1].OnTooth.Moment, axis);
    }
}
