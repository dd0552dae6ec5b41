using Archwright.Dentition.ArchForms;
using Archwright.Dentition.Positions;
using Archwright.Dentition.Teeth;
using Archwright.Mechanics.Numerics;
using Archwright.Mechanics.Slots;
using Archwright.Treatment.Movement;

namespace Archwright.Treatment.Support;

/// <summary>How a tooth is held: where its centre of resistance lies and how it answers a load there.</summary>
/// <remarks>
/// The axes are those of the slot: mesiodistal (along), labiolingual (outward), long axis (third). The long axis is
/// taken along the slot's third axis; the prescribed torque and tip of a preadjusted slot, up to 17°, are left out
/// of it. Averages of textbooks; a person's centre of resistance differs by about a millimetre.
/// </remarks>
public sealed record ToothSupport
{
    private ToothSupport()
    {
    }

    /// <summary>The tooth.</summary>
    public required ToothNumber Tooth { get; init; }

    /// <summary>From the slot centre to the centre of resistance, along the axes of the slot [mm].</summary>
    public required Vector3 ToResistance { get; init; }

    /// <summary>Distance along the long axis from slot centre to centre of resistance [mm].</summary>
    public required double Arm { get; init; }

    /// <summary>Area that a force is divided by to have the mean compressive stress [mm²].</summary>
    public required double StressedArea { get; init; }

    /// <summary>Length of root in bone [mm].</summary>
    public required double EmbeddedRoot { get; init; }

    /// <summary>Squares of the lengths σ of the three axes: a force at distance a from the centre of resistance
    /// turns the tooth about a point σ²/a on the other side of it [mm²].</summary>
    public required Vector3 TurningSquares { get; init; }

    /// <summary>Arms at which a turn about each axis counts as a movement of the crown [mm].</summary>
    public required Vector3 TurningArms { get; init; }

    /// <summary>What the tooth gives way at once to a force at its centre of resistance [mm/N].</summary>
    public required Vector3 ShiftCompliance { get; init; }

    /// <summary>What it turns at once under a moment [rad/(N·mm)].</summary>
    public required Vector3 TurnCompliance { get; init; }

    /// <summary>The support of an average tooth.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The tables do not hold the tooth.</exception>
    /// <remarks>
    /// Stiffness of the ligament, a thin layer round a root of area A and embedded length L: sideways
    /// k = (A/t)(M+G)/2, about the two cross axes k L²/12, about the long axis k σ² with σ² from the root's section
    /// (<see cref="RootSection"/>; the roots of a molar stand apart and add the square of their distance), along the
    /// long axis (A/t)(G + (M−G) sin²α), α the taper. σ² of the law of movement is that of the stiffness.
    /// </remarks>
    public static ToothSupport Of(ToothNumber tooth)
    {
        Anatomy anatomy = Anatomy.Of(tooth);
        double root = anatomy.RootLength.Value - Ligament.CrestBelowNeck.Value;
        double area = anatomy.SupportArea.Value;
        double sideways = area * (Ligament.Normal + Ligament.Across) / 2;
        double lengthwise = root * root / 12;
        double crosswise = LongAxisSquare(tooth, anatomy);
        double axial = Axial(anatomy, root, area);
        double arm = anatomy.SlotToResistance.Value;
        double turning = MovementConstants.TurningArm.Value;
        double edge = turning * (arm + anatomy.SlotHeight.Value);
        Jaw jaw = tooth.IsUpper ? Jaw.Upper : Jaw.Lower;
        return new ToothSupport
        {
            Tooth = tooth,
            ToResistance = new Vector3(
                0, -DefaultArches.SlotOffset(jaw).Value, -ClinicalAxes.For(tooth).Jaw * arm),
            Arm = arm,
            StressedArea = MovementConstants.CanineArea.Value * area / MovementConstants.CanineSupport.Value,
            EmbeddedRoot = root,
            TurningSquares = new Vector3(lengthwise, lengthwise, crosswise),
            TurningArms = new Vector3(edge, edge, turning * anatomy.CrownWidth.Value / 2),
            ShiftCompliance = new Vector3(1 / sideways, 1 / sideways, 1 / axial),
            TurnCompliance = new Vector3(
                1 / (sideways * lengthwise), 1 / (sideways * lengthwise), 1 / (sideways * crosswise)),
        };
    }

    /// <summary>The centre of resistance of a tooth whose slot is there [mm].</summary>
    public Vector3 ResistanceOf(in SlotFrame slot) => slot.Centre + ToResistance.X * slot.Along
        + ToResistance.Y * slot.Outward + ToResistance.Z * slot.Third;

    private static double LongAxisSquare(ToothNumber tooth, Anatomy anatomy)
    {
        double width = anatomy.NeckWidth.Value;
        double depth = anatomy.NeckDepth.Value;
        if (!tooth.IsMolar)
            return RootSection.TurningOverShifting(width, depth);

        // Two or three roots, their middles a quarter of the neck from its axis, each about half as wide as the neck.
        return RootSection.TurningOverShifting(width / 2, depth / 2) + (width * width + depth * depth) / 32;
    }

    private static double Axial(Anatomy anatomy, double root, double area)
    {
        double radius = (anatomy.NeckWidth.Value + anatomy.NeckDepth.Value) / 4;
        double taper = radius * radius / (radius * radius + root * root);
        return area * (Ligament.Across + (Ligament.Normal - Ligament.Across) * taper);
    }
}
