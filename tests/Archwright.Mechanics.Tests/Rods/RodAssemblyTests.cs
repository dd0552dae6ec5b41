using Archwright.Mechanics.Numerics;
using Archwright.Mechanics.Rods;
using Archwright.Mechanics.Sections;
using Archwright.Mechanics.Tests.Numerics;
using CsCheck;

namespace Archwright.Mechanics.Tests.Rods;

public sealed class RodAssemblyTests
{
    private const int Unknowns = 8 * RandomWire.Nodes;

    // Entries of the gradient are compared with the largest one, of the tangent likewise. The formula errs by h⁴
    // (3e-12), and rounding of energies by 1e-16/h of their ratio to the gradient.
    private const double Step = 1e-4;

    private const double Tolerance = 1e-8;

    private static readonly Gen<int> Seeds = Gen.Int[0, int.MaxValue];

    [Fact, Trait("basis", "independent")]
    public void The_residual_is_the_derivative_of_the_energy() => Seeds.Sample(seed =>
    {
        var wire = new RandomWire(seed);
        double[] gradient = Gradient(wire, wire.State, out _);
        double scale = gradient.Max(Math.Abs);

        for (int j = 0; j < Unknowns; j++)
        {
            double expected = Differences.Of(
                x => RodAssembly.Energy(wire.Mesh, RandomWire.Law, RandomWire.Stretch, Shifted(wire, j, x)), Step);
            Assert.Equal(expected, gradient[j], tolerance: Tolerance * scale);
        }
    }, iter: 40);

    [Fact, Trait("basis", "independent")]
    public void The_tangent_is_the_derivative_of_the_residual() => Seeds.Sample(seed =>
    {
        var wire = new RandomWire(seed);
        Gradient(wire, wire.State, out BlockTridiagonal tangent);
        double scale = tangent.Diagonal(2).ToArray().Max(Math.Abs);

        for (int j = 0; j < Unknowns; j++)
        {
            double[] expected = Differences.Of(
                (x, g) => Gradient(wire, Shifted(wire, j, x), out _).CopyTo(g, 0), Unknowns, Step);

            // The turn in the middle of an element that does not exist has a one on the diagonal, so that it stays nil.
            if (j == Unknowns - 1)
                expected[j] += 1;
            double[] unit = new double[Unknowns];
            double[] column = new double[Unknowns];
            unit[j] = 1;
            tangent.Multiply(unit, column);
            for (int i = 0; i < Unknowns; i++)
                Assert.Equal(expected[i], column[i], tolerance: Tolerance * scale);
        }
    }, iter: 40);

    [Fact, Trait("basis", "law")]
    public void The_tangent_is_symmetric() => Seeds.Sample(seed =>
    {
        var wire = new RandomWire(seed);
        Gradient(wire, wire.State, out BlockTridiagonal tangent);
        for (int block = 0; block < RandomWire.Nodes; block++)
        {
            double[] d = tangent.Diagonal(block).ToArray();
            double scale = d.Max(Math.Abs);
            for (int i = 0; i < 8; i++)
            {
                for (int j = 0; j < i; j++)
                    Assert.Equal(d[8 * i + j], d[8 * j + i], tolerance: 1e-12 * scale);
            }
        }
    }, iter: 40);

    // The energy does not change when the wire moves as a whole, so what it does on its nodes is in balance.
    [Fact, Trait("basis", "law")]
    public void Forces_on_a_free_wire_are_in_balance() => Seeds.Sample(seed =>
    {
        var wire = new RandomWire(seed);
        double[] g = Gradient(wire, wire.State, out _);

        AssertNil(Total(g, wire.State).Force, g);
    }, iter: 40);

    // The turn θ is measured from a rest frame that does not turn along with the wire, so of moments alone one can only
    // speak where θ is of no account: a round wire, straight at rest, without resistance to twist.
    [Fact, Trait("basis", "law")]
    public void Moments_on_a_free_round_wire_are_in_balance() => Seeds.Sample(seed =>
    {
        var wire = new RandomWire(seed);
        Vector3 chord = RodAssembly.Position(wire.State, RandomWire.Nodes - 1) - RodAssembly.Position(wire.State, 0);
        Vector3 across = Vector3.Cross(chord, new Vector3(0.3, 0.5, 0.8)).Unit();
        var straight = new RestCurve(CubicPath.ThroughPoints([default, chord]), [0, 1], [across, across]);
        wire.Mesh.Build(wire.Mesh.S.ToArray(), straight);
        double[] g = new double[Unknowns];
        var tangent = new BlockTridiagonal(RandomWire.Nodes);
        tangent.Clear(RandomWire.Nodes);
        var round = new ElasticSection(RandomWire.Stretch, 1100, 1100, 0);
        RodAssembly.Add(wire.Mesh, round, RandomWire.Stretch, wire.State, g, tangent,
            new Tension(RandomWire.Nodes));

        (Vector3 force, Vector3 moment) = Total(g, wire.State);
        AssertNil(force, g);
        AssertNil(moment / 10, g);
    }, iter: 40);

    private static (Vector3 Force, Vector3 Moment) Total(double[] gradient, double[] q)
    {
        Vector3 force = default;
        Vector3 moment = default;
        for (int i = 0; i < RandomWire.Nodes; i++)
        {
            Vector3 onPlace = RodAssembly.Position(gradient, i);
            force += onPlace;
            moment += Vector3.Cross(RodAssembly.Position(q, i), onPlace)
                + Vector3.Cross(RodAssembly.Slope(q, i), RodAssembly.Slope(gradient, i));
        }

        return (force, moment);
    }

    private static void AssertNil(Vector3 sum, double[] gradient) =>
        Assert.Equal(0, sum.Length, tolerance: 1e-12 * gradient.Sum(Math.Abs));

    private static double[] Gradient(RandomWire wire, double[] q, out BlockTridiagonal tangent)
    {
        double[] g = new double[Unknowns];
        tangent = new BlockTridiagonal(RandomWire.Nodes);
        tangent.Clear(RandomWire.Nodes);
        RodAssembly.Add(wire.Mesh, RandomWire.Law, RandomWire.Stretch, q, g, tangent,
            new Tension(RandomWire.Nodes));
        return g;
    }

    private static double[] Shifted(RandomWire wire, int index, double by)
    {
        double[] q = [.. wire.State];
        q[index] += by;
        return q;
    }
}
