using Archwright.Mechanics.Numerics;
using Archwright.Mechanics.Rods;
using Archwright.Mechanics.Sections;
using Archwright.Mechanics.Tests.Numerics;
using CsCheck;

namespace Archwright.Mechanics.Tests.Rods;

/// <summary>The kinematics of a section against differences, and against frames built step by step from their
/// definition.</summary>
[Trait("basis", "independent")]
public sealed class PointKernelTests
{
    // Difference step; numbers are of order one, so the formula errs by 1e-13 and rounding by 1e-12.
    private const double Step = 5e-4;

    private const double Tolerance = 2e-10;

    private static readonly Gen<int> Seeds = Gen.Int[0, int.MaxValue];

    [Fact]
    public void Both_ways_to_the_strain_agree() => Seeds.Sample(seed =>
    {
        var draw = new Draws(seed);
        PointKernel kernel = default;
        kernel.Evaluate(draw.Rest, draw.P(), draw.C(), draw.X[6], draw.X[7]);

        AssertEqual(draw.Strain(draw.X), Draws.Values(kernel.Strain));
    });

    [Fact]
    public void The_rows_are_the_derivatives_of_the_strains() => Seeds.Sample(seed =>
    {
        var draw = new Draws(seed);
        PointKernel kernel = default;
        kernel.Evaluate(draw.Rest, draw.P(), draw.C(), draw.X[6], draw.X[7]);
        double[] rows = new double[32];
        kernel.StrainRows(rows);

        for (int j = 0; j < 8; j++)
        {
            double[] expected = Differences.Of(
                (x, strain) => draw.Strain(draw.Shifted(j, x)).CopyTo(strain, 0), 4, Step);
            AssertEqual(expected, [rows[j], rows[8 + j], rows[16 + j], rows[24 + j]]);
        }
    });

    [Fact]
    public void The_gradient_is_the_derivative_of_the_work() => Seeds.Sample(seed =>
    {
        var draw = new Draws(seed);
        double[] gradient = draw.Gradient(draw.X);

        for (int j = 0; j < 8; j++)
        {
            double expected = Differences.Of(x => draw.Work(draw.Strain(draw.Shifted(j, x))), Step);
            Assert.Equal(expected, gradient[j], tolerance: Tolerance);
        }
    });

    [Fact]
    public void The_geometric_part_is_the_derivative_of_the_gradient_at_fixed_forces() => Seeds.Sample(seed =>
    {
        var draw = new Draws(seed);
        PointKernel kernel = default;
        kernel.Evaluate(draw.Rest, draw.P(), draw.C(), draw.X[6], draw.X[7]);
        double[] h = new double[64];
        kernel.Geometric(draw.Rest, draw.Force, h);

        for (int j = 0; j < 8; j++)
        {
            double[] expected = Differences.Of((x, g) => draw.Gradient(draw.Shifted(j, x)).CopyTo(g, 0), 8, Step);
            AssertEqual(expected, [.. Enumerable.Range(0, 8).Select(i => h[8 * i + j])]);
            AssertEqual(expected, h[(8 * j)..(8 * j + 8)]);
        }
    });

    /// <summary>Curvatures and twist from their definition: the rest frame carried to the tangent by the smallest
    /// rotation and turned by θ, at two places near by; rates by differences. Nothing of the kernel's formulas is
    /// used.</summary>
    [Fact]
    public void Strains_are_the_rates_of_the_carried_frame_less_those_at_rest() => Seeds.Sample(seed =>
    {
        var curves = new Curves(seed);
        SectionStrain strain = PointKernel.StrainOf(
            curves.RestAt(0), curves.Slope(0), curves.Bend(0), curves.Turn(0), curves.TurnRate);

        (double overThickness, double overWidth, double twist) = Rates(curves.Frame);
        (double restOverThickness, double restOverWidth, double restTwist) = Rates(curves.RestFrame);

        Assert.Equal(overThickness - restOverThickness, strain.OverThickness, tolerance: 1e-8);
        Assert.Equal(overWidth - restOverWidth, strain.OverWidth, tolerance: 1e-8);
        Assert.Equal(twist - restTwist, strain.Twist, tolerance: 1e-8);
        Assert.Equal(curves.Slope(0).Length - curves.RestSlope(0).Length, strain.Axial, tolerance: 1e-13);
    });

    [Fact]
    public void A_wire_at_rest_turned_as_a_whole_is_not_strained() => Seeds.Sample(seed =>
    {
        var curves = new Curves(seed);
        Vector3 turn = curves.Axis * 1.8;
        double Turn(double s)
        {
            (Vector3 d1, Vector3 d2, _) = curves.RestFrame(s);
            (_, Vector3 carried2, Vector3 carried3) = Curves.Carried(curves.RestFrame(s), d1.Turned(turn));
            Vector3 d2Turned = d2.Turned(turn);
            return Math.Atan2(Vector3.Dot(d2Turned, carried3), Vector3.Dot(d2Turned, carried2));
        }

        SectionStrain strain = PointKernel.StrainOf(
            curves.RestAt(0), curves.RestSlope(0).Turned(turn), curves.RestBend(0).Turned(turn),
            Turn(0), Differences.Of(Turn, 1e-3));

        Assert.Equal(0, strain.Axial, tolerance: 1e-13);
        Assert.Equal(0, strain.OverThickness, tolerance: 1e-12);
        Assert.Equal(0, strain.OverWidth, tolerance: 1e-12);
        Assert.Equal(0, strain.Twist, tolerance: 1e-8);
    });

    private static (double OverThickness, double OverWidth, double Twist) Rates(
        Func<double, (Vector3 D1, Vector3 D2, Vector3 D3)> frame)
    {
        const double h = 1e-3;
        (_, Vector3 d2, Vector3 d3) = frame(0);
        Vector3 Rate(Func<(Vector3 D1, Vector3 D2, Vector3 D3), Vector3> of) =>
            ((of(frame(h)) - of(frame(-h))) * 8 - (of(frame(2 * h)) - of(frame(-2 * h)))) / (12 * h);
        Vector3 d1Rate = Rate(f => f.D1);
        return (-Vector3.Dot(d1Rate, d3), Vector3.Dot(d1Rate, d2), Vector3.Dot(Rate(f => f.D2), d3));
    }

    private static void AssertEqual(double[] expected, double[] actual)
    {
        for (int i = 0; i < expected.Length; i++)
            Assert.Equal(expected[i], actual[i], tolerance: Tolerance);
    }

    // A random section: rest frame with curvature and twist, and arguments (P, C, θ, θ′) up to 110° away from rest.
    private sealed class Draws
    {
        public Draws(int seed)
        {
            var random = new Random(seed);
            double Draw() => 2 * random.NextDouble() - 1;
            Vector3 DrawVector() => new(Draw(), Draw(), Draw());
            Vector3 slope = DrawVector().Unit() * (1 + 0.1 * Draw());
            Vector3 outward = Vector3.Cross(slope, DrawVector() + slope * 0.1).Unit() + slope * (0.3 * Draw());
            Rest = RestPoint.From(slope, DrawVector() * 0.3, outward, DrawVector() * 0.3);
            Vector3 p = slope.Turned(Vector3.Cross(slope, DrawVector()).Unit() * (1.9 * Draw())) * (1 + 0.1 * Draw());
            Vector3 c = DrawVector() * 0.4;
            X = [p.X, p.Y, p.Z, c.X, c.Y, c.Z, 2 * Draw(), 0.5 * Draw()];
            Force = new SectionForce(Draw(), Draw(), Draw(), Draw());
        }

        public RestPoint Rest { get; }

        public double[] X { get; }

        public SectionForce Force { get; }

        public Vector3 P() => new(X[0], X[1], X[2]);

        public Vector3 C() => new(X[3], X[4], X[5]);

        public double[] Shifted(int index, double by)
        {
            double[] x = [.. X];
            x[index] += by;
            return x;
        }

        public double[] Strain(double[] x) =>
            Values(PointKernel.StrainOf(
                Rest, new Vector3(x[0], x[1], x[2]), new Vector3(x[3], x[4], x[5]), x[6], x[7]));

        public static double[] Values(SectionStrain s) => [s.Axial, s.OverThickness, s.OverWidth, s.Twist];

        public double Work(double[] strain) => Force.Axial * strain[0] + Force.OverThickness * strain[1]
            + Force.OverWidth * strain[2] + Force.Twist * strain[3];

        public double[] Gradient(double[] x)
        {
            PointKernel kernel = default;
            kernel.Evaluate(Rest, new Vector3(x[0], x[1], x[2]), new Vector3(x[3], x[4], x[5]), x[6], x[7]);
            double[] g = new double[8];
            kernel.Gradient(Force, g);
            return g;
        }
    }

    // Two cubic curves near s = 0, one at rest with a turning width, one deformed, both with uneven speed.
    private sealed class Curves
    {
        private readonly Vector3[] _rest;
        private readonly Vector3[] _now;
        private readonly Vector3[] _outward;
        private readonly double[] _turn;

        public Curves(int seed)
        {
            var random = new Random(seed);
            double Draw() => 2 * random.NextDouble() - 1;
            Vector3 DrawVector() => new(Draw(), Draw(), Draw());
            Vector3 slope = DrawVector().Unit();
            Vector3 tangent = slope.Turned(Vector3.Cross(slope, DrawVector()).Unit() * (1.9 * Draw()));
            _rest = [slope * (1 + 0.1 * Draw()), DrawVector() * 0.2, DrawVector() * 0.05];
            _now = [tangent * (1 + 0.1 * Draw()), DrawVector() * 0.2, DrawVector() * 0.05];
            _outward = [Vector3.Cross(slope, DrawVector()).Unit() + slope * (0.3 * Draw()), DrawVector() * 0.3];
            _turn = [2 * Draw(), 0.5 * Draw()];
            Axis = DrawVector().Unit();
        }

        public Vector3 Axis { get; }

        public Vector3 RestSlope(double s) => _rest[0] + _rest[1] * (2 * s) + _rest[2] * (3 * s * s);

        public Vector3 RestBend(double s) => _rest[1] * 2 + _rest[2] * (6 * s);

        public Vector3 Slope(double s) => _now[0] + _now[1] * (2 * s) + _now[2] * (3 * s * s);

        public Vector3 Bend(double s) => _now[1] * 2 + _now[2] * (6 * s);

        public double Turn(double s) => _turn[0] + _turn[1] * s;

        public double TurnRate => _turn[1];

        public RestPoint RestAt(double s) =>
            RestPoint.From(RestSlope(s), RestBend(s), _outward[0] + _outward[1] * s, _outward[1]);

        public (Vector3 D1, Vector3 D2, Vector3 D3) RestFrame(double s)
        {
            Vector3 d1 = RestSlope(s).Unit();
            Vector3 o = _outward[0] + _outward[1] * s;
            Vector3 d2 = (o - d1 * Vector3.Dot(o, d1)).Unit();
            return (d1, d2, Vector3.Cross(d1, d2));
        }

        public (Vector3 D1, Vector3 D2, Vector3 D3) Frame(double s)
        {
            Vector3 t = Slope(s).Unit();
            (_, Vector3 d2, Vector3 d3) = Carried(RestFrame(s), t);
            return (t, d2.Turned(t * Turn(s)), d3.Turned(t * Turn(s)));
        }

        // The smallest rotation from d1 to t, as a rotation vector.
        public static (Vector3 D1, Vector3 D2, Vector3 D3) Carried(
            (Vector3 D1, Vector3 D2, Vector3 D3) frame, Vector3 t)
        {
            Vector3 cross = Vector3.Cross(frame.D1, t);
            double angle = Math.Atan2(cross.Length, Vector3.Dot(frame.D1, t));
            Vector3 turn = cross.Unit() * angle;
            return (t, frame.D2.Turned(turn), frame.D3.Turned(turn));
        }
    }
}
