using Archwright.Dentition.Tables;
using Archwright.Mechanics.Alloys;
using Archwright.Mechanics.Bench;
using Archwright.Mechanics.Numerics;
using Archwright.Mechanics.Rods;
using Archwright.Mechanics.Sections;
using Archwright.Validation.Record;

namespace Archwright.Validation.SetUps;

/// <summary>Large bending under a dead load: the elastica, and a bend in space.</summary>
internal static class LargeBending
{
    private const double Length = 10;
    private const double Bending = 1000;

    // EA L²/EI of a wire so thin that it does not lengthen by more than the last printed digit.
    private const double Stretch = 3e6;

    /// <summary>A cantilever under a load across it, <c>load</c> = P L²/EI; <c>of</c> = deflection or shortening as
    /// shares of the length, or slope [rad].</summary>
    public static double Elastica(SetUp given)
    {
        LoadedTip tip = Elastica(given.Number("load"));
        return given.Text("of") switch
        {
            "deflection" => tip.Position.Y / Length,
            "shortening" => 1 - tip.Position.X / Length,
            "slope" => Math.Atan2(tip.Tangent.Y, tip.Tangent.X),
            string other => throw new TableException($"The elastica has no '{other}'."),
        };
    }

    /// <summary>Its tip at a load P L²/EI, for pictures too.</summary>
    public static LoadedTip Elastica(double load)
    {
        Section section = Section.Round(4 * Length / Math.Sqrt(Stretch));
        var test = new DeadLoadTest
        {
            Wire = new Wire(section, new LinearElastic(Bending / section.BendingOverThickness, 0.3)),
            Path = [default, new Vector3(Length, 0, 0)],
            Outward = new Vector3(0, 1, 0),
        };
        return test.Run(new Vector3(0, load * Bending / (Length * Length), 0));
    }

    /// <summary>An arc of 45°, radius 100, unit square, E = 10⁷, ν = 0, under a load across its plane: <c>of</c> = x, y
    /// or z of the tip; <c>torsion</c> = polar (1/6) or own (0.1406).</summary>
    public static double Bend45(SetUp given)
    {
        Vector3 tip = new DeadLoadTest
        {
            Wire = new Wire(Section.Rectangular(1, 1), new LinearElastic(1e7, 0)),
            Path =
            [
                .. Enumerable.Range(0, 91).Select(i => i * Math.PI / 360)
                    .Select(t => new Vector3(100 * Math.Sin(t), 100 * (1 - Math.Cos(t)), 0)),
            ],
            Outward = new Vector3(0, 0, 1),
            Elements = 16,
            TorsionConstant = given.Text("torsion") == "polar" ? 1.0 / 6 : null,
        }.Run(new Vector3(0, 0, given.Number("load"))).Position;
        return given.Text("of") switch
        {
            "x" => tip.X,
            "y" => tip.Y,
            "z" => tip.Z,
            string other => throw new TableException($"A tip has no '{other}'."),
        };
    }
}
