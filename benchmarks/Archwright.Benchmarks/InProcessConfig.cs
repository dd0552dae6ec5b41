using BenchmarkDotNet.Configs;
using BenchmarkDotNet.Diagnosers;
using BenchmarkDotNet.Jobs;
using BenchmarkDotNet.Toolchains.InProcess.Emit;

namespace Archwright.Benchmarks;

/// <summary>BenchmarkDotNet without a project of its own for each benchmark: that would be built under our rules for
/// warnings, which its generated code does not obey.</summary>
internal sealed class InProcessConfig : ManualConfig
{
    public InProcessConfig()
    {
        Add(DefaultConfig.Instance);
        AddDiagnoser(MemoryDiagnoser.Default);
        AddJob(Job.ShortRun.WithToolchain(InProcessEmitToolchain.Instance));
    }
}
