using System.Text.Json.Nodes;
using Archwright.Mechanics.Alloys;
using Archwright.Mechanics.Sections;

namespace Archwright.Mechanics.Tests.Sections;

/// <summary>A section of fibres led along a path of curvature of the reference file, axial force nil.</summary>
internal static class SectionPath
{
    private const int Parts = 40;

    /// <summary>Largest error of the moment, as a share of the largest moment of the reference
    /// (mechanics-benchmarks.json, superelastic_section: 2000 layers of another program).</summary>
    /// <param name="id">Of the problem.</param>
    /// <param name="fibres">The grid for a section and alloy; the usual one when left out.</param>
    /// <returns>Number of fibres, and the error.</returns>
    public static (int Fibres, double Error) LargestError(string id, Func<Section, Alloy, FibreGrid>? fibres = null)
    {
        JsonObject problem = BenchmarkFile.Case("superelastic_section", id);
        Superelastic alloy = BenchmarkFile.Flag(problem["alloy"]);
        Section section = BenchmarkFile.SectionOf(problem["section"]);
        FibreGrid grid = (fibres ?? FibreGrid.For)(section, alloy);
        var law = new FlagLaw(alloy, problem.Number("temperature_degC"));
        var state = new double[2 * grid.Count];
        double largest = 0;
        double error = 0;
        var strain = new SectionStrain(0, 0, 0, 0);
        foreach (JsonNode? row in problem["reference"]!.AsArray())
        {
            SectionForce force = default;
            double from = strain.OverThickness;
            double to = row.Number("curvature_per_mm");
            for (int part = 1; part <= Parts; part++)
            {
                strain = WithoutAxialForce(
                    law, grid, strain with { OverThickness = from + (to - from) * part / Parts }, state, out force);
                FibreSection<FlagLaw>.Commit(law, grid, strain, state);
            }

            double expected = Math.Abs(row.Number("moment_N_mm"));
            largest = Math.Max(largest, expected);
            error = Math.Max(error, Math.Abs(Math.Abs(force.OverThickness) - expected));
        }

        return (grid.Count, error / largest);
    }

    private static SectionStrain WithoutAxialForce(
        FlagLaw law, FibreGrid grid, SectionStrain strain, double[] state, out SectionForce force)
    {
        force = default;
        for (int pass = 0; pass < 60; pass++)
        {
            FibreSection<FlagLaw>.Sum(law, grid, strain, state, out force, out SectionTangent tangent);
            if (Math.Abs(force.Axial) < 1e-10)
                break;

            strain = strain with { Axial = strain.Axial - force.Axial / tangent.AA };
        }

        return strain;
    }
}
