using Archwright.Mechanics.Sections;
using BenchmarkDotNet.Attributes;

namespace Archwright.Benchmarks;

/// <summary>Constants of a section: paid once a wire, by every wire of the catalogue.</summary>
public class SectionBenchmarks
{
    [Benchmark(Baseline = true)]
    public Section Round() => Section.Round(0.4064);

    [Benchmark]
    public Section Sharp() => Section.Rectangular(0.4826, 0.635);

    [Benchmark]
    public Section Rounded() => Section.Rectangular(0.4826, 0.635, 0.05);
}
