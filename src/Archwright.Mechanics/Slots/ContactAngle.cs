using Archwright.Mechanics.Numerics;

namespace Archwright.Mechanics.Slots;

/// <summary>How far a straight wire may lie aslant in a slot before it touches both walls.</summary>
public static class ContactAngle
{
    /// <summary>Critical contact angle: the angle between wire and slot at which a straight wire touches the two walls
    /// at the opposite ends of the slot, and beyond which it binds [rad].</summary>
    /// <param name="slotHeight">Opening across which the wire is aslant: the height for tip, the depth for rotation
    /// [mm].</param>
    /// <param name="slotWidth">Mesiodistal length of the channel [mm].</param>
    /// <param name="wireSize">Side of the wire across that opening, the diameter of a round one [mm].</param>
    /// <exception cref="ArgumentOutOfRangeException">A size is not a positive, finite length, or the wire is larger
    /// than the opening.</exception>
    /// <remarks>The root of H cos θ − W sin θ = d: R. P. Kusy, J. Q. Whitley, "Resistance to sliding of orthodontic
    /// appliances in the dry and wet states: influence of archwire alloy, interbracket distance, and bracket
    /// engagement", J. Biomed. Mater. Res. 2000 (equation found, scribd.com/document/712574363).
    /// With t = tan(θ/2) it is a quadratic, whose positive root is t = (H − d)/(W + √(W² + H² − d²)).</remarks>
    public static double CriticalContactAngle(double slotHeight, double slotWidth, double wireSize)
    {
        Require.PositiveLength(slotHeight);
        Require.PositiveLength(slotWidth);
        Require.PositiveLength(wireSize);
        if (wireSize > slotHeight)
        {
            throw new ArgumentOutOfRangeException(
                nameof(wireSize), wireSize, $"It does not go into an opening of {slotHeight} mm.");
        }

        double clearance = slotHeight - wireSize;
        double root = Math.Sqrt(slotWidth * slotWidth + clearance * (slotHeight + wireSize));
        return 2 * Math.Atan(clearance / (slotWidth + root));
    }
}
