using Archwright.Mechanics.Slots;
using CsCheck;

namespace Archwright.Mechanics.Tests.Slots;

public sealed class ContactAngleTests
{
    private const double Mil = 0.0254;

    /// <summary>
    /// Wire, slot and bracket width in 0.001 in; degrees, printed to 0.01. The exact equation SLOT cos θ − WIDTH sin
    /// θ = SIZE is that of R. P. Kusy, J. Q. Whitley, "Resistance to sliding of orthodontic appliances in the dry and
    /// wet states: influence of archwire alloy, interbracket distance, and bracket engagement", J. Biomed. Mater.
    /// Res. 2000 (found: scribd.com/document/712574363); the angles were computed from it by a separate program.
    /// </summary>
    [Theory, Trait("basis", "published")]
    [InlineData(14, 22, 140, 3.26)]
    [InlineData(16, 22, 140, 2.45)]
    [InlineData(18, 22, 140, 1.63)]
    [InlineData(19, 22, 140, 1.23)]
    [InlineData(21, 22, 140, 0.41)]
    [InlineData(16, 18, 100, 1.14)]
    public void Critical_contact_angles_of_the_exact_equation(double wire, double slot, double width, double degrees)
    {
        double angle = ContactAngle.CriticalContactAngle(slot * Mil, width * Mil, wire * Mil);

        Assert.Equal(degrees, double.RadiansToDegrees(angle), tolerance: 0.01);
    }

    /// <summary>The approximation of the same paper, 57.32 (1 − SIZE/SLOT) / (WIDTH/SLOT) degrees, "a good one": within
    /// 1 % for these pairs.</summary>
    [Theory, Trait("basis", "published")]
    [InlineData(14, 22, 140)]
    [InlineData(16, 22, 140)]
    [InlineData(18, 22, 140)]
    [InlineData(19, 22, 140)]
    [InlineData(21, 22, 140)]
    [InlineData(16, 18, 100)]
    public void Critical_contact_angles_of_the_approximate_equation(double wire, double slot, double width)
    {
        double approximate = 57.32 * (1 - wire / slot) / (width / slot);

        double angle = ContactAngle.CriticalContactAngle(slot * Mil, width * Mil, wire * Mil);

        Assert.Equal(1, double.RadiansToDegrees(angle) / approximate, tolerance: 0.01);
    }

    [Fact, Trait("basis", "law")]
    public void At_the_critical_angle_the_wire_touches_the_opposite_ends_of_the_slot() =>
        Gen.Select(Gen.Double[0.3, 1], Gen.Double[0.1, 5], Gen.Double[0.001, 1]).Sample((slot, width, share) =>
        {
            double wire = share * slot;

            double angle = ContactAngle.CriticalContactAngle(slot, width, wire);

            // upper wall at one end, lower wall at the other: half of the wire's size away from its centre line
            double fromCentreLine = slot / 2 * Math.Cos(angle) - width / 2 * Math.Sin(angle);
            Assert.Equal(wire / 2, fromCentreLine, tolerance: 1e-14);
            Assert.InRange(angle, 0, Math.PI / 2);
        });

    [Fact, Trait("basis", "law")]
    public void A_wire_that_fills_the_slot_cannot_lie_aslant() =>
        Assert.Equal(0, ContactAngle.CriticalContactAngle(0.4572, 3, 0.4572));

    [Theory, Trait("basis", "law")]
    [InlineData(0, 3, 0.4)]
    [InlineData(0.5, -3, 0.4)]
    [InlineData(0.5, 3, double.NaN)]
    [InlineData(0.5, 3, 0)]
    [InlineData(0.5, 3, 0.51)]
    public void Impossible_sizes_are_refused(double slot, double width, double wire) =>
        Assert.Throws<ArgumentOutOfRangeException>(() => ContactAngle.CriticalContactAngle(slot, width, wire));
}
