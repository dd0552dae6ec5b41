using Archwright.Mechanics.Numerics;

namespace Archwright.Mechanics.Slots;

/// <summary>Force and moment of the wire <b>on the tooth</b>, in the frame of the case.</summary>
/// <param name="Force">[N]</param>
/// <param name="Moment">About <paramref name="About"/> [N·mm].</param>
/// <param name="About">The point that the moment refers to [mm].</param>
public readonly record struct Wrench(Vector3 Force, Vector3 Moment, Vector3 About)
{
    /// <summary>The same load, its moment taken about another point: M′ = M + (about − point) × F.</summary>
    public Wrench MovedTo(Vector3 point) => new(Force, Moment + Vector3.Cross(About - point, Force), point);
}
