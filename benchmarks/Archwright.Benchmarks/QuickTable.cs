using System.Runtime.InteropServices;
using Archwright.Dentition.Catalogue;
using Archwright.Dentition.Comparison;
using Archwright.Dentition.Positions;

namespace Archwright.Benchmarks;

/// <summary>A plain table of medians, one core: what a person looks at before and after a change.</summary>
internal static class QuickTable
{
    private const double ColdTarget = 1.5;
    private const double WarmTarget = 0.4;
    private const double CompareTarget = 300;

    /// <summary>Times every problem and prints it.</summary>
    public static void Print(TextWriter output)
    {
        output.WriteLine(Machine());
        output.WriteLine($"Medians, one thread. Targets: cold {ColdTarget} ms, warm {WarmTarget} ms.");
        PrintFullArches(output);
        output.WriteLine("  points: one tooth 2 mm high; crowded: 0.014 in steel in 0.022 slots, walls and clearance;");
        output.WriteLine("  mild: 0.016x0.022 in, a quarter of that crowding; anatomy: crowded average teeth.");
        PrintGrowth(output);
        PrintComparison(output);
        ForecastTable.Print(output);
        LadderTable.Print(output);
    }

    private static void PrintFullArches(TextWriter output)
    {
        output.WriteLine();
        output.WriteLine(
            $"{"full arch of 14 slots",-30}{"cold ms",9}{"set-up",9}{"iter",6}{"µs/iter",9}{"bytes",10}"
            + $"{"warm ms",10}{"iter",6}{"bytes",8}{"ratio",7}");
        double? baseline = null;
        foreach (Problem problem in Problems.FullArches)
        {
            PrintRow(output, problem.Name, () =>
            {
                Timing cold = Timing.Cold(problem.Arrangement);
                Timing warm = Timing.Warm(problem);
                double setUp = Timing.SetUp(problem.Arrangement);
                baseline ??= cold.Milliseconds;
                return $"{cold.Milliseconds,9:0.000}{setUp,9:0.000}{cold.Iterations,6}"
                       + $"{1000 * (cold.Milliseconds - setUp) / Math.Max(1, cold.Iterations),9:0.0}{cold.Bytes,10}"
                       + $"{warm.Milliseconds,10:0.000}{warm.Iterations,6}{warm.Bytes,8}"
                       + $"{cold.Milliseconds / baseline,7:0.00}";
            });
        }
    }

    private static void PrintGrowth(TextWriter output)
    {
        output.WriteLine();
        output.WriteLine(
            $"{"growth, 0.014 round in 0.022",-30}{"cold ms",9}{"per slot",10}{"warm ms",10}{"per slot",10}");
        foreach (int count in new[] { 2, 4, 8, 12, 16 })
        {
            Problem problem = Problems.OfSlots(count);
            PrintRow(output, problem.Name, () =>
            {
                double cold = Timing.Cold(problem.Arrangement).Milliseconds;
                double warm = Timing.Warm(problem).Milliseconds;
                return $"{cold,9:0.000}{cold / count,10:0.0000}{warm,10:0.000}{warm / count,10:0.0000}";
            });
        }
    }

    private static void PrintComparison(TextWriter output)
    {
        IReadOnlyList<CatalogueWire> wires = WireCatalogue.Default.Wires;
        output.WriteLine();
        output.WriteLine(
            $"compare on {Environment.ProcessorCount} cores, crowded front; target: {CompareTarget} ms for the "
            + "catalogue on two cores");
        output.WriteLine($"{"wires",-30}{"number",8}{"engaged",9}{"on engagement ms",18}{"and working ms",16}");
        PrintComparison(output, "the whole catalogue", wires);
        PrintComparison(output, "those that transform", [.. wires.Where(wire => wire.InitialModulusOnly)]);
        PrintComparison(output, "those that do not", [.. wires.Where(wire => !wire.InitialModulusOnly)]);
    }

    private static void PrintComparison(TextWriter output, string name, IReadOnlyList<CatalogueWire> wires)
    {
        ArchSetup arch = Problems.CrowdedFront;
        IReadOnlyList<ComparedWire> compared = [];
        double engaged = MedianOfThree(() => compared = WireComparison.Run(
            arch.Arrangement, arch.Axes, wires, ForceCeilings.Default));
        double atWork = MedianOfThree(() => WireComparison.AtWork(
            arch.Arrangement, arch.Axes, wires, ForceCeilings.Default));
        output.WriteLine(
            $"{name,-30}{wires.Count,8}{compared.Count(wire => wire.Engaged),9}{engaged,18:0}{atWork,16:0}");
    }

    private static double MedianOfThree(Action work)
    {
        work();
        return Enumerable.Range(0, 3).Select(_ => Timing.Once(work)).Order().ElementAt(1);
    }

    // A problem that is not solved gets its reason in place of figures, and the table goes on.
    private static void PrintRow(TextWriter output, string name, Func<string> figures)
    {
        output.Write($"{name,-30}");
        try
        {
            output.WriteLine(figures());
        }
        catch (UnsolvedException unsolved)
        {
            output.WriteLine(unsolved.Message);
        }
    }

    private static string Machine()
    {
        const string cpuInfo = "/proc/cpuinfo";
        string? model = File.Exists(cpuInfo)
            ? File.ReadLines(cpuInfo).FirstOrDefault(line => line.StartsWith("model name", StringComparison.Ordinal))
            : Environment.GetEnvironmentVariable("PROCESSOR_IDENTIFIER");
        return $"{model?.Split(':')[^1].Trim() ?? "unknown processor"} ({Environment.ProcessorCount} cores), "
               + $"{RuntimeInformation.OSDescription} {RuntimeInformation.ProcessArchitecture}, "
               + RuntimeInformation.FrameworkDescription;
    }
}
