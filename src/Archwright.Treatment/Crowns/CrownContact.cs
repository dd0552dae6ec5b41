using Archwright.Dentition.Teeth;
using Archwright.Mechanics.Numerics;
using Archwright.Mechanics.Slots;

namespace Archwright.Treatment.Crowns;

/// <summary>Two neighbouring crowns that may touch but not pass through each other.</summary>
/// <remarks>
/// The distance of their outlines seen from the biting plane; where it would be less than nil they push each other
/// apart along the shortest way, with a stiffness that is high against that of a tooth in its ligament (about 100
/// N/mm) and sets in over a twentieth of a millimetre, so that the force changes smoothly. Average crowns laid on
/// measured positions may overlap: the overlap of the planned places, or of the first places if deeper, counts as
/// touching.
/// </remarks>
internal sealed class CrownContact
{
    private const double Stiffness = 300;
    private const double Onset = 0.05;

    private readonly CrownOutline _first;
    private readonly CrownOutline _second;
    private readonly double _overlap;

    /// <param name="first">Tooth nearer to the patient's right.</param>
    /// <param name="second">The next one with a slot.</param>
    /// <param name="slots">Places of both slots in which the crowns are taken to fit beside each other.</param>
    public CrownContact(ToothNumber first, ToothNumber second, params ReadOnlySpan<(SlotFrame, SlotFrame)> slots)
    {
        _first = CrownOutline.Of(first);
        _second = CrownOutline.Of(second);
        double least = 0;
        foreach ((SlotFrame one, SlotFrame other) in slots)
            least = Math.Min(least, Distance(one, other, out _, out _));
        _overlap = -least;
    }

    /// <summary>Room between the crowns [mm]; negative where they press.</summary>
    public double Room(in SlotFrame first, in SlotFrame second) => Distance(first, second, out _, out _) + _overlap;

    /// <summary>How the crowns push each other.</summary>
    /// <param name="first">Slot of the first tooth.</param>
    /// <param name="second">Slot of the second.</param>
    /// <param name="push">What to do with it.</param>
    /// <returns>False when they do not touch.</returns>
    public bool TryPush(in SlotFrame first, in SlotFrame second, out CrownPush push)
    {
        double depth = -(Distance(first, second, out Vector3 at, out Vector3 normal) + _overlap);
        push = default;
        if (!(depth > 0))
            return false;

        bool slight = depth < Onset;
        double force = slight ? Stiffness * depth * depth / (2 * Onset) : Stiffness * (depth - Onset / 2);
        push = new CrownPush(force, slight ? Stiffness * depth / Onset : Stiffness, at, normal);
        return true;
    }

    private double Distance(in SlotFrame first, in SlotFrame second, out Vector3 at, out Vector3 normal)
    {
        Vector3 a = _first.Middle(first);
        Vector3 b = _second.Middle(second);
        Vector3 da = _first.Half(first);
        Vector3 db = _second.Half(second);
        (double t, double u) = NearestPoints.Between(a, da, b, db);
        Vector3 p = a + t * da;
        Vector3 q = b + u * db;
        Vector3 across = Level(q - p);
        double distance = across.Length;
        // Middles that coincide have no direction: push along the arch.
        normal = distance > 1e-6 ? across / distance : Level(first.Along).Unit();
        at = (p + q) * 0.5;
        return distance - _first.Radius - _second.Radius;
    }

    private static Vector3 Level(Vector3 v) => v with { Z = 0 };
}

/// <summary>Two crowns pressing.</summary>
/// <param name="Force">[N]</param>
/// <param name="Stiffness">Rise of the force with closeness [N/mm].</param>
/// <param name="At">Where they touch [mm].</param>
/// <param name="Normal">Direction in which the second crown is pushed; the first is pushed the other way.</param>
internal readonly record struct CrownPush(double Force, double Stiffness, Vector3 At, Vector3 Normal);
