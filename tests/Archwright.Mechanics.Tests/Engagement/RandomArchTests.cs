using System.Diagnostics;
using Archwright.Mechanics.Engagement;
using Archwright.Mechanics.Numerics;

namespace Archwright.Mechanics.Tests.Engagement;

/// <summary>
/// Random arches with random wires: every one is engaged, or the result says where it fails and why. 500 in the normal
/// run, 10,000 with ARCHWRIGHT_NIGHTLY=1, always the same ones; ARCHWRIGHT_FROM shifts the row to others.
/// Prints how many converge, the worst residual, and the time.
/// </summary>
[Trait("basis", "law")]
public sealed class RandomArchTests
{
    // Out-of-balance forces below this share of the largest force on a tooth, or below the absolute figure [N].
    private const double ResidualShare = 1e-5;
    private const double ResidualLeast = 1e-5;

    private static readonly bool Nightly = Environment.GetEnvironmentVariable("ARCHWRIGHT_NIGHTLY") == "1";

    private static readonly int From =
        int.TryParse(Environment.GetEnvironmentVariable("ARCHWRIGHT_FROM"), out int from) ? from : 1;

    [Fact]
    public void Every_arch_is_engaged_or_says_where_and_why_not()
    {
        int count = Nightly ? 10_000 : 500;
        var tries = new Try[count];
        var watch = Stopwatch.StartNew();
        var threads = new ParallelOptions { MaxDegreeOfParallelism = Nightly ? 2 : 1 };
        Parallel.For(0, count, threads, i => tries[i] = Engage(From + i));
        watch.Stop();

        Print(tries, watch.Elapsed);
        Assert.Empty(tries.Where(t => t.Fault != null).Select(t => $"{t.Fault}: {t.Arch}"));
    }

    private static Try Engage(int number)
    {
        var arch = new RandomArch(number);
        var watch = Stopwatch.StartNew();
        try
        {
            EngagementResult result = new Engager(arch.Arrangement).Engage();
            return new Try(arch, result, Fault(result), watch.Elapsed);
        }
        catch (Exception e) when (e is not OperationCanceledException)
        {
            return new Try(arch, null, $"{e.GetType().Name} {e.Message}", watch.Elapsed);
        }
    }

    private static string? Fault(EngagementResult result)
    {
        if (!result.Converged)
        {
            return result.Obstacle is not { Slot: >= 0, Reason.Length: > 20 } obstacle
                ? $"no slot or no reason given ({result.Obstacle})"
                : !double.IsFinite(obstacle.Force) ? "the force of the obstacle is not a number" : null;
        }

        double largest = Largest(result);
        if (!result.Slots.All(s => s.OnTooth.Force.IsFinite && s.OnTooth.Moment.IsFinite && double.IsFinite(s.Drawn)))
            return "a load is not a number";
        if (!double.IsFinite(result.LargestStrain) || !double.IsFinite(result.StoredEnergy))
            return "strain or energy is not a number";

        return result.Residual <= Math.Max(ResidualShare * largest, ResidualLeast)
            ? null
            : $"residual {result.Residual:e2} N at a largest force of {largest:e2} N";
    }

    private static void Print(Try[] tries, TimeSpan time)
    {
        ITestOutputHelper? output = TestContext.Current.TestOutputHelper;
        foreach (Disorder disorder in Enum.GetValues<Disorder>())
        {
            Try[] of = [.. tries.Where(t => t.Arch.Disorder == disorder)];
            Try[] good = [.. of.Where(t => t.Result is { Converged: true })];
            Try slow = of.MaxBy(t => t.Result?.Iterations ?? 0)!;
            double[] ms = [.. of.Select(t => t.Time.TotalMilliseconds).Order()];
            output?.WriteLine(
                $"{disorder}: {good.Length} of {of.Length} engaged ({100.0 * good.Length / of.Length:0.00} %), "
                + $"worst residual {good.Max(t => Share(t.Result!)):e1} of the largest force, "
                + $"{good.Max(t => t.Result!.Residual):e1} N; median {ms[ms.Length / 2]:0.0} ms, "
                + $"99 % below {ms[ms.Length * 99 / 100]:0} ms, longest {ms[^1]:0} ms; "
                + $"most iterations {slow.Result?.Iterations} at #{slow.Arch.Number}");
        }

        output?.WriteLine($"{tries.Length} arches in {time.TotalSeconds:0.0} s");
        foreach (Try failed in tries.Where(t => t.Fault != null || t.Result is not { Converged: true }))
        {
            output?.WriteLine(
                $"{failed.Fault ?? "not engaged"}: {failed.Arch} | {failed.Result?.Obstacle?.Reason} "
                + $"(slot {failed.Result?.Obstacle?.Slot}, {failed.Result?.Iterations} iterations)");
        }
    }

    private static double Share(EngagementResult result)
    {
        double largest = Largest(result);
        return largest < 1e-3 ? 0 : result.Residual / largest;
    }

    // Of the forces on teeth and the pulls on ties: a tie and the base it seats on may balance within one slot.
    private static double Largest(EngagementResult result) =>
        result.Slots.Max(s => Math.Max(s.OnTooth.Force.Length, s.PullOnTie));

    private sealed record Try(RandomArch Arch, EngagementResult? Result, string? Fault, TimeSpan Time);
}
