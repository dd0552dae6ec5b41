using System.Diagnostics;
using System.Globalization;
using Archwright.Mechanics.Engagement;
using Archwright.Mechanics.Numerics;

namespace Archwright.Mechanics.Tests.Engagement;

/// <summary>
/// Random arches with random wires: every one is engaged, or the result says where it fails and why. 500 elastic ones
/// and 30 of any alloy in the normal run, 10,000 of each with ARCHWRIGHT_NIGHTLY=1 or as many as ARCHWRIGHT_ARCHES
/// says, always the same ones; ARCHWRIGHT_FROM shifts the row to others. Prints, per class, how many converge, the
/// worst residual, and the time: scripts/random-arches.sh.
/// </summary>
[Trait("basis", "law")]
public sealed class RandomArchTests
{
    // Out-of-balance forces below this share of the largest force on a tooth, or below the absolute figure [N].
    private const double ResidualShare = 1e-5;
    private const double ResidualLeast = 1e-5;
    private const double Relief = 0.05;

    private static readonly bool Nightly = Environment.GetEnvironmentVariable("ARCHWRIGHT_NIGHTLY") == "1";

    private static readonly int From =
        int.TryParse(Environment.GetEnvironmentVariable("ARCHWRIGHT_FROM"), out int from) ? from : 1;

    private static readonly int? Asked =
        int.TryParse(Environment.GetEnvironmentVariable("ARCHWRIGHT_ARCHES"), out int asked) ? asked : null;

    [Fact]
    public void Every_arch_is_engaged_or_says_where_and_why_not() =>
        Run(500, number => new RandomArch(number).Arrangement);

    /// <summary>A third elastic, a third that transform, a third that yield, in the same arches, slots and
    /// ties.</summary>
    [Fact]
    public void Every_arch_is_engaged_or_says_where_and_why_not_whatever_the_alloy() =>
        Run(30, number => RandomAlloy.Into(new RandomArch(number).Arrangement, number));

    /// <summary>The same once more with a coefficient of friction from 0.05 to 0.45, then all teeth a twentieth of
    /// their way toward rest: what follows engagement meets friction.</summary>
    [Fact]
    public void Every_wire_with_friction_follows_its_teeth_or_says_where_and_why_not() =>
        Run(
            30, number => RandomAlloy.Into(new RandomArch(number).Arrangement, number)
                .WithFriction(0.05 + 0.1 * (number % 5)),
            follows: true);

    private static void Run(int usual, Func<int, Arrangement> draw, bool follows = false)
    {
        int count = Asked ?? (Nightly ? 10_000 : usual);
        var tries = new Try[count];
        var watch = Stopwatch.StartNew();
        var threads = new ParallelOptions { MaxDegreeOfParallelism = count > usual ? 2 : 1 };
        Parallel.For(0, count, threads, i => tries[i] = Engage(From + i, draw, follows));
        watch.Stop();

        Print(tries, watch.Elapsed);
        Assert.Empty(tries.Where(t => t.Fault != null).Select(t => $"{t.Fault}: {t.Arch}"));
    }

    private static Try Engage(int number, Func<int, Arrangement> draw, bool follows)
    {
        var arch = new RandomArch(number);
        Arrangement arrangement = draw(number);
        string alloy = RandomAlloy.Name(arrangement.Wire.Alloy);
        var watch = Stopwatch.StartNew();
        try
        {
            var engager = new Engager(arrangement);
            EngagementResult result = engager.Engage();
            if (follows && result.Converged)
                result = engager.Apply(Engager.Relieving(arrangement, Relief));
            return new Try(arch, alloy, result, Fault(result), watch.Elapsed);
        }
        catch (Exception e) when (e is not OperationCanceledException)
        {
            return new Try(arch, alloy, null, $"{e.GetType().Name} {e.Message}", watch.Elapsed);
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
        output?.WriteLine("| wire | teeth | arches | engaged | worst residual, of the largest force | N | median ms "
            + "| 99 % below | longest | most iterations |");
        output?.WriteLine("|---|---|---:|---:|---:|---:|---:|---:|---:|---:|");
        foreach (var of in tries.GroupBy(t => (t.Alloy, t.Arch.Disorder)).OrderBy(group => group.Key))
            output?.WriteLine(Line(of.Key.Alloy, of.Key.Disorder.ToString().ToLowerInvariant(), [.. of]));
        output?.WriteLine(Line("**all**", "", tries));
        output?.WriteLine($"{tries.Length} arches in {time.TotalSeconds:0.0} s");
        foreach (Try failed in tries.Where(t => t.Fault != null || t.Result is not { Converged: true }))
        {
            output?.WriteLine(
                $"{failed.Fault ?? "not engaged"}: {failed.Arch} | {failed.Result?.Obstacle?.Reason} "
                + $"(slot {failed.Result?.Obstacle?.Slot}, {failed.Result?.Iterations} iterations)");
        }
    }

    private static string Line(string alloy, string teeth, Try[] of)
    {
        Try[] good = [.. of.Where(t => t.Result is { Converged: true })];
        double[] ms = [.. of.Select(t => t.Time.TotalMilliseconds).Order()];
        double share = good.Select(t => Share(t.Result!)).DefaultIfEmpty(0).Max();
        double residual = good.Select(t => t.Result!.Residual).DefaultIfEmpty(0).Max();
        Try slow = of.MaxBy(t => t.Result?.Iterations ?? 0)!;
        return string.Create(CultureInfo.InvariantCulture,
            $"| {alloy} | {teeth} | {of.Length} | {100.0 * good.Length / of.Length:0.00} % | {share:0.0e0} | "
            + $"{residual:0.0e0} | {ms[ms.Length / 2]:0.0} | {ms[ms.Length * 99 / 100]:0} | {ms[^1]:0} | "
            + $"{slow.Result?.Iterations} at #{slow.Arch.Number} |");
    }

    private static double Share(EngagementResult result)
    {
        double largest = Largest(result);
        return largest < 1e-3 ? 0 : result.Residual / largest;
    }

    // Of the forces on teeth and the pulls on ties: a tie and the base it seats on may balance within one slot.
    private static double Largest(EngagementResult result) =>
        result.Slots.Max(s => Math.Max(s.OnTooth.Force.Length, s.PullOnTie));

    private sealed record Try(
        RandomArch Arch, string Alloy, EngagementResult? Result, string? Fault, TimeSpan Time);
}
