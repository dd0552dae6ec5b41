using System.Diagnostics;
using Archwright.Dentition.Catalogue;
using Archwright.Dentition.Comparison;
using Archwright.Mechanics.Engagement;
using Archwright.Treatment.Decisions;
using Archwright.Treatment.Forecasts;
using Archwright.Treatment.Ladders;
using Archwright.Treatment.Patients;

namespace Archwright.Benchmarks;

/// <summary>One piece of work over and over, for a profiler to look at.</summary>
internal static class Again
{
    private static readonly TimeSpan Length = TimeSpan.FromSeconds(20);

    /// <summary>What can be repeated.</summary>
    public static string Names => string.Join(", ", Works().Select(work => work.Name));

    /// <summary>Repeats it for twenty seconds, and prints its median time.</summary>
    /// <returns>False where nothing has that name.</returns>
    public static bool Run(string name, TextWriter output)
    {
        (string Name, Action Work) found = Works().FirstOrDefault(work => work.Name == name);
        if (found.Work is null)
            return false;

        List<double> times = [];
        var whole = Stopwatch.StartNew();
        while (whole.Elapsed < Length)
            times.Add(Timing.Once(found.Work));

        times.Sort();
        output.WriteLine($"{name}: {times.Count} times, median {times[times.Count / 2]:0.000} ms");
        return true;
    }

    private static IEnumerable<(string Name, Action Work)> Works()
    {
        foreach (Problem problem in Problems.FullArches)
        {
            string name = problem.Name.Split(',', ' ')[0];
            yield return ($"{name}-cold", () => Timing.Engaged(problem.Arrangement));
            Func<EngagementResult> warm = Timing.WarmSolve(problem);
            yield return ($"{name}-warm", () => warm());
        }

        ForecastRequest moderate = ForecastRequest.Of(Problems.CrowdedFront, weeks: 12);
        yield return ("forecast", () => Forecaster.Run(moderate));
        yield return ("forecast-severe", () => Forecaster.Run(new CrowdedArch().Request(weeks: 12)));
        yield return ("forecast-transforming", () => Forecaster.Run(ForecastTable.WithMemory(moderate)));
        LadderQuestion drawer = LadderTable.Question(whole: false);
        yield return ("ladder", () => LadderAdvisor.Find(drawer, new LadderOptions { Threads = 2 }));
        yield return ("visit", () => VisitAdvisor.Advise(drawer.Today));
        yield return ("visit-catalogue", () => VisitAdvisor.Advise(LadderTable.Question(whole: true).Today));
        yield return ("compare", () => WireComparison.AtWork(
            Problems.CrowdedFront.Arrangement, Problems.CrowdedFront.Axes, WireCatalogue.Default.Wires,
            ForceCeilings.Default));
    }
}
