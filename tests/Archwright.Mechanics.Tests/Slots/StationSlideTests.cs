using Archwright.Mechanics.Numerics;
using Archwright.Mechanics.Rods;
using Archwright.Mechanics.Slots;
using Archwright.Mechanics.Tests.Rods;
using CsCheck;

namespace Archwright.Mechanics.Tests.Slots;

/// <summary>What a slide of the wire under its shape does to a section in its slot. Rests on differences.</summary>
[Trait("basis", "independent")]
public sealed class StationSlideTests
{
    private const double Step = 1e-4;

    // The rest shape is interpolated between the nodes: on a mesh of 0.01 mm well within this [rad/mm].
    private const double Tolerance = 2e-3;

    [Fact]
    public void The_turn_by_a_slide_is_the_difference_of_two_turns() => Gen.Int[0, int.MaxValue].Sample(
        seed =>
        {
            var wire = new RandomWire(seed);
            RodMesh mesh = Fine(wire.Rest, 0);
            double[] state = Bent(wire, mesh);
            double place = 2.3 + 0.5 * wire.Draw();
            (Vector3 point, Vector3 slope, _) = NodalState.At(mesh, state, mesh.Find(place, 0), place);
            Vector3 along = (slope.Unit() + wire.DrawVector() * 0.2).Unit();
            var frame = SlotFrame.Create(point, along, Vector3.Cross(along, wire.DrawVector()).Unit());
            var station = new Station { S = place, NeedsTurn = true };
            station.Locate(mesh, state, frame);
            station.Freeze(mesh, state, frame);

            double ahead = station.Slid(Fine(wire.Rest, Step), Step, state, frame).Turn;
            double behind = station.Slid(Fine(wire.Rest, -Step), -Step, state, frame).Turn;

            Assert.Equal((ahead - behind) / (2 * Step), station.TurnBySlide, Tolerance);
        },
        iter: 50);

    private static RodMesh Fine(RestCurve rest, double shift)
    {
        double[] s = [.. Enumerable.Range(0, 501).Select(i => 0.01 * i)];
        var mesh = new RodMesh(s.Length);
        mesh.Build(s, rest, shift);
        return mesh;
    }

    // The rest shape, turned as a whole and bent by a smooth wave.
    private static double[] Bent(RandomWire wire, RodMesh mesh)
    {
        double[] q = new double[8 * mesh.Nodes];
        Vector3 turn = wire.DrawVector() * 0.3;
        Vector3 wave = wire.DrawVector() * 0.1;
        for (int i = 0; i < mesh.Nodes; i++)
        {
            (double sin, double cos) = Math.SinCos(mesh.S[i]);
            NodalState.Put(
                q, i, mesh.RestPosition(i).Turned(turn) + wave * sin, mesh.RestTangent(i).Turned(turn) + wave * cos);
        }

        return q;
    }
}
