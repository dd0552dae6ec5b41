using Archwright.Mechanics.Engagement;
using Archwright.Mechanics.Numerics;
using Archwright.Mechanics.Slots;

namespace Archwright.Mechanics.Tests.Engagement;

/// <summary>
/// The six geometries of two brackets on a straight wire, by the ratio of their angles: moments M_A/M_B, and force
/// relative to the first at the same larger angle. C. J. Burstone, H. A. Koenig, "Force systems from an ideal arch",
/// Am. J. Orthod. 65 (1974) 270–289 (ratios from memory, recomputed from M_A = 2EI(2θ_A + θ_B)/L, F = 6EI(θ_A +
/// θ_B)/L²); that they follow from carry-over by halves: A. Kang, M. Musilli, M. Farella, "The six geometries
/// revisited", Korean J. Orthod. 50 (2020) 356–359 (found). Two clamped slots; the wire bent between them is shorter by
/// L(2θ_A² − θ_Aθ_B + 2θ_B²)/30, and the second slot is moved nearer by that, so that sliding, which the ratios
/// presuppose, has nothing left to do.
/// </summary>
[Trait("basis", "published")]
public sealed class SixGeometriesTests
{
    private const double Young = 200_000;
    private const double Diameter = 0.4064;
    private const double Span = 7;
    private const double Angle = 1e-3;

    // Angles of 10⁻³ are small to the square: 10⁻⁶.
    private const double Tolerance = 2e-6;

    private static readonly double Stiffness = Young * Math.PI * Math.Pow(Diameter, 4) / 64;

    [Theory]
    [InlineData("I", 1.0, 1.0, 1.0)]
    [InlineData("II", 0.5, 0.8, 0.75)]
    [InlineData("III", 0.0, 0.5, 0.5)]
    [InlineData("IV", -0.5, 0.0, 0.25)]
    [InlineData("V", -0.75, -0.4, 0.125)]
    [InlineData("VI", -1.0, -1.0, 0.0)]
    public void Moments_and_forces_of_the_class(string name, double ratio, double moments, double forces)
    {
        (Wrench a, Wrench b) = Loads(ratio * Angle, Angle);
        double momentB = 2 * Stiffness * (2 + ratio) * Angle / Span;
        double force = 12 * Stiffness * Angle / (Span * Span);

        Assert.Equal(moments, a.Moment.Z / b.Moment.Z, tolerance: Tolerance);
        Assert.Equal(-momentB, b.Moment.Z, tolerance: Tolerance * momentB);
        Assert.Equal(forces, Math.Abs(b.Force.Y) / force, tolerance: Tolerance);
        Assert.Equal(0, (a.Force + b.Force).Length, tolerance: Tolerance * force);
        Assert.True(Math.Abs(b.Force.X) < 1e-3 * force, $"class {name}: {b.Force.X} N along");
    }

    [Fact]
    public void Half_of_a_moment_is_carried_over_to_the_other_bracket()
    {
        (Wrench a, Wrench b) = Loads(0, Angle);

        Assert.Equal(0.5, a.Moment.Z / b.Moment.Z, tolerance: Tolerance);
    }

    private static (Wrench A, Wrench B) Loads(double angleA, double angleB)
    {
        double nearer = Span * (2 * angleA * angleA - angleA * angleB + 2 * angleB * angleB) / 30;
        EngagementResult result = StraightWire.Engage(StraightWire.Of(
            Young, Diameter, StraightWire.Slot(0, Hold.Clamped, turn: angleA),
            StraightWire.Slot(Span, Hold.Clamped, turn: angleB, along: -nearer)));
        return (result.Slots[0].OnTooth, result.Slots[1].OnTooth);
    }
}
