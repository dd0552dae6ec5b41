using Archwright.Mechanics.Numerics;
using Archwright.Mechanics.Rods;
using Archwright.Mechanics.Sections;
using Archwright.Mechanics.Tests.Numerics;
using CsCheck;

namespace Archwright.Mechanics.Tests.Rods;

public sealed class TensionTests
{
    private const int Unknowns = 8 * RandomWire.Nodes;
    private static readonly Gen<int> Seeds = Gen.Int[0, 1_000_000];

    [Fact, Trait("basis", "law")]
    public void A_small_step_brings_the_force_that_was_foreseen() => Seeds.Sample(seed =>
    {
        var wire = new RandomWire(seed);
        var random = new Random(seed);
        double[] step = [.. Enumerable.Range(0, Unknowns).Select(_ => 1e-6 * (random.NextDouble() - 0.5))];
        var tension = new Tension(RandomWire.Nodes);
        double[] before = Forces(wire, wire.State);
        Note(tension, before);

        tension.Foresee(wire.Mesh, wire.State, step, share: 0.5);

        double[] moved = [.. wire.State.ToArray().Zip(step, (q, d) => q + 0.5 * d)];
        double[] after = Forces(wire, moved);
        for (int point = 0; point < after.Length; point++)
        {
            double change = tension.AtPoint(point, after[point], RandomWire.Stretch) - before[point];
            Assert.Equal(after[point] - before[point], change, tolerance: 1e-9 * RandomWire.Stretch);
        }
    }, iter: 20);

    [Fact, Trait("basis", "ours")]
    public void Without_a_step_and_after_forgetting_the_true_force_holds()
    {
        var wire = new RandomWire(3);
        var tension = new Tension(RandomWire.Nodes);
        Assert.Equal(5, tension.AtPoint(1, 5, RandomWire.Stretch));

        double[] step = new double[Unknowns];
        step[3] = 1e-3;
        tension.Foresee(wire.Mesh, wire.State, step, share: 1);
        Assert.NotEqual(7, tension.AtPoint(1, 7, RandomWire.Stretch));
        tension.Foresee(wire.Mesh, wire.State, step, share: 1);
        tension.Forget();

        Assert.Equal(7, tension.AtPoint(1, 7, RandomWire.Stretch));
        Assert.Equal(2, tension.AtNode(0, 2, 1));
    }

    private static void Note(Tension tension, double[] forces)
    {
        for (int point = 0; point < forces.Length; point++)
            Assert.Equal(forces[point], tension.AtPoint(point, forces[point], RandomWire.Stretch));
    }

    private static double[] Forces(RandomWire wire, ReadOnlySpan<double> q)
    {
        double[] forces = new double[RodMesh.Points * wire.Mesh.Elements];
        for (int point = 0; point < forces.Length; point++)
        {
            SectionStrain strain = RodAssembly.StrainAt(wire.Mesh, q, point);
            forces[point] = RandomWire.Stretch * strain.Axial;
        }

        return forces;
    }
}
