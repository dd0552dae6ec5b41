using Archwright.Mechanics.Alloys;
using Archwright.Mechanics.Sections;

namespace Archwright.Mechanics.Tests.Alloys;

/// <summary>The law of alloys that yield.</summary>
public sealed class PlasticLawTests
{
    private static readonly ElasticPlastic Steel = new(180_000, 0.3, 1_500, 4_000);

    /// <summary>Closed form: beyond the yield strain the stress rises by E·H/(E + H), unloads by E, and yields in
    /// reverse after twice the yield strength.</summary>
    [Fact, Trait("basis", "independent")]
    public void It_yields_springs_back_and_yields_again_as_in_closed_form()
    {
        var fibre = new Fibre<PlasticLaw>(new PlasticLaw(Steel));
        double slope = Steel.Young * Steel.Hardening / (Steel.Young + Steel.Hardening);
        double yieldStrain = Steel.Yield / Steel.Young;

        Assert.Equal(Steel.Young * 0.008, fibre.Take(0.008).Normal[0], tolerance: 1e-9);
        double top = Steel.Yield + slope * (0.02 - yieldStrain);
        Assert.Equal(top, fibre.Take(0.02).Normal[0], tolerance: 1e-8);
        double set = 0.02 - top / Steel.Young;
        Assert.Equal(set, fibre.State.Normal, tolerance: 1e-12);
        Assert.Equal(0, fibre.Take(set).Normal[0], tolerance: 1e-8);
        double reverse = 0.02 - 2 * yieldStrain - 0.004;
        Assert.Equal(top - 2 * Steel.Yield - slope * 0.004, fibre.Take(reverse).Normal[0], tolerance: 1e-8);
    }

    [Fact, Trait("basis", "independent")]
    public void The_tangent_is_the_derivative_of_the_stress_in_any_direction()
    {
        var random = new Random(7);
        for (int i = 0; i < 200; i++)
        {
            var fibre = new Fibre<PlasticLaw>(new PlasticLaw(Steel))
            {
                State = (0.02 * (random.NextDouble() - 0.5), 0.02 * (random.NextDouble() - 0.5)),
            };
            double x = 0.04 * (random.NextDouble() - 0.5);
            double y = 0.04 * (random.NextDouble() - 0.5);
            FibreAnswer at = fibre.Try(x, y);
            const double h = 1e-8;
            FibreAnswer right = fibre.Try(x + h, y);
            FibreAnswer left = fibre.Try(x - h, y);
            FibreAnswer up = fibre.Try(x, y + h);
            FibreAnswer down = fibre.Try(x, y - h);

            Assert.Equal((right.Normal[0] - left.Normal[0]) / (2 * h), at.NormalNormal[0], tolerance: 2);
            Assert.Equal((right.Shear[0] - left.Shear[0]) / (2 * h), at.NormalShear[0], tolerance: 2);
            Assert.Equal((up.Normal[0] - down.Normal[0]) / (2 * h), at.NormalShear[0], tolerance: 2);
            Assert.Equal((up.Shear[0] - down.Shear[0]) / (2 * h), at.ShearShear[0], tolerance: 2);

            // The work of a step is a potential of the stress.
            Assert.Equal((right.Work[0] - left.Work[0]) / (2 * h), at.Normal[0], tolerance: 1e-3);
            Assert.Equal((up.Work[0] - down.Work[0]) / (2 * h), at.Shear[0], tolerance: 1e-3);
        }
    }

    [Fact, Trait("basis", "law")]
    public void No_step_gives_back_what_flow_has_taken()
    {
        var random = new Random(11);
        var fibre = new Fibre<PlasticLaw>(new PlasticLaw(Steel));
        (double x, double y) = (0, 0);
        for (int i = 0; i < 2000; i++)
        {
            (double before, double beforeShear) = fibre.State;
            double elastic = Energy(x - before, y - beforeShear, before, beforeShear);
            x = Math.Clamp(x + 0.01 * (random.NextDouble() - 0.5), -0.05, 0.05);
            y = Math.Clamp(y + 0.01 * (random.NextDouble() - 0.5), -0.05, 0.05);
            FibreAnswer after = fibre.Take(x, y);
            double work = after.Work[0]
                + Steel.Hardening / 2 * (before * before + beforeShear * beforeShear) - elastic;
            double stored = Energy(x - fibre.State.Normal, y - fibre.State.Shear, fibre.State.Normal,
                fibre.State.Shear) - elastic;

            Assert.True(work - stored >= -1e-9, $"step {i}: {work - stored:e2}");
        }
    }

    private static double Energy(double x, double y, double p, double q) =>
        Steel.Young / 2 * (x * x + y * y) + Steel.Hardening / 2 * (p * p + q * q);
}
