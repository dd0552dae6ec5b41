using Archwright.Mechanics.Engagement;
using Archwright.Mechanics.Numerics;
using Archwright.Mechanics.Rods;
using Archwright.Mechanics.Slots;

namespace Archwright.Mechanics.Bench;

/// <summary>Torque against twist: two slots on a straight wire, facing each other at their inner edges, one of them
/// turned about the wire.</summary>
/// <remarks>Both slots have play, so the wire takes up twice the play of one before it answers; from there an elastic
/// wire answers with GJ over the free length. Nothing here uses that formula: the wire is engaged as in any other
/// case. A bracket may give way: the twist that is asked for is then that of what carries it, and the slot turns by
/// less, <c>slot = twist − compliance · torque</c>.</remarks>
public static class TwistTest
{
    private const double SlotWidth = 3;

    /// <summary>Largest twist that can be asked for, either way [rad].</summary>
    public const double MostTwist = Math.PI / 2;

    /// <summary>Runs the test along a path of twists.</summary>
    /// <param name="wire">Section and alloy.</param>
    /// <param name="slotHeight">Opening of both slots [mm].</param>
    /// <param name="slotDepth">From base to lid [mm].</param>
    /// <param name="edgeGap">Free length between the inner edges [mm].</param>
    /// <param name="twists">Twist of what carries the second slot, in the order of the test [rad].</param>
    /// <param name="temperature">Of the wire [°C].</param>
    /// <param name="compliance">What the brackets give way by, both together and with all that carries them; zero for
    /// rigid ones [rad/(N·mm)].</param>
    /// <returns>Torque that turns the slot, positive with the twist, one a twist [N·mm].</returns>
    /// <exception cref="ArgumentException">The wire does not go into the slot, or a figure is out of range.</exception>
    /// <exception cref="InvalidOperationException">No equilibrium was found; the message says where.</exception>
    public static double[] Run(
        Wire wire, double slotHeight, double slotDepth, double edgeGap, ReadOnlySpan<double> twists,
        double temperature = 36, double compliance = 0)
    {
        ArgumentNullException.ThrowIfNull(wire);
        Require.Between(edgeGap, 0.2, 50, "mm");
        Require.Between(compliance, 0, 1, "rad/(N·mm)");
        var axis = new Vector3(1, 0, 0);
        SlotFrame first = SlotFrame.Create(default, axis, new Vector3(0, 1, 0));
        SlotFrame second = SlotFrame.Create(axis * (edgeGap + SlotWidth), axis, new Vector3(0, 1, 0));
        var engager = new Engager(new Arrangement
        {
            Wire = wire,
            Rest = new RestShape.Straight(),
            Temperature = temperature,
            Slots = [MakeSlot("fixed", first, slotHeight, slotDepth), MakeSlot("turned", second, slotHeight,
                slotDepth)],
        });
        Check(engager.Engage(), 0);

        var turned = new TurnedSlot(engager, second, axis, compliance);
        var torques = new double[twists.Length];
        for (int i = 0; i < twists.Length; i++)
        {
            Require.Between(twists[i], -MostTwist, MostTwist, "rad");
            torques[i] = turned.Reach(twists[i]);
        }

        return torques;
    }

    private static Slot MakeSlot(string label, SlotFrame frame, double height, double depth) => new()
    {
        Label = label,
        Rest = frame,
        Actual = frame,
        Width = SlotWidth,
        Height = height,
        Depth = depth,
        Hold = Hold.EdgesOnly,
    };

    internal static void Check(EngagementResult result, double twist)
    {
        if (!result.Converged)
        {
            throw new InvalidOperationException(
                $"No equilibrium at a twist of {twist * 180 / Math.PI:0.0} degrees. {result.Obstacle?.Reason}");
        }
    }
}
