using Archwright.Mechanics.Engagement;
using BenchmarkDotNet.Attributes;

namespace Archwright.Benchmarks;

/// <summary>Whole solves of a full arch.</summary>
public class EngagementBenchmarks : IDisposable
{
    private Engager engager = null!;
    private Problem problem = null!;
    private Step near = null!;
    private Step back = null!;
    private bool isNear;

    public static IEnumerable<string> Names => Problems.FullArches.Select(problem => problem.Name);

    [ParamsSource(nameof(Names))]
    public string Arch { get; set; } = "";

    [GlobalSetup]
    public void Prepare()
    {
        problem = Problems.FullArches.Single(candidate => candidate.Name == Arch);
        (near, back) = problem.WarmSteps();
        engager = new Engager(problem.Arrangement);
        engager.Engage();
    }

    [GlobalCleanup]
    public void Dispose()
    {
        engager.Dispose();
        GC.SuppressFinalize(this);
    }

    [Benchmark(Baseline = true)]
    public EngagementResult Cold() => Timing.Engaged(problem.Arrangement);

    [Benchmark]
    public EngagementResult Warm()
    {
        isNear = !isNear;
        return engager.Apply(isNear ? near : back);
    }
}
