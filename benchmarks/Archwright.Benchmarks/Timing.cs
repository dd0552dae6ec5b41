using System.Diagnostics;
using Archwright.Mechanics.Engagement;

namespace Archwright.Benchmarks;

/// <summary>Median time of many repetitions on this thread, and what one of them allocates.</summary>
/// <param name="Milliseconds">Median [ms].</param>
/// <param name="Bytes">Allocated by one repetition.</param>
/// <param name="Iterations">Newton iterations of the last repetition.</param>
internal readonly record struct Timing(double Milliseconds, long Bytes, int Iterations)
{
    private const int Least = 25;
    private const int Most = 2000;
    private static readonly TimeSpan WarmUp = TimeSpan.FromSeconds(0.7);
    private static readonly TimeSpan Measuring = TimeSpan.FromSeconds(1);

    /// <summary>From nothing to the result: a new engager, prepared and engaged.</summary>
    public static Timing Cold(Arrangement arrangement) => Of(() => Engaged(arrangement));

    /// <summary>From one solution to the next: the slots go a little nearer to rest and back, in turn.</summary>
    public static Timing Warm(Problem problem) => Of(WarmSolve(problem));

    /// <summary>An engaged wire, and what takes it there and back in turn.</summary>
    public static Func<EngagementResult> WarmSolve(Problem problem)
    {
        var engager = new Engager(problem.Arrangement);
        Check(engager.Engage());
        (Step near, Step back) = problem.WarmSteps();
        bool isNear = false;
        return () =>
        {
            isNear = !isNear;
            return engager.Apply(isNear ? near : back);
        };
    }

    /// <summary>The part of a cold solve that prepares the wire and the workspace.</summary>
    public static double SetUp(Arrangement arrangement)
    {
        EngagementResult result = Check(Engaged(arrangement));
        return Of(() =>
        {
            using var engager = new Engager(arrangement);
            return result;
        }).Milliseconds;
    }

    /// <summary>A cold solve.</summary>
    public static EngagementResult Engaged(Arrangement arrangement)
    {
        using var engager = new Engager(arrangement);
        return engager.Engage();
    }

    /// <summary>Time of one run of anything [ms].</summary>
    public static double Once(Action work)
    {
        long start = Stopwatch.GetTimestamp();
        work();
        return Stopwatch.GetElapsedTime(start).TotalMilliseconds;
    }

    /// <summary>Median of repetitions: warmed up first, then for about a second.</summary>
    public static Timing Of(Func<EngagementResult> solve)
    {
        EngagementResult last = Repeat(solve, WarmUp, []);
        List<double> times = [];
        long before = GC.GetAllocatedBytesForCurrentThread();
        last = Check(Repeat(solve, Measuring, times));
        long bytes = (GC.GetAllocatedBytesForCurrentThread() - before) / times.Count;
        times.Sort();
        return new Timing(times[times.Count / 2], bytes, last.Iterations);
    }

    // The list of times is large enough from the start, so that it adds nothing to what is allocated.
    private static EngagementResult Repeat(Func<EngagementResult> solve, TimeSpan length, List<double> times)
    {
        times.EnsureCapacity(Most);
        var whole = Stopwatch.StartNew();
        EngagementResult result;
        do
        {
            long start = Stopwatch.GetTimestamp();
            result = solve();
            times.Add(Stopwatch.GetElapsedTime(start).TotalMilliseconds);
        }
        while (times.Count < Least || (times.Count < Most && whole.Elapsed < length));

        return result;
    }

    // A solve that fails early would be the fastest of all.
    private static EngagementResult Check(EngagementResult result) => result.Converged
        ? result
        : throw new UnsolvedException(result.Obstacle?.Reason ?? "It did not converge.");
}

/// <summary>There is nothing to time: the problem was not solved.</summary>
internal sealed class UnsolvedException(string reason) : Exception(reason);
