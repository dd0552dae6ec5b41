using System.Globalization;
using System.Text;
using Archwright.Mechanics.Sections;
using Archwright.Mechanics.Tests.Sections;

namespace Archwright.Mechanics.Tests.Engagement;

/// <summary>Mesh, stride and fibres of superelastic problems. The page docs/theory/convergence.md is written by
/// <see cref="The_page_of_tables"/> through scripts/convergence.sh, from the same code.</summary>
public sealed class ConvergenceTests
{
    private const string File = "ARCHWRIGHT_CONVERGENCE";

    /// <summary>A line of the page: the usual mesh and stride keep the promised 0.3 %, twice as fine is no worse by
    /// more than the uncertainty of the reference (0.13 %).</summary>
    [Fact, Trait("basis", "independent")]
    public void The_usual_mesh_keeps_three_per_mille_and_a_finer_one_is_no_worse()
    {
        Convergence.Row usual = Convergence.Run(elements: 4);
        Convergence.Row fine = Convergence.Run(elements: 8);

        TestContext.Current.TestOutputHelper?.WriteLine($"{usual} {fine}");
        Assert.True(usual.Error <= 3e-3, $"{usual.Error:e2}");
        Assert.True(fine.Error <= usual.Error + 1.3e-3, $"{fine.Error:e2} against {usual.Error:e2}");
        Assert.True(fine.Unknowns > 1.5 * usual.Unknowns);
    }

    /// <summary>Strides half as long change nothing that the reference could see: 0.13 %.</summary>
    [Fact, Trait("basis", "independent")]
    public void Half_the_stride_changes_less_than_the_reference_can_tell()
    {
        double usual = Convergence.Run(elements: 4).Error;
        double half = Convergence.Run(elements: 4, strides: 2).Error;

        Assert.Equal(usual, half, 1.3e-3);
    }

    /// <summary>Writes the page into the file that the variable names; without it there is nothing to do.</summary>
    [Fact, Trait("basis", "docs")]
    public void The_page_of_tables()
    {
        string? path = Environment.GetEnvironmentVariable(File);
        Assert.SkipWhen(
            path is null, $"Writes docs/theory/convergence.md where {File} names it: scripts/convergence.sh");

        var page = new StringBuilder(Head);
        foreach (int elements in new[] { 1, 2, 3, 4, 6, 8, 12 })
        {
            Convergence.Row row = Convergence.Run(elements);
            string usual = elements == 4 ? "**" : "";
            page.Append(CultureInfo.InvariantCulture,
                $"| {usual}{elements}{usual} | {row.Unknowns} | {Percent(row.Error)} |\n");
        }

        page.Append(Strides);
        foreach (int strides in new[] { 1, 2, 4, 8 })
        {
            Convergence.Row row = Convergence.Run(elements: 4, strides);
            string usual = strides == 1 ? "**" : "";
            page.Append(CultureInfo.InvariantCulture, $"| {usual}{strides}{usual} | {Percent(row.Error)} |\n");
        }

        page.Append(Fibres);
        foreach ((int rings, int around) in new[] { (3, 8), (4, 12), (5, 16), (8, 16), (12, 24), (24, 48) })
            Fibre(page, "section-A-round-36", $"{rings} × {around}", rings == 5,
                (section, alloy) => FibreGrid.Round(section, alloy, rings, around));
        foreach ((int quarter, int generator) in new[] { (8, 5), (18, 7), (32, 7), (128, 79) })
            Fibre(page, Rectangular(), $"{quarter} a quarter", quarter == 18,
                (section, alloy) => FibreGrid.Rectangular(section, alloy, quarter, generator));
        System.IO.File.WriteAllText(path!, page.ToString());
    }

    private static void Fibre(
        StringBuilder page, string id, string name, bool isUsual,
        Func<Section, Mechanics.Alloys.Alloy, FibreGrid> grid)
    {
        (int fibres, double error) = SectionPath.LargestError(id, grid);
        string usual = isUsual ? "**" : "";
        page.Append(CultureInfo.InvariantCulture,
            $"| `{id}` | {usual}{name}{usual} | {fibres} | {Percent(error)} |\n");
    }

    private static string Rectangular() =>
        BenchmarkFile.Ids("superelastic_section").First(id => id.Contains("rect", StringComparison.Ordinal));

    private static string Percent(double share) =>
        (100 * share).ToString(share < 1e-3 ? "0.000" : "0.00", CultureInfo.InvariantCulture) + " %";

    private const string Head = """
        # Mesh, stride and fibres of superelastic wires

        What is lost by the usual mesh, the usual stride of the path and the usual number of fibres? Written by
        `scripts/convergence.sh` from computed values; a test (`ConvergenceTests`) holds the usual lines. Bold is usual.

        ## Mesh

        The three-slot problem of `mechanics-benchmarks.json` (superelastic, round 0.016 in, the middle slot 3 mm out
        and back): largest difference of the middle force over the whole loop, as a share of its largest. The reference
        is another program with 200 two-node elements on half the wire and 80 layers; its own uncertainty is 0.13 %, so
        figures near that say nothing more.

        | elements in a gap and a slot | unknowns | error |
        |---:|---:|---:|

        """;

    private const string Strides = """

        ## Stride

        The same problem on the usual mesh. The engager goes in strides of at most 0.5 mm; here the way between two
        readings is asked for in so many steps.

        | steps between two readings | error |
        |---:|---:|

        """;

    private const string Fibres = """

        Shorter strides do not help: from four steps on the error grows. Why has not been found. Every committed step
        hands the history from the Gauss points to the stations and lets the wire slide, so more steps do both more
        often; that is where to look.

        ## Fibres

        A section led along a path of curvature, axial force nil, against 2000 layers of another program (its
        uncertainty 0.02 %): largest error of the moment, as a share of its largest. Lanes fill up with
        fibres of no area, so the count may be a little above rings × angles.

        | problem | fibres | count | error |
        |---|---|---:|---:|

        """;
}
