using System.Globalization;
using Archwright.Dentition.Catalogue;
using Archwright.Dentition.Positions;
using Archwright.Treatment.Decisions;
using Archwright.Treatment.Ladders;

namespace Archwright.Benchmarks;

/// <summary>Time of ladders: most of it is forecasts.</summary>
internal static class LadderTable
{
    private const double Target = 10;

    private static readonly string[] Drawer =
    [
        "niti-012", "niti-014", "niti-016", "niti-018", "niti-016x022", "niti-019x025", "ss-016", "ss-018",
        "ss-019x025", "bti-016", "bti-019x025",
    ];

    /// <summary>Prints it.</summary>
    public static void Print(TextWriter output)
    {
        output.WriteLine();
        foreach (string name in new[] { "drawer of 11", "whole catalogue" })
        {
            LadderAdvice? advice = null;
            double seconds = Timing.Once(() => advice = LadderAdvisor.Find(
                Question(name[0] == 'w'), new LadderOptions { Threads = 2 })) / 1000;
            output.WriteLine(string.Create(CultureInfo.InvariantCulture,
                $"ladder on an upper arch, {name}, two threads: {seconds:0.0} s, {advice!.Forecasts} forecasts, "
                + $"{advice.Answers.Length} answers. Target: {Target} s."));
        }
    }

    /// <summary>The question that is timed.</summary>
    /// <param name="whole">Of the whole catalogue, not of the drawer.</param>
    internal static LadderQuestion Question(bool whole)
    {
        ArchSetup arch = Problems.MildFront;
        return new LadderQuestion
        {
            Today = new VisitQuestion
            {
                Arch = ArchToday.Of(arch), AgeYears = 14, Alerts = [],
                Choice = [.. WireCatalogue.Default.Wires.Where(wire => whole || Drawer.Contains(wire.Id))],
                ChoiceIsStock = !whole,
            },
        };
    }
}
