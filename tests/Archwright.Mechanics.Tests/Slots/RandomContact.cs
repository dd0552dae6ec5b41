using Archwright.Mechanics.Numerics;
using Archwright.Mechanics.Rods;
using Archwright.Mechanics.Slots;
using Archwright.Mechanics.Tests.Rods;

namespace Archwright.Mechanics.Tests.Slots;

/// <summary>A random wire that runs aslant through one slot, with the rows that a check wants.</summary>
internal sealed class RandomContact
{
    public const int Unknowns = 8 * RandomWire.Nodes;

    public RandomContact(int seed, double penalty, params ReadOnlySpan<ContactRow> rows)
    {
        Wire = new RandomWire(seed);
        Set = new ContactSet(4, 8) { Penalty = penalty };
        double h = Wire.Mesh.Length(2);
        double place = Wire.Mesh.S[2] + h * (0.5 + 0.15 * Wire.Draw());
        (Vector3 point, Vector3 slope) = At(place);

        // The slot's axis is up to about 20° aslant, its centre up to 0.2 mm beside the wire; the turn in it is
        // anything. The crossing stays away from the nodes, where the rate of the turn is a mean of two.
        Vector3 along = (slope.Unit() + Wire.DrawVector() * 0.2).Unit();
        Vector3 outward = Vector3.Cross(along, Wire.DrawVector() + along * 0.2).Unit();
        Vector3 beside = Vector3.Cross(along, Wire.DrawVector()).Unit() * (0.14 + 0.06 * Wire.Draw());
        Frames = [SlotFrame.Create(point + beside, along, outward)];
        Set.Add(new Station { U = 0, S = place, NeedsTurn = true });
        Set.Add(new Station { U = 0.2 * h * Wire.Draw(), S = place, NeedsTurn = true });
        foreach (ContactRow row in rows)
            Set.Add(row);

        // Points and rates of the turn are taken once; derivatives are those of the merit with them held.
        Assert.True(Set.Locate(Wire.Mesh, Wire.State, Frames));
        Set.Freeze(Wire.Mesh, Wire.State, Frames);
    }

    public RandomWire Wire { get; }

    public ContactSet Set { get; }

    public SlotFrame[] Frames { get; }

    /// <summary>Merit of the rows at a state.</summary>
    public double Merit(double[] q) => Apply(q, Frames, new double[Unknowns], out _);

    /// <summary>Merit of the rows where the slot has moved.</summary>
    public double Merit(SlotFrame frame) => Apply(Wire.State, [frame], new double[Unknowns], out _);

    public double[] Gradient(double[] q, out BlockTridiagonal tangent)
    {
        double[] g = new double[Unknowns];
        Apply(q, Frames, g, out tangent);
        return g;
    }

    public double[] Shifted(int index, double by)
    {
        double[] q = [.. Wire.State];
        q[index] += by;
        return q;
    }

    public double[] Shifted(double[] direction, double by) => [.. Wire.State.Zip(direction, (a, b) => a + by * b)];

    /// <summary>The tangent times a vector.</summary>
    public static double[] Times(BlockTridiagonal tangent, double[] x)
    {
        double[] y = new double[Unknowns];
        tangent.Multiply(x, y);
        return y;
    }

    private double Apply(double[] q, SlotFrame[] frames, double[] gradient, out BlockTridiagonal tangent)
    {
        tangent = new BlockTridiagonal(RandomWire.Nodes);
        tangent.Clear(RandomWire.Nodes);
        Assert.True(Set.Locate(Wire.Mesh, q, frames));
        return Set.Apply(q, frames, gradient, tangent, Wire.Mesh);
    }

    private (Vector3 Point, Vector3 Slope) At(double s)
    {
        RodMesh mesh = Wire.Mesh;
        int e = mesh.Find(s, 0);
        var shape = new Hermite((s - mesh.S[e]) / mesh.Length(e), mesh.Length(e));
        double[] q = Wire.State;
        Vector3 r0 = RodAssembly.Position(q, e);
        Vector3 t0 = RodAssembly.Slope(q, e);
        Vector3 r1 = RodAssembly.Position(q, e + 1);
        Vector3 t1 = RodAssembly.Slope(q, e + 1);
        return (shape.Point(r0, t0, r1, t1), shape.Slope(r0, t0, r1, t1));
    }
}
