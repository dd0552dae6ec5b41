using System.Runtime.Intrinsics;
using Archwright.Mechanics.Alloys;
using Archwright.Mechanics.Numerics;

namespace Archwright.Mechanics.Sections;

/// <summary>Fibres of a cross-section: where they are, how much area each stands for, and how far it is sheared by
/// twist.</summary>
/// <remarks>
/// <para>Area and both second moments of the grid are those of the section to rounding, and so is the torsion constant,
/// so that an elastic wire of fibres has exactly the closed stiffnesses.</para>
/// <para>Round: rings at Gauss points in r², equally spaced around, every other ring turned by half a space.
/// Rectangular: a quarter filled by a lattice, one point for each fraction of the thickness and one for each fraction
/// of the width, and mirrored; so n points make n layers over either side, where rows and columns make √n. How many
/// fibres are enough: docs/theory/alloys.md.</para>
/// <para>The shear of a fibre is lever · twist; the lever is |∇φ| of Prandtl's stress function φ, for which
/// J = ∫ |∇φ|² dA. For the circle it is the radius. For a rectangle it is that of sharp edges (S. P. Timoshenko, J. N.
/// Goodier, <i>Theory of Elasticity</i>, chapter on torsion, from memory), scaled to the J of the rounded section.
/// </para>
/// </remarks>
internal sealed class FibreGrid
{
    /// <summary>Usual rings of a round wire, and points a ring.</summary>
    public const int Rings = 5, Around = 16;

    /// <summary>Usual points in a quarter of a rectangular wire, and the lattice's generator.</summary>
    public const int Quarter = 18, Generator = 7;

    private FibreGrid(int count)
    {
        Vectors = (count + Lanes - 1) / Lanes;
        OverWidth = new double[Lanes * Vectors];
        OverThickness = new double[Lanes * Vectors];
        Area = new double[Lanes * Vectors];
        Lever = new double[Lanes * Vectors];
    }

    /// <summary>Fibres a vector.</summary>
    public static int Lanes => Vector256<double>.Count;

    /// <summary>Number of vectors of four; the last may be filled up with fibres of no area.</summary>
    public int Vectors { get; }

    /// <summary>Fibres, with those that fill up.</summary>
    public int Count => Lanes * Vectors;

    /// <summary>Coordinate along the width (second director) [mm].</summary>
    public double[] OverWidth { get; }

    /// <summary>Coordinate along the thickness (third director) [mm].</summary>
    public double[] OverThickness { get; }

    /// <summary>[mm²]</summary>
    public double[] Area { get; }

    /// <summary>Shear a unit of twist, times √(G/E) [mm].</summary>
    public double[] Lever { get; }

    /// <summary>Farthest fibre along the width, along the thickness, and largest lever [mm].</summary>
    public (double Width, double Thickness, double Lever) Reach { get; private set; }

    /// <summary>The usual grid.</summary>
    public static FibreGrid For(Section section, Alloy alloy) =>
        section.IsRound ? Round(section, alloy, Rings, Around) : Rectangular(section, alloy, Quarter, Generator);

    /// <summary>A grid of rings.</summary>
    /// <param name="section">Round.</param>
    /// <param name="alloy">For the ratio of its moduli.</param>
    /// <param name="rings">Rings.</param>
    /// <param name="around">Points a ring, even.</param>
    public static FibreGrid Round(Section section, Alloy alloy, int rings, int around)
    {
        var grid = new FibreGrid(rings * around);
        grid.PutRings(section.Thickness / 2, rings, around);
        for (int i = 0; i < grid.Count; i++)
            grid.Lever[i] = Math.Sqrt(Square(grid.OverWidth[i]) + Square(grid.OverThickness[i]));

        grid.Match(section, Math.Sqrt(alloy.Shear / alloy.Young));
        return grid;
    }

    /// <summary>A grid of four mirrored lattices.</summary>
    /// <param name="section">Rectangular.</param>
    /// <param name="alloy">For the ratio of its moduli.</param>
    /// <param name="quarter">Points in a quarter.</param>
    /// <param name="generator">Has no divisor in common with <paramref name="quarter"/>.</param>
    public static FibreGrid Rectangular(Section section, Alloy alloy, int quarter, int generator)
    {
        var grid = new FibreGrid(4 * quarter);
        grid.PutQuarters(section, quarter, generator);
        for (int i = 0; i < grid.Count; i++)
        {
            grid.Lever[i] = RectangleShear.Lever(
                section.Width, section.Thickness, grid.OverWidth[i], grid.OverThickness[i]);
        }

        grid.Match(section, Math.Sqrt(alloy.Shear / alloy.Young));
        return grid;
    }

    private void PutRings(double radius, int rings, int around)
    {
        (double[] at, double[] weight) = GaussRule.Legendre(rings);
        for (int i = 0; i < rings; i++)
        {
            double r = radius * Math.Sqrt(at[i]);
            for (int j = 0; j < around; j++)
            {
                double angle = 2 * Math.PI * (j + 0.5 * ((rings - 1 - i) % 2)) / around;
                Put(i * around + j, r * Math.Cos(angle), r * Math.Sin(angle), weight[i] / around);
            }
        }
    }

    // Each point stands for an equal share of the outline's width at its height.
    private void PutQuarters(Section section, int quarter, int generator)
    {
        double half = section.Thickness / 2;
        double r = section.EdgeRadius;
        for (int i = 0; i < quarter; i++)
        {
            double y = half * (i + 0.5) / quarter;
            double over = Math.Max(y - (half - r), 0);
            double reach = section.Width / 2 - r + Math.Sqrt(r * r - over * over);
            double x = reach * ((i + 0.5) * generator / quarter % 1);
            for (int k = 0; k < 4; k++)
                Put(4 * i + k, k % 2 == 0 ? x : -x, k < 2 ? y : -y, reach);
        }
    }

    private void Put(int fibre, double overWidth, double overThickness, double area)
    {
        OverWidth[fibre] = overWidth;
        OverThickness[fibre] = overThickness;
        Area[fibre] = area;
    }

    // Area, second moments and torsion constant come out exactly.
    private void Match(Section section, double shearRatio)
    {
        Scale(Area, section.Area / Area.Sum());
        Scale(OverWidth, Math.Sqrt(section.BendingOverWidth / Second(OverWidth)));
        Scale(OverThickness, Math.Sqrt(section.BendingOverThickness / Second(OverThickness)));
        Scale(Lever, shearRatio * Math.Sqrt(section.Torsion / Second(Lever)));
        Reach = (OverWidth.Max(Math.Abs), OverThickness.Max(Math.Abs), Lever.Max());
    }

    private double Second(double[] at)
    {
        double sum = 0;
        for (int i = 0; i < at.Length; i++)
            sum += Area[i] * Square(at[i]);

        return sum;
    }

    private static double Square(double x) => x * x;

    private static void Scale(double[] values, double by)
    {
        for (int i = 0; i < values.Length; i++)
            values[i] *= by;
    }
}
