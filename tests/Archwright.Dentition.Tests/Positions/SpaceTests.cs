using Archwright.Dentition.ArchForms;
using Archwright.Dentition.Positions;
using Archwright.Dentition.Prescriptions;
using Archwright.Dentition.Teeth;
using Archwright.Mechanics.Numerics;
using Archwright.Mechanics.Slots;

namespace Archwright.Dentition.Tests.Positions;

public sealed class SpaceTests
{
    /// <summary>In planned places average crowns stand side by side on the curve: the room is what they need. The
    /// polynomial laid through the crown centres is the one they were put on.</summary>
    [Theory, Trait("basis", "law")]
    [InlineData(Jaw.Upper)]
    [InlineData(Jaw.Lower)]
    public void A_well_aligned_arch_lacks_no_room(Jaw jaw)
    {
        ArchSetup arch = Arch(jaw);

        SpaceDeficit? deficit = SpaceDeficit.Of(Teeth(arch), arch.Slots);

        Assert.NotNull(deficit);
        Assert.Equal(0, deficit.Crowding, tolerance: 0.05);
    }

    /// <summary>All front teeth 1 mm lingual: the arch is shorter; a published rule of thumb is about 2 mm a
    /// millimetre of incisor advance, both sides together (Ricketts, Steiner and Tweed teaching, from
    /// memory).</summary>
    [Fact, Trait("basis", "published")]
    public void Incisors_that_stand_back_cost_room()
    {
        ArchSetup arch = Arch(Jaw.Lower);
        Slot[] back =
        [
            .. arch.Slots.Zip(arch.Teeth, (slot, tooth) => tooth.Position > 2
                ? slot
                : slot with { Actual = slot.Actual.Moved(new Vector3(0, -1, 0), default) }),
        ];

        Assert.InRange(SpaceDeficit.Of(Teeth(arch), back)!.Crowding, 0.4, 3);
    }

    [Fact, Trait("basis", "law")]
    public void Room_is_not_known_without_first_molars()
    {
        ArchSetup arch = Arch(Jaw.Lower, without: [36]);
        Assert.Null(SpaceDeficit.Of(Teeth(arch), arch.Slots));
    }

    [Fact, Trait("basis", "independent")]
    public void A_fitted_curve_is_the_one_that_the_points_came_from()
    {
        var form = new PolynomialArch(3e-8, 0.025, 60);
        Vector3[] points =
        [
            .. new[] { -28.0, -20, -12, -5, 3, 9, 15, 24 }
                .Select(x => new Vector3(x, 40 - form.DepthAt(Math.Abs(x)), 1)),
        ];

        ArchFit? fit = ArchFit.ToPoints(points);

        Assert.NotNull(fit);
        Assert.Equal(form.A, fit.Form.A, tolerance: 1e-14);
        Assert.Equal(form.B, fit.Form.B, tolerance: 1e-9);
        Assert.Equal(40, fit.Front, tolerance: 1e-6);
        Assert.Equal(0, fit.Residual, tolerance: 1e-6);
        Assert.Null(ArchFit.ToPoints(points[..3]));
        Assert.Null(ArchFit.ToPoints([.. points.Select(p => p with { Y = -p.Y })]));
    }

    [Fact, Trait("basis", "law")]
    public void A_sagging_row_has_its_depth_on_its_side()
    {
        ArchSetup arch = Arch(Jaw.Lower);
        Assert.Equal(new SpeeCurve(0, 0), SpeeCurve.Of(Teeth(arch), arch.Slots));
        // 2 mm low: occlusal −2 on a lower second premolar of the right.
        Slot[] low =
        [
            .. arch.Slots.Zip(arch.Teeth, (slot, tooth) => tooth.Iso != 45
                ? slot
                : slot with { Actual = slot.Actual.Moved(new Vector3(0, 0, -2), default) }),
        ];

        SpeeCurve? curve = SpeeCurve.Of(Teeth(arch), low);

        Assert.Equal(2, curve!.Right, tolerance: 1e-9);
        Assert.Equal(0, curve.Left, tolerance: 1e-9);
    }

    /// <summary>Depth and width given, depth and width got; the catenary's length against its closed form.</summary>
    [Theory, Trait("basis", "independent")]
    [InlineData(50, 30)]
    [InlineData(60, 42)]
    [InlineData(40, 12)]
    public void Catenary_and_ellipse_have_the_width_and_depth_asked_for(double width, double depth)
    {
        var catenary = new CatenaryArch(width, depth);
        var ellipse = new EllipticArch(width, depth);

        Assert.Equal(depth, catenary.Depth, tolerance: 1e-9);
        Assert.Equal(depth, ellipse.Depth, tolerance: 1e-9);
        Assert.Equal(width / 2, catenary.AcrossAt(catenary.Perimeter / 2), tolerance: 1e-6);
        Assert.Equal(width / 2, ellipse.AcrossAt(ellipse.Perimeter / 2), tolerance: 1e-6);
        // y = a (cosh(x/a) − 1) from x = w: length a sinh(w/a) a side, and (y + a)² = a² + length².
        double half = catenary.Perimeter / 2;
        double a = (half * half - depth * depth) / (2 * depth);
        Assert.Equal(depth, a * (Math.Cosh(width / 2 / a) - 1), tolerance: 1e-6);
        // Ramanujan's second formula for the ellipse, good to 1e-5 here.
        double h = Math.Pow((width / 2 - depth) / (width / 2 + depth), 2);
        double whole = Math.PI * (width / 2 + depth) * (1 + 3 * h / (10 + Math.Sqrt(4 - 3 * h)));
        Assert.Equal(whole / 2, ellipse.Perimeter, tolerance: 1e-3);
    }

    /// <summary>W. A. Bolton 1958 (from memory): 91.3 ± 1.91 and 77.2 ± 1.65; the average teeth of our table come
    /// from another book.</summary>
    [Fact, Trait("basis", "published")]
    public void Average_teeth_go_together()
    {
        BoltonRatios ratios = BoltonRatios.OfAverageTeeth();
        Assert.InRange(ratios.Overall, 91.3 - 1.91, 91.3 + 1.91);
        Assert.InRange(ratios.Anterior, 77.2 - 1.65, 77.2 + 1.65);
        Assert.Equal(91.3, BoltonRatios.UsualOverall.Value);
        Assert.Equal(77.2, BoltonRatios.UsualAnterior.Value);
        Assert.Throws<ArgumentException>(() => BoltonRatios.Of(new Dictionary<ToothNumber, double>()));
    }

    private static ToothNumber?[] Teeth(ArchSetup arch) => [.. arch.Teeth.Select(tooth => (ToothNumber?)tooth)];

    private static ArchSetup Arch(Jaw jaw, int[]? without = null) => ArchBuilder.Build(new ArchRequest
    {
        Jaw = jaw,
        Slot = SlotSize.In022,
        WireId = "niti-014",
        Without = [.. (without ?? []).Select(ToothNumber.FromIso)],
    });
}
