using Archwright.Dentition.Positions;
using Archwright.Dentition.Teeth;
using Archwright.Treatment.Support;

namespace Archwright.Treatment.Movement;

/// <summary>Kinds of tooth movement, by what the couple at the slot does to the force.</summary>
public enum MovementKind
{
    /// <summary>The tooth does not move to speak of.</summary>
    None,

    /// <summary>Uncontrolled tipping: crown and apex go opposite ways.</summary>
    Tipping,

    /// <summary>Controlled tipping: it turns about its apex.</summary>
    ControlledTipping,

    /// <summary>Bodily movement.</summary>
    Bodily,

    /// <summary>Root movement: the root goes farther than the crown.</summary>
    Root,

    /// <summary>Turning about the long axis, above all.</summary>
    Rotation,

    /// <summary>Toward the biting plane, above all.</summary>
    Extrusion,

    /// <summary>Away from it, above all.</summary>
    Intrusion,
}

/// <summary>What a load means for a tooth.</summary>
/// <param name="Stress">Mean compressive stress of the ligament that counts [kPa].</param>
/// <param name="Speed">Speed of the fastest point of the crown, for this patient [mm/day].</param>
/// <param name="MomentToForce">Moment at the slot over force, in the plane in which the force is largest, positive
/// where it works against the tipping that the force alone would do [mm]; null without a sideways force.</param>
/// <param name="ShareOfArm">The same over the distance from slot to centre of resistance; 1 means bodily
/// movement.</param>
/// <param name="Kind">In one word.</param>
/// <remarks>
/// Limits, as shares of the arm: below 0.6 uncontrolled, to 0.9 controlled tipping, to 1.1 bodily, above root
/// movement: the middles between the usual teaching values 0.5, 0.7, 1.0 and 1.2 (Burstone 1962, from memory). One
/// number for a kind is a simplification (Savignano et al., Angle Orthod 2020;90:811).
/// </remarks>
public sealed record ToothMovement(
    double Stress, double Speed, double? MomentToForce, double? ShareOfArm, MovementKind Kind)
{
    private const double LeastForce = 1e-3;
    private const double Controlled = 0.6;
    private const double BodilyFrom = 0.9;
    private const double RootFrom = 1.1;

    /// <summary>Reads a load.</summary>
    /// <param name="tooth">Which tooth.</param>
    /// <param name="support">How it is held.</param>
    /// <param name="atSlot">The load at the slot in clinical words; neighbours and applied loads included.</param>
    /// <param name="atResistance">The same at the centre of resistance.</param>
    /// <param name="rate">Factor on the law.</param>
    internal static ToothMovement Read(
        ToothNumber tooth, ToothSupport support, ClinicalLoad atSlot, Six atResistance, double rate)
    {
        double stress = ToothAnswer.Stress(support, atResistance);
        Six twist = ToothAnswer.Twist(support, atResistance, rate);
        (double force, double moment) = Math.Abs(atSlot.LabialForce) >= Math.Abs(atSlot.MesialForce)
            ? (atSlot.LabialForce, -atSlot.TorqueMoment)
            : (atSlot.MesialForce, -atSlot.TipMoment);
        double? ratio = Math.Abs(force) > LeastForce ? moment / force : null;
        double? share = ratio / support.Arm;
        return new ToothMovement(
            stress, ToothAnswer.Size(support, twist), ratio, share, KindOf(tooth, support, stress, twist, share));
    }

    private static MovementKind KindOf(
        ToothNumber tooth, ToothSupport support, double stress, Six twist, double? share)
    {
        if (stress < MovementLaw.LeastStress)
            return MovementKind.None;

        double turning = Math.Abs(twist.Angular.Z) * support.TurningArms.Z;
        double along = twist.Linear.Z * ClinicalAxes.For(tooth).Jaw;
        double sideways = Math.Sqrt(
            Square(twist.Linear.X) + Square(twist.Linear.Y)
            + Square(twist.Angular.X * support.TurningArms.X) + Square(twist.Angular.Y * support.TurningArms.Y));
        if (turning > sideways && turning > Math.Abs(along))
            return MovementKind.Rotation;
        if (Math.Abs(along) > sideways)
            return along > 0 ? MovementKind.Extrusion : MovementKind.Intrusion;

        return share switch
        {
            null => MovementKind.Root,
            < Controlled => MovementKind.Tipping,
            < BodilyFrom => MovementKind.ControlledTipping,
            < RootFrom => MovementKind.Bodily,
            _ => MovementKind.Root,
        };
    }

    private static double Square(double x) => x * x;
}
