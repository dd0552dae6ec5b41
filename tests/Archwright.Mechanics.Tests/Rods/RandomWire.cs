using Archwright.Mechanics.Numerics;
using Archwright.Mechanics.Rods;
using Archwright.Mechanics.Sections;

namespace Archwright.Mechanics.Tests.Rods;

/// <summary>A wire with a rest shape that bends and twists at random, uneven nodes, and a state far from rest: turned
/// as a whole, bent, stretched, and its section turned. For checks of derivatives, which must hold anywhere.</summary>
internal sealed class RandomWire
{
    public const int Nodes = 6;

    /// <summary>Stiffnesses of the order of a rectangular steel wire, all different: EA [N], two EI and GJ
    /// [N·mm²].</summary>
    public const double Stretch = 4e4;

    public static readonly ElasticSection Law = new(Stretch, 1100, 1900, 800);

    private readonly Random _random;

    public RandomWire(int seed)
    {
        _random = new Random(seed);
        Rest = MakeRest();
        double[] s = new double[Nodes];
        for (int i = 0; i < Nodes; i++)
            s[i] = 1 + 1.5 * i + 0.4 * Draw();

        Mesh = new RodMesh(Nodes);
        Mesh.Build(s, Rest);
        State = MakeState();
    }

    public RestCurve Rest { get; }

    public RodMesh Mesh { get; }

    /// <summary>State, 8 a node.</summary>
    public double[] State { get; }

    /// <summary>Uniform in −1 to 1.</summary>
    public double Draw() => 2 * _random.NextDouble() - 1;

    public Vector3 DrawVector() => new(Draw(), Draw(), Draw());

    private RestCurve MakeRest()
    {
        var points = new Vector3[6];
        Vector3 direction = DrawVector().Unit();
        for (int i = 1; i < points.Length; i++)
        {
            direction = (direction + DrawVector() * 0.3).Unit();
            points[i] = points[i - 1] + direction * 2.5;
        }

        CubicPath path = CubicPath.ThroughPoints([.. points]);
        double[] at = [0, path.Length / 3, 2 * path.Length / 3, path.Length];
        var outward = new Vector3[at.Length];
        Vector3 across = Vector3.Cross(direction, DrawVector()).Unit();
        for (int i = 0; i < at.Length; i++)
        {
            across = (across + DrawVector() * 0.4).Unit();
            outward[i] = (across - path.At(at[i]).Tangent * Vector3.Dot(across, path.At(at[i]).Tangent)).Unit();
        }

        return new RestCurve(path, at, outward);
    }

    // Turned as a whole by up to 100°, slopes by another 20°, stretched by up to 15 %.
    private double[] MakeState()
    {
        double[] q = new double[8 * Nodes];
        Vector3 turn = DrawVector().Unit() * (1.75 * Draw());
        Vector3 bow = DrawVector() * 0.02;
        for (int i = 0; i < Nodes; i++)
        {
            Vector3 r = Mesh.RestPosition(i).Turned(turn) + bow * (i * i) + DrawVector() * 0.1;
            Vector3 t = (Mesh.RestTangent(i).Turned(turn) + DrawVector() * 0.2) * (1 + 0.1 * Draw());
            Put(q.AsSpan(8 * i), r, t);
            q[8 * i + 6] = 0.8 * Draw();
            q[8 * i + 7] = i + 1 < Nodes ? 0.8 * Draw() : 0;
        }

        return q;
    }

    private static void Put(Span<double> at, Vector3 r, Vector3 t)
    {
        at[0] = r.X;
        at[1] = r.Y;
        at[2] = r.Z;
        at[3] = t.X;
        at[4] = t.Y;
        at[5] = t.Z;
    }
}
