using Archwright.Mechanics.Numerics;
using Archwright.Mechanics.Slots;

namespace Archwright.Dentition.Outlines;

/// <summary>Outlines of crowns as points of the case. Sizes are those of the anatomy table; the outlines are drawn
/// freely, to tell a canine from a molar at a glance.</summary>
public static class CrownShape
{
    private const int Points = 48;

    /// <summary>The crown as it is seen from its biting surface.</summary>
    /// <param name="crown">Its size.</param>
    /// <param name="slot">Where its slot is.</param>
    /// <remarks>A rounded rectangle |u/a|ⁿ + |v/b|ⁿ = 1; the exponent makes incisors oval and molars square. Labial of
    /// the middle it is a little wider than lingual of it.</remarks>
    public static Vector3[] FromBelow(Crown crown, SlotFrame slot)
    {
        double exponent = crown.Position >= 6 ? 3.2 : crown.Position >= 4 ? 2.5 : 2.3;
        double taper = crown.Position <= 3 ? 0.22 : 0.1;
        var outline = new Vector3[Points];
        for (int i = 0; i < Points; i++)
        {
            (double sin, double cos) = Math.SinCos(2 * Math.PI * i / Points);
            double u = Math.CopySign(Math.Pow(Math.Abs(cos), 2 / exponent), cos);
            double v = Math.CopySign(Math.Pow(Math.Abs(sin), 2 / exponent), sin);
            double along = u * crown.Width / 2 * (1 + taper * (v - 1) / 2);
            double outward = (v - 1) * crown.Depth / 2 - crown.SlotToFace;
            outline[i] = slot.Centre + along * slot.Along + outward * slot.Outward;
        }

        return outline;
    }

    /// <summary>The crown as it is seen from its labial face.</summary>
    /// <param name="crown">Its size.</param>
    /// <param name="slot">Where its slot is.</param>
    /// <param name="occlusal">Unit vector toward the biting plane.</param>
    public static Vector3[] FromFront(Crown crown, SlotFrame slot, Vector3 occlusal)
    {
        (double Along, double Up)[] profile = Profile(crown.Position);
        Vector3 face = slot.Centre - crown.SlotToFace * slot.Outward;
        return
        [
            .. profile.Select(p => face
                + p.Along * crown.Width / 2 * slot.Along
                + (crown.SlotToEdge - (1 - p.Up) * crown.Height) * occlusal),
        ];
    }

    // Half widths (-1 to 1) against height (0 neck, 1 edge or cusp), once round.
    private static (double Along, double Up)[] Profile(int position)
    {
        (double Along, double Up)[] biting = position switch
        {
            1 or 2 => [(0.97, 0.90), (0.86, 0.985), (0.6, 1), (-0.6, 1), (-0.86, 0.985), (-0.97, 0.90)],
            3 => [(0.97, 0.72), (0.72, 0.84), (0.16, 0.99), (0, 1), (-0.16, 0.99), (-0.72, 0.84), (-0.97, 0.72)],
            4 or 5 =>
            [
                (0.98, 0.72), (0.78, 0.83), (0.2, 0.985), (0, 1), (-0.2, 0.985), (-0.78, 0.83), (-0.98, 0.72),
            ],
            _ =>
            [
                (0.98, 0.75), (0.86, 0.9), (0.5, 1), (0.14, 0.9), (0, 0.84), (-0.14, 0.9), (-0.5, 1), (-0.86, 0.9),
                (-0.98, 0.75),
            ],
        };
        double neck = position >= 6 ? 0.86 : 0.68;
        (double Along, double Up)[] cervical =
        [
            (-neck - 0.05, 0.2), (-neck * 0.86, 0.06), (-neck * 0.45, 0.0), (neck * 0.45, 0.0), (neck * 0.86, 0.06),
            (neck + 0.05, 0.2),
        ];
        return [(1, 0.6), .. biting, (-1, 0.6), .. cervical];
    }
}
