using System.Text.Json.Nodes;
using Archwright.Mechanics.Alloys;
using Archwright.Mechanics.Sections;

namespace Archwright.Mechanics.Tests.Alloys;

/// <summary>The superelastic law of a fibre.</summary>
public sealed class FlagLawTests
{
    private const int Paths = 200;
    private const int Legs = 6;
    private const int StepsALeg = 40;

    public static TheoryData<string> Files => [.. BenchmarkFile.Ids("superelastic_law")];

    /// <summary>Reference: mechanics-benchmarks.json, superelastic_law: strain paths by an independent program, printed
    /// to a thousandth of a MPa and a millionth of martensite.</summary>
    [Theory, Trait("basis", "independent")]
    [MemberData(nameof(Files))]
    public void Stress_martensite_and_tangent_along_a_strain_path(string id)
    {
        JsonObject problem = BenchmarkFile.Case("superelastic_law", id);
        var fibre = new Fibre<FlagLaw>(
            new FlagLaw(BenchmarkFile.Flag(problem["alloy"]), problem.Number("temperature_degC")));
        JsonArray rows = problem["reference"]!.AsArray();
        Assert.NotEmpty(rows);
        foreach (JsonNode? row in rows)
        {
            FibreAnswer answer = fibre.Take(row.Number("strain"));

            Assert.Equal(row.Number("stress_MPa"), answer.Normal[0], tolerance: 6e-4);
            Assert.Equal(row.Number("martensite_fraction"), answer.NormalState[0], tolerance: 2e-6);
            Assert.Equal(row.Number("tangent_MPa"), answer.NormalNormal[0], tolerance: 0.06);
        }
    }

    /// <summary>Strained in one direction of the plane of normal strain and shear, out and back, a fibre is the
    /// uniaxial flag of that direction.</summary>
    [Fact, Trait("basis", "law")]
    public void In_any_one_direction_a_symmetric_alloy_answers_as_in_tension()
    {
        foreach (double angle in (double[])[0.3, Math.PI / 2, 2.2])
        {
            var pulled = new Fibre<FlagLaw>(new FlagLaw(Symmetric, 36));
            var turned = new Fibre<FlagLaw>(new FlagLaw(Symmetric, 36));
            foreach (double strain in (double[])[0.005, 0.02, 0.05, 0.07, 0.03, 0.02, 0.028, 0.01, 0])
            {
                FibreAnswer expected = pulled.Take(strain);
                FibreAnswer answer = turned.Take(strain * Math.Cos(angle), strain * Math.Sin(angle));

                Assert.Equal(expected.Normal[0] * Math.Cos(angle), answer.Normal[0], tolerance: 1e-8);
                Assert.Equal(expected.Normal[0] * Math.Sin(angle), answer.Shear[0], tolerance: 1e-8);
                Assert.Equal(expected.Work[0], answer.Work[0], tolerance: 1e-10);
            }
        }
    }

    [Fact, Trait("basis", "independent")]
    public void The_tangent_is_the_derivative_of_the_stress()
    {
        foreach (double angle in (double[])[0, 0.7, Math.PI / 2])
        {
            var fibre = new Fibre<FlagLaw>(new FlagLaw(Symmetric, 36));
            foreach (double strain in (double[])[0.004, 0.015, 0.04, 0.08, 0.05, 0.03, 0.022, 0.025, 0.012])
            {
                (double normal, double shear) = (strain * Math.Cos(angle), strain * Math.Sin(angle));
                FibreAnswer at = fibre.Try(normal, shear);
                const double h = 1e-7;
                FibreAnswer right = fibre.Try(normal + h, shear);
                FibreAnswer left = fibre.Try(normal - h, shear);
                FibreAnswer up = fibre.Try(normal, shear + h);
                FibreAnswer down = fibre.Try(normal, shear - h);

                Assert.Equal((right.Normal[0] - left.Normal[0]) / (2 * h), at.NormalNormal[0], tolerance: 1);
                Assert.Equal((up.Shear[0] - down.Shear[0]) / (2 * h), at.ShearShear[0], tolerance: 1);
                Assert.Equal((up.Normal[0] - down.Normal[0]) / (2 * h), at.NormalShear[0], tolerance: 1);
                fibre.Take(normal, shear);
            }
        }
    }

    /// <summary>Random paths of normal strain and shear together, in small steps. What a step takes up, less what it
    /// stores (elastic energy, and heat of change along the middle of both lines), is never negative; so no closed
    /// cycle returns more than it took.</summary>
    [Theory, Trait("basis", "law")]
    [InlineData(0)]
    [InlineData(0.15)]
    public void Every_step_dissipates_and_no_cycle_gives_back_more_than_it_took(double asymmetry)
    {
        Superelastic alloy = new(Symmetric.Figures with { Asymmetry = asymmetry });
        var random = new Random(20260301);
        double least = 0;
        double most = 0;
        for (int path = 0; path < Paths; path++)
        {
            double temperature = 20 + 30 * random.NextDouble();
            var fibre = new Fibre<FlagLaw>(new FlagLaw(alloy, temperature));
            (double x, double y) = (0, 0);
            double taken = 0;
            FibreAnswer before = fibre.Try(0);
            for (int leg = 0; leg <= Legs; leg++)
            {
                double size = leg == Legs ? 0 : 0.08 * random.NextDouble();
                double angle = 2 * Math.PI * random.NextDouble();
                (double toX, double toY) = (size * Math.Cos(angle), size * Math.Sin(angle));
                (double fromX, double fromY) = (x, y);
                for (int i = 1; i <= StepsALeg; i++)
                {
                    double share = (double)i / StepsALeg;
                    (double nextX, double nextY) = (fromX + (toX - fromX) * share, fromY + (toY - fromY) * share);
                    FibreAnswer after = fibre.Take(nextX, nextY);
                    double work = (before.Normal[0] + after.Normal[0]) / 2 * (nextX - x)
                        + (before.Shear[0] + after.Shear[0]) / 2 * (nextY - y);
                    double lost = work - (Stored(alloy, temperature, after) - Stored(alloy, temperature, before));
                    least = Math.Min(least, lost);
                    taken += work;
                    (x, y, before) = (nextX, nextY, after);
                }
            }

            Assert.Equal(0, Math.Abs(fibre.State.Normal) + Math.Abs(fibre.State.Shear), tolerance: 1e-9);
            Assert.True(taken >= -1e-3, $"path {path}: {taken}");
            most = Math.Max(most, taken);
        }

        // The work of a step is taken by the trapezium rule: right to some 1e-3 N/mm² where a line is met inside it.
        TestContext.Current.TestOutputHelper?.WriteLine($"least {least:e2}, largest loop {most:0.0} N/mm²");
        Assert.True(least >= -5e-3, $"{least:e2}");
        Assert.True(most > 5, "The paths were to go round the loop.");
    }

    [Fact, Trait("basis", "law")]
    public void A_wire_colder_than_the_law_can_be_is_computed_at_its_coldest()
    {
        var coldest = new Fibre<FlagLaw>(new FlagLaw(Symmetric, Symmetric.ColdestTemperature));
        var colder = new Fibre<FlagLaw>(new FlagLaw(Symmetric, Symmetric.ColdestTemperature - 30));
        Assert.Equal(coldest.Take(0.03).Normal[0], colder.Take(0.03).Normal[0]);
        double gap = Symmetric.Figures.ForwardStart + Symmetric.Figures.ReverseFinish
            + 2 * Symmetric.Figures.ClausiusClapeyron * (Symmetric.ColdestTemperature - 36);
        Assert.Equal(1, gap, tolerance: 1e-9);
    }

    private static Superelastic Symmetric { get; } =
        BenchmarkFile.Flag(BenchmarkFile.Case("superelastic_law", "law-A-36")["alloy"]);

    private static double Stored(Superelastic alloy, double temperature, in FibreAnswer at)
    {
        SuperelasticFigures f = alloy.Figures;
        double shift = f.ClausiusClapeyron * (temperature - f.ReferenceTemperature);
        double share = Math.Sqrt(at.NormalState[0] * at.NormalState[0] + at.ShearState[0] * at.ShearState[0]);
        double softer = 1 / f.YoungMartensite - 1 / f.YoungAustenite;
        double soft = 1 / f.YoungAustenite + share * softer;
        double middle(double z)
        {
            double upper = f.ForwardStart + shift + z * (f.ForwardFinish - f.ForwardStart);
            double lower = f.ReverseFinish + shift + z * (f.ReverseStart - f.ReverseFinish);
            double k = 1 / (1 - f.Asymmetry);       // between tension and compression
            return k * f.TransformationStrain * (upper + lower) / 2 + softer * (upper * upper + lower * lower) / 4;
        }

        double change = share / 6 * (middle(0) + 4 * middle(share / 2) + middle(share));
        return soft * (at.Normal[0] * at.Normal[0] + at.Shear[0] * at.Shear[0]) / 2 + change;
    }
}
