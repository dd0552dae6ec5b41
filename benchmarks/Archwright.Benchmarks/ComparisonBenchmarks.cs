using Archwright.Dentition.Catalogue;
using Archwright.Dentition.Comparison;
using Archwright.Dentition.Positions;
using BenchmarkDotNet.Attributes;

namespace Archwright.Benchmarks;

/// <summary>Every wire of the catalogue on one arch, on all cores: what the clinician waits for.</summary>
public class ComparisonBenchmarks
{
    private readonly ArchSetup arch = Problems.CrowdedFront;

    [Benchmark]
    public IReadOnlyList<ComparedWire> Compare() =>
        WireComparison.Run(arch.Arrangement, arch.Axes, WireCatalogue.Default.Wires, ForceCeilings.Default);
}
