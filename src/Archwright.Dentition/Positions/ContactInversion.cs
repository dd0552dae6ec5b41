using System.Collections.Immutable;
using System.Diagnostics;
using Archwright.Dentition.Teeth;
using Archwright.Mechanics.Numerics;
using Archwright.Mechanics.Slots;

namespace Archwright.Dentition.Positions;

/// <summary>From five contact displacements to positions of the four incisors that have them.</summary>
/// <remarks>
/// Five distances do not settle four teeth: the answer is a plausible one, not the only one. The rule:
/// the canines stay; each incisor may move labially (ℓ), mesially (m) and turn about its long axis (ρ), in the
/// plane of the arch; at each contact the left tooth's copy of the contact point shall lie the given distance
/// labially or lingually of the right tooth's, and not be drawn apart along the arch (crowded crowns slip past each
/// other):     stepᵢ(u) = sᵢ dᵢ nᵢ,  i = 1 … 5,  nᵢ across the arch, u = (ℓ, m, ρ·half crown width) of four incisors:
/// ten equations, twelve unknowns, of which the shortest u is taken (shifts and edges move least). Which of the 2⁵
/// choices of the signs sᵢ: the one with the shortest u; within a tenth of that, the one whose lateral incisors
/// stand farthest lingually, as crowded ones mostly do (common practice, no source).
/// Solved by Gauss–Newton on the shortest solution, u ← J⁺(J u − F), in at most 60 steps; where that finds none
/// (large displacements), from the planned places in eight stages by the least change, u ← u − J⁺F.
/// </remarks>
internal sealed class ContactInversion
{
    private const int Contacts = 5;
    private const int Unknowns = 12;
    private const int MostSteps = 60;
    private const int Stages = 8;
    private const double Tolerance = 1e-11;
    private const double LargestTurn = 1.2;

    private readonly FrontTooth[] teeth;
    private readonly Vector3[] contacts;
    private readonly Vector3[] across;
    private readonly Vector3[] alongArch;

    /// <summary>Prepares six front teeth, right canine to left canine, by their planned slots.</summary>
    public ContactInversion(IReadOnlyList<ToothNumber> front, IReadOnlyList<SlotFrame> rest)
    {
        Debug.Assert(front.Count == 6 && rest.Count == 6, "Six front teeth are wanted.");
        teeth = [.. front.Zip(rest, (tooth, frame) => new FrontTooth(tooth, frame))];
        IEnumerable<int> pairs = Enumerable.Range(0, Contacts);
        contacts = [.. pairs.Select(i => ContactPoints.Planned(front[i], rest[i], front[i + 1], rest[i + 1]))];
        across = [.. pairs.Select(i => (rest[i].Outward + rest[i + 1].Outward).Unit())];
        alongArch = [.. pairs.Select(i => Vector3.Cross(across[i], rest[i].Third))];
    }

    /// <summary>Offsets of the six teeth, canines zero.</summary>
    /// <param name="displacements">Five distances, from the patient's right to the left, zero or more [mm].</param>
    /// <returns>Null when average crowns cannot stand so.</returns>
    public ImmutableArray<ClinicalOffset>? Solve(IReadOnlyList<double> displacements)
    {
        List<double[]> wanted =
        [
            .. Enumerable.Range(0, 1 << Contacts)
                .Select(pattern => Signed(displacements, pattern)).OfType<double[]>(),
        ];
        List<double[]> found = [.. wanted.Select(Shortest).OfType<double[]>()];
        if (found.Count == 0)
            found = [.. wanted.Select(Nearest).OfType<double[]>()];
        if (found.Count == 0)
            return null;

        double shortest = found.Min(Size);
        return Offsets(found.Where(u => Size(u) <= 1.1 * shortest + 1e-9).MinBy(Laterals)!);
    }

    private static double Size(double[] u) => u.Sum(x => x * x);

    // Labial shifts of the right and the left lateral incisor.
    private static double Laterals(double[] u) => u[0] + u[9];

    // Bit i of the pattern is the sign of displacement i; a zero has one sign only.
    private static double[]? Signed(IReadOnlyList<double> displacements, int pattern)
    {
        var signed = new double[Contacts];
        for (int i = 0; i < Contacts; i++)
        {
            bool negative = (pattern >> i & 1) == 1;
            if (negative && displacements[i] == 0)
                return null;
            signed[i] = negative ? -displacements[i] : displacements[i];
        }

        return signed;
    }

    /// <summary>The shortest unknowns, all at once.</summary>
    private double[]? Shortest(double[] wanted) => Settle(wanted, new double[Unknowns], keepShort: true);

    /// <summary>Unknowns reached from the planned places in small stages, each by the least change: for
    /// displacements so large that the shortest ones are not found.</summary>
    private double[]? Nearest(double[] wanted)
    {
        double[]? u = new double[Unknowns];
        for (int stage = 1; stage <= Stages && u is not null; stage++)
        {
            double share = (double)stage / Stages;
            u = Settle([.. wanted.Select(displacement => share * displacement)], u, keepShort: false);
        }

        return u;
    }

    private double[]? Settle(double[] wanted, double[] start, bool keepShort)
    {
        double[] u = start;
        var residual = new double[2 * Contacts];
        var slope = new double[2 * Contacts, Unknowns];
        for (int step = 0; step < MostSteps; step++)
        {
            Evaluate(u, wanted, residual, slope);
            if (residual.Max(Math.Abs) < Tolerance)
                return Turns(u).All(turn => Math.Abs(turn) < LargestTurn) ? u : null;
            if (Next(u, residual, slope, keepShort) is not double[] next || next.Any(x => !(Math.Abs(x) < 50)))
                return null;
            u = next;
        }

        return null;
    }

    // The shortest u, or the shortest change of u, that meets the equations linearised at u.
    private static double[]? Next(double[] u, double[] residual, double[,] slope, bool keepShort)
    {
        var target = new double[2 * Contacts];
        for (int i = 0; i < target.Length; i++)
        {
            target[i] = -residual[i];
            for (int k = 0; keepShort && k < Unknowns; k++)
                target[i] += slope[i, k] * u[k];
        }

        double[]? found = SmallSystem.Shortest(slope, target);
        return keepShort || found is null ? found : [.. u.Zip(found, (before, change) => before + change)];
    }

    /// <summary>Two equations a contact, across the arch and along it [mm], and their derivatives.</summary>
    private void Evaluate(double[] u, double[] wanted, double[] residual, double[,] slope)
    {
        Array.Clear(slope);
        for (int i = 0; i < Contacts; i++)
        {
            Vector3 step = Carry(i, tooth: i + 1, +1, u, slope) - Carry(i, tooth: i, -1, u, slope);
            residual[2 * i] = Vector3.Dot(step, across[i]) - wanted[i];
            residual[2 * i + 1] = Vector3.Dot(step, alongArch[i]);
        }
    }

    /// <summary>Where a tooth takes its copy of a contact point; its derivatives go into the slope with a
    /// sign.</summary>
    private Vector3 Carry(int contact, int tooth, int sign, double[] u, double[,] slope)
    {
        FrontTooth one = teeth[tooth];
        if (tooth is 0 or 5)
            return contacts[contact];

        int first = 3 * (tooth - 1);
        Vector3 arm = (contacts[contact] - one.Centre).Turned(u[first + 2] / one.Lever * one.RotationAxis);
        Put(slope, contact, first, sign * one.Labial);
        Put(slope, contact, first + 1, sign * one.Mesial);
        Put(slope, contact, first + 2, sign / one.Lever * Vector3.Cross(one.RotationAxis, arm));
        return one.Centre + u[first] * one.Labial + u[first + 1] * one.Mesial + arm;
    }

    private void Put(double[,] slope, int contact, int unknown, Vector3 rate)
    {
        slope[2 * contact, unknown] += Vector3.Dot(rate, across[contact]);
        slope[2 * contact + 1, unknown] += Vector3.Dot(rate, alongArch[contact]);
    }

    private IEnumerable<double> Turns(double[] u) =>
        Enumerable.Range(1, 4).Select(tooth => u[3 * tooth - 1] / teeth[tooth].Lever);

    private ImmutableArray<ClinicalOffset> Offsets(double[] u) =>
    [
        ClinicalOffset.Zero,
        .. Enumerable.Range(1, 4).Select(tooth => new ClinicalOffset(
            Labial: u[3 * tooth - 3],
            Mesial: u[3 * tooth - 2],
            Rotation: u[3 * tooth - 1] / teeth[tooth].Lever)),
        ClinicalOffset.Zero,
    ];

    /// <summary>A front tooth in its planned place: slot centre, directions, and half of its crown's width.</summary>
    private readonly record struct FrontTooth(
        Vector3 Centre, Vector3 Labial, Vector3 Mesial, Vector3 RotationAxis, double Lever)
    {
        public FrontTooth(ToothNumber tooth, SlotFrame rest)
            : this(
                rest.Centre,
                ClinicalAxes.Labial(rest),
                ClinicalAxes.For(tooth).Mesial(rest),
                ClinicalAxes.For(tooth).RotationAxis(rest),
                Anatomy.Of(tooth).CrownWidth.Value / 2)
        {
        }
    }
}
