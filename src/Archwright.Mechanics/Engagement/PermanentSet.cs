using Archwright.Mechanics.Numerics;
using Archwright.Mechanics.Rods;
using Archwright.Mechanics.Sections;

namespace Archwright.Mechanics.Engagement;

/// <summary>How far a wire stays bent when it is taken out.</summary>
/// <remarks>
/// A wire that nothing holds carries nothing anywhere, so each section keeps the curvature and twist that are left in
/// it by itself: κ about the width and thickness directions, τ about the tangent. To first order in the turn θ,
/// <code>
///     θ′ = τ D1 + κt D2 + κw D3,     u′ = ε D1 + θ × D1,
/// </code>
/// and the wire is then laid on its rest shape as closely as it can be, between the first slot and the last (least
/// squares of shift and turn). The set is the largest distance left. Turns of 0.3 rad make it wrong by some 3 %.
/// </remarks>
internal static class PermanentSet
{
    private const double Least = 1e-9;

    /// <summary>Largest distance from the rest shape after release [mm].</summary>
    public static double Of(Equilibrium rod, Layout layout)
    {
        if (!rod.Law.MayStayBent)
            return 0;

        int stations = rod.Law.Stations;
        var places = new List<Vector3>();
        var shifts = new List<Vector3>();
        Vector3 turn = default;
        Vector3 shift = default;
        double before = double.NaN;
        for (int i = 0; i < stations; i++)
        {
            (double s, SectionStrain left) = rod.Law.Released(i);
            if (s < layout.Places[0] || s > layout.Places[^1])
                continue;

            double step = double.IsNaN(before) ? 0 : s - before;
            before = s;
            (Vector3 point, Vector3 d1) = rod.Rest.At(s);
            Vector3 d2 = rod.Rest.OutwardAt(s, d1);
            Vector3 d3 = Vector3.Cross(d1, d2);
            turn += (d1 * left.Twist + d2 * left.OverThickness + d3 * left.OverWidth) * step;
            shift += (d1 * left.Axial + Vector3.Cross(turn, d1)) * step;
            places.Add(point);
            shifts.Add(shift);
        }

        return LargestAfterFit(places, shifts);
    }

    private static double LargestAfterFit(List<Vector3> places, List<Vector3> shifts)
    {
        if (shifts.All(shift => shift.Length < Least))
            return 0;

        Vector3 middle = places.Aggregate(default(Vector3), (sum, place) => sum + place) / places.Count;
        Span<double> matrix = stackalloc double[36];
        Span<double> best = stackalloc double[6];
        Span<double> row = stackalloc double[6];
        matrix.Clear();
        best.Clear();
        for (int i = 0; i < places.Count; i++)
        {
            Vector3 arm = places[i] - middle;
            for (int axis = 0; axis < 3; axis++)
            {
                Row(arm, axis, row);
                double wanted = axis == 0 ? shifts[i].X : axis == 1 ? shifts[i].Y : shifts[i].Z;
                for (int a = 0; a < 6; a++)
                {
                    best[a] += row[a] * wanted;
                    for (int b = 0; b < 6; b++)
                        matrix[6 * a + b] += row[a] * row[b];
                }
            }
        }

        // A straight wire may be turned about itself at will.
        for (int a = 0; a < 6; a++)
            matrix[7 * a] += Least * places.Count;

        DenseSystem.Solve(matrix, best);
        var move = new Vector3(best[0], best[1], best[2]);
        var turn = new Vector3(best[3], best[4], best[5]);
        double largest = 0;
        for (int i = 0; i < places.Count; i++)
            largest = Math.Max(largest, (shifts[i] - move - Vector3.Cross(turn, places[i] - middle)).Length);

        return largest;
    }

    // One component of move + turn × arm.
    private static void Row(Vector3 arm, int axis, Span<double> row)
    {
        row.Clear();
        row[axis] = 1;
        switch (axis)
        {
            case 0:
                row[4] = arm.Z;
                row[5] = -arm.Y;
                break;
            case 1:
                row[5] = arm.X;
                row[3] = -arm.Z;
                break;
            default:
                row[3] = arm.Y;
                row[4] = -arm.X;
                break;
        }
    }
}
