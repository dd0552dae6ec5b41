using Archwright.Mechanics.Numerics;
using Archwright.Mechanics.Slots;

namespace Archwright.Mechanics.Engagement;

/// <summary>The engaged wire seen from its slots: how the loads on the teeth change when the slots move a
/// little.</summary>
/// <remarks>
/// At equilibrium, with the wire's unknowns q, the active restraints c with multipliers λ and the slots' motions x,
/// <code>
///     K dq + Gᵀ dλ + (λ c)_qx dx = 0,     G dq + c_x dx = 0,
///     dW = −[(λ c)_xx dx + (λ c)_xq dq + c_xᵀ dλ],
/// </code>
/// W the loads on the teeth. The factor at hand is that of K + ρ GᵀG, so dλ is found by repeating dλ ← dλ + ρ (G dq +
/// c_x dx), which gains two digits or so a sweep. The derivatives by x are central differences of closed formulas at a
/// fixed shape of the wire; nothing is solved anew for them.
/// </remarks>
internal static class Condensation
{
    private const double Step = 1e-5;
    private const int MostSweeps = 12;
    private const double Tolerance = 1e-9;

    /// <summary>Row-major 6n × 6n; see <see cref="Engager.TangentStiffness"/>.</summary>
    public static double[] Stiffness(Equilibrium rod, int slots)
    {
        rod.Evaluate(rod.State, out _);
        rod.Factor.CopyFrom(rod.Tangent);
        rod.Factor.AddToDiagonal(1e-9);
        if (!rod.Factor.Factor())
            throw new InvalidOperationException("The engaged wire is not stable; it has no stiffness to give.");

        int size = 6 * slots;
        int unknowns = rod.State.Length;
        int[] active = ActiveRows(rod);
        var byMotion = new double[size * unknowns];
        var gapByMotion = new double[size * active.Length];
        var stiffness = new double[size * size];
        for (int j = 0; j < size; j++)
        {
            Differentiate(
                rod, active, j, byMotion.AsSpan(j * unknowns, unknowns), gapByMotion.AsSpan(j * active.Length,
                    active.Length),
                stiffness, size);
        }

        var motion = new double[unknowns];
        var multipliers = new double[active.Length];
        for (int j = 0; j < size; j++)
        {
            ReadOnlySpan<double> right = byMotion.AsSpan(j * unknowns, unknowns);
            ReadOnlySpan<double> gaps = gapByMotion.AsSpan(j * active.Length, active.Length);
            Respond(rod, active, right, gaps, motion, multipliers);
            for (int i = 0; i < size; i++)
            {
                double sum = Spans.Dot(byMotion.AsSpan(i * unknowns, unknowns), motion)
                    + Spans.Dot(gapByMotion.AsSpan(i * active.Length, active.Length), multipliers);
                stiffness[i * size + j] -= sum;
            }
        }

        return stiffness;
    }

    private static int[] ActiveRows(Equilibrium rod)
    {
        var active = new List<int>();
        for (int i = 0; i < rod.Contacts.RowCount; i++)
        {
            if (rod.Contacts.IsActive(i))
                active.Add(i);
        }

        return [.. active];
    }

    // Column j: slot j/6 shifts along (0–2) or turns about (3–5) an axis of the case.
    private static void Differentiate(
        Equilibrium rod, int[] active, int j, Span<double> byMotion, Span<double> gaps,
        double[] stiffness, int size)
    {
        int slot = j / 6;
        SlotFrame ahead = Moved(rod.Frames[slot], j % 6, Step);
        SlotFrame behind = Moved(rod.Frames[slot], j % 6, -Step);
        for (int a = 0; a < active.Length; a++)
        {
            ref readonly ContactRow row = ref rod.Contacts.Rows[active[a]];
            if (row.Slot != slot || row.Kind == RowKind.Pin)
                continue;

            double weight = row.Effective / (2 * Step);
            rod.Contacts.WithSlotAt(active[a], rod.State, ahead, rod.Mesh, out double more, out int element)
                .AddTo(byMotion, element, weight);
            rod.Contacts.WithSlotAt(active[a], rod.State, behind, rod.Mesh, out double less, out element)
                .AddTo(byMotion, element, -weight);
            gaps[a] = (more - less) / (2 * Step);

            (Vector3 f1, Vector3 m1) = rod.Contacts.OnToothAt(active[a], rod.State, ahead, rod.Mesh);
            (Vector3 f0, Vector3 m0) = rod.Contacts.OnToothAt(active[a], rod.State, behind, rod.Mesh);
            AddColumn(stiffness, size, slot, j, (f1 - f0) / (2 * Step), (m1 - m0) / (2 * Step));
        }
    }

    private static void AddColumn(double[] stiffness, int size, int slot, int column, Vector3 force, Vector3 moment)
    {
        int row = 6 * slot * size + column;
        stiffness[row] += force.X;
        stiffness[row + size] += force.Y;
        stiffness[row + 2 * size] += force.Z;
        stiffness[row + 3 * size] += moment.X;
        stiffness[row + 4 * size] += moment.Y;
        stiffness[row + 5 * size] += moment.Z;
    }

    private static SlotFrame Moved(in SlotFrame frame, int component, double amount)
    {
        Vector3 unit = new(component % 3 == 0 ? amount : 0, component % 3 == 1 ? amount : 0, component % 3 == 2
            ? amount : 0);
        return component < 3 ? frame.Moved(unit, default) : frame.Moved(default, unit);
    }

    // dq and dλ for one column.
    private static void Respond(
        Equilibrium rod, int[] active, ReadOnlySpan<double> right, ReadOnlySpan<double> gaps,
        double[] motion, double[] multipliers)
    {
        Array.Clear(multipliers);
        double rho = rod.Contacts.Penalty;
        for (int sweep = 0; sweep < MostSweeps; sweep++)
        {
            for (int i = 0; i < motion.Length; i++)
                motion[i] = -right[i];

            for (int a = 0; a < active.Length; a++)
            {
                (int element, ElementVector derivative) = rod.Contacts.Derivative(active[a]);
                bool spring = rod.Contacts.Rows[active[a]].IsSpring;
                double carried = spring ? 0 : multipliers[a];
                derivative.AddTo(motion, element, -(carried + Share(rod, active[a], rho) * gaps[a]));
            }

            rod.Factor.Solve(motion);
            double change = 0;
            double largest = 0;
            for (int a = 0; a < active.Length; a++)
            {
                (int element, ElementVector derivative) = rod.Contacts.Derivative(active[a]);
                double slip = derivative.Dot(motion, element) + gaps[a];
                double step = Share(rod, active[a], rho) * slip;
                bool spring = rod.Contacts.Rows[active[a]].IsSpring;
                change = Math.Max(change, spring ? 0 : Math.Abs(step));
                multipliers[a] = spring ? step : multipliers[a] + step;
                largest = Math.Max(largest, Math.Abs(multipliers[a]));
            }

            if (change <= Tolerance * largest)
                break;
        }
    }

    private static double Share(Equilibrium rod, int row, double rho) =>
        rod.Contacts.Rows[row].IsSpring ? rod.Contacts.SpringOf(row) : rho;
}
