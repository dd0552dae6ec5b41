using MathNet.Numerics.Integration;
using MathNet.Numerics.LinearAlgebra;

namespace Archwright.Mechanics.Tests.Sections;

/// <summary>
/// Bounds from both sides on the torsion constant of a rectangle with rounded edges, independent of the method under
/// test: Ritz's method with polynomials and a general library's linear algebra.
/// <para>
/// Below: Prandtl's principle. Any φ that is nil on the edge gives 4 ∫ φ − ∫ |∇φ|² ≤ J.
/// Above: the warping principle. Any ψ gives J ≤ ∫ (∂ψ/∂x − y)² + (∂ψ/∂y + x)² = ∫ |∇ψ|² + 2 ∫ ∂ψ/∂θ + ∫ x² + y².
/// S. P. Timoshenko, J. N. Goodier, Theory of Elasticity, chapters on torsion and on energy methods (from memory).
/// </para>
/// <para>
/// A quarter of the section is covered by rays: (x, y) = ρ γ(s), where γ runs along the quarter of the edge in three
/// pieces (flat, arc, flat). Trial functions are products R(ρ) q(s), q continuous and polynomial on each piece, R even
/// in ρ because the section is its own point mirror. With c = γ × γ′,
/// ∫ |∇f|² dA = ∬ [ρ² |γ′|² f_ρ² − 2ρ (γ·γ′) f_ρ f_s + |γ|² f_s²] / (ρ c) dρ ds,
/// so all integrals are products of integrals over one variable. On the edge ∂ψ/∂θ integrates to −∫ ψ γ·γ′ ds.
/// </para>
/// </summary>
internal sealed class TorsionBounds
{
    private const int Degree = 12;          // of q on each piece
    private const int Radial = 9;           // number of R
    private const int QuadraturePoints = 64;

    private static readonly GaussLegendreRule Gauss = new(0, 1, QuadraturePoints);

    private static readonly (double Point, double Weight)[] Points =
        [.. Enumerable.Range(0, QuadraturePoints).Select(i => (Gauss.GetAbscissa(i), Gauss.GetWeight(i)))];

    private readonly double _a;
    private readonly double _b;
    private readonly double _r;
    private readonly int _along = 3 * Degree + 1;

    private readonly Matrix<double> _stretch;   // ∫ |γ′|²/c q q
    private readonly Matrix<double> _mixed;     // ∫ γ·γ′/c q q′
    private readonly Matrix<double> _around;    // ∫ |γ|²/c q′ q′
    private readonly double[] _area;            // ∫ c q
    private readonly double[] _turn;            // ∫ γ·γ′ q
    private double _polar;

    private TorsionBounds(double longer, double shorter, double radius)
    {
        (_a, _b, _r) = (longer / 2, shorter / 2, radius);
        _stretch = Matrix<double>.Build.Dense(_along, _along);
        _mixed = Matrix<double>.Build.Dense(_along, _along);
        _around = Matrix<double>.Build.Dense(_along, _along);
        _area = new double[_along];
        _turn = new double[_along];
        IntegrateAlongTheEdge();
    }

    public static (double Lower, double Upper) Of(double longer, double shorter, double radius)
    {
        var bounds = new TorsionBounds(longer, shorter, radius);
        return (bounds.Lower(), bounds.Upper());
    }

    private double Lower()
    {
        // φ = (1 − ρ²) and (1 − ρ²) ρ² Pⱼ(2ρ² − 1) q(s)
        int n = 1 + Radial * _along;
        (Matrix<double> energy, double[] volume) = Assemble(Prandtl, n, first: 1, 0, _along);
        double[] one = Enumerable.Repeat(0.0, _along).ToArray();
        for (int node = 0; node < 4; node++)
            one[node] = 1;                          // the four hats sum to one
        var ones = Vector<double>.Build.Dense(one);
        foreach ((double rho, double weight) in Rule())
        {
            double slope = -2 * rho;
            double value = 1 - rho * rho;
            energy[0, 0] += weight * rho * slope * slope * (ones * (_stretch * ones));
            volume[0] += weight * rho * value * _area.Zip(one, (x, y) => x * y).Sum();
            for (int j = 0; j < Radial; j++)
            {
                (double r, double dr) = Prandtl(j, rho);
                var row = weight * (rho * slope * dr * (_stretch * ones) - slope * r * (ones * _mixed));
                for (int k = 0; k < _along; k++)
                {
                    energy[0, 1 + j * _along + k] += row[k];
                    energy[1 + j * _along + k, 0] += row[k];
                }
            }
        }

        var load = Vector<double>.Build.Dense(volume);
        return 4 * 4 * (load * energy.Cholesky().Solve(load));
    }

    private double Upper()
    {
        // ψ = ρ² Pⱼ(2ρ² − 1) q(s), nil on both axes of symmetry
        int kept = _along - 2;
        (Matrix<double> energy, _) = Assemble(Warping, Radial * kept, first: 0, 2, kept);
        var load = Vector<double>.Build.Dense(Radial * kept);
        for (int j = 0; j < Radial; j++)
        {
            for (int k = 0; k < kept; k++)
                load[j * kept + k] = Warping(j, 1).Value * _turn[k + 2];
        }

        return 4 * (_polar - load * energy.Cholesky().Solve(load));
    }

    private (Matrix<double> Energy, double[] Volume) Assemble(
        Func<int, double, (double Value, double Slope)> radial, int size, int first, int skip, int kept)
    {
        var energy = Matrix<double>.Build.Dense(size, size);
        var volume = new double[size];
        for (int i = 0; i < Radial; i++)
        {
            for (int j = 0; j < Radial; j++)
            {
                double outward = 0, across = 0, acrossBack = 0, around = 0;
                foreach ((double rho, double weight) in Rule())
                {
                    (double f, double df) = radial(i, rho);
                    (double g, double dg) = radial(j, rho);
                    outward += weight * rho * df * dg;
                    across += weight * df * g;
                    acrossBack += weight * f * dg;
                    around += weight * f * g / rho;
                }

                for (int k = 0; k < kept; k++)
                {
                    for (int l = 0; l < kept; l++)
                    {
                        energy[first + i * kept + k, first + j * kept + l] =
                            outward * _stretch[k + skip, l + skip] + around * _around[k + skip, l + skip]
                            - across * _mixed[k + skip, l + skip] - acrossBack * _mixed[l + skip, k + skip];
                    }
                }
            }

            double moment = Rule().Sum(p => p.Weight * p.Point * radial(i, p.Point).Value);
            for (int k = 0; k < kept; k++)
                volume[first + i * kept + k] = moment * _area[k + skip];
        }

        return (energy, volume);
    }

    private static (double Value, double Slope) Warping(int j, double rho)
    {
        (double p, double dp) = Legendre(j, 2 * rho * rho - 1);
        return (rho * rho * p, 2 * rho * p + rho * rho * dp * 4 * rho);
    }

    private static (double Value, double Slope) Prandtl(int j, double rho)
    {
        (double f, double df) = Warping(j, rho);
        return ((1 - rho * rho) * f, (1 - rho * rho) * df - 2 * rho * f);
    }

    private void IntegrateAlongTheEdge()
    {
        for (int piece = 0; piece < 3; piece++)
        {
            foreach ((double s, double weight) in Rule())
            {
                (double x, double y, double dx, double dy) = Edge(piece, s);
                double c = x * dy - y * dx;
                double along = x * dx + y * dy;
                (int Index, double Value, double Slope)[] q = AlongFunctions(piece, s);
                foreach ((int i, double vi, double si) in q)
                {
                    _area[i] += weight * c * vi;
                    _turn[i] += weight * along * vi;
                    foreach ((int j, double vj, double sj) in q)
                    {
                        _stretch[i, j] += weight * (dx * dx + dy * dy) / c * vi * vj;
                        _mixed[i, j] += weight * along / c * vi * sj;
                        _around[i, j] += weight * (x * x + y * y) / c * si * sj;
                    }
                }

                _polar += weight * c * (x * x + y * y) / 4;
            }
        }
    }

    private (double X, double Y, double Dx, double Dy) Edge(int piece, double s)
    {
        double right = _a - _r;
        double top = _b - _r;
        (double sin, double cos) = Math.SinCos(Math.PI / 2 * s);
        return piece switch
        {
            0 => (_a, top * s, 0, top),
            1 => (right + _r * cos, top + _r * sin, -_r * Math.PI / 2 * sin, _r * Math.PI / 2 * cos),
            _ => (right * (1 - s), _b, -right, 0),
        };
    }

    // Hats at the two axes of symmetry are numbers 0 and 1, hats at the two joints 2 and 3, then the bubbles
    // (integrals of Legendre polynomials) of the three pieces.
    private static (int Index, double Value, double Slope)[] AlongFunctions(int piece, double s)
    {
        int[] node = [0, 2, 3, 1];
        var functions = new (int, double, double)[Degree + 1];
        functions[0] = (node[piece], 1 - s, -1);
        functions[1] = (node[piece + 1], s, 1);
        for (int k = 2; k <= Degree; k++)
        {
            double t = 2 * s - 1;
            double value = (Legendre(k, t).Value - Legendre(k - 2, t).Value) / (2 * k - 1);
            functions[k] = (4 + piece * (Degree - 1) + k - 2, value, 2 * Legendre(k - 1, t).Value);
        }

        return functions;
    }

    private static (double Value, double Slope) Legendre(int degree, double x)
    {
        if (degree == 0)
            return (1, 0);

        (double before, double value) = (1, x);
        (double slopeBefore, double slope) = (0, 1);
        for (int k = 2; k <= degree; k++)
        {
            double next = ((2 * k - 1) * x * value - (k - 1) * before) / k;
            double slopeNext = slopeBefore + (2 * k - 1) * value;
            (before, value, slopeBefore, slope) = (value, next, slope, slopeNext);
        }

        return (value, slope);
    }

    private static IReadOnlyList<(double Point, double Weight)> Rule() => Points;
}
