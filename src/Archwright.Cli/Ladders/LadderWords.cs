using System.Globalization;
using Archwright.Dentition.Teeth;
using Archwright.Treatment.Ladders;
using Archwright.Treatment.Uncertainty;

namespace Archwright.Cli.Ladders;

/// <summary>Words of the report of ladders.</summary>
internal static class LadderWords
{
    /// <summary>Name and length of an answer, with the kinds that are the same wires.</summary>
    public static string Headline(LadderAnswer answer)
    {
        string[] names = [.. answer.SameAs.Prepend(answer.Kind).Select(kind => kind.Name())];
        string name = names.Length == 1 ? names[0] : $"{string.Join(", ", names[..^1])} and {names[^1]}";
        return $"{char.ToUpperInvariant(name[0])}{name[1..]}: {Length(answer)}";
    }

    /// <summary>Visits and weeks, with their ranges.</summary>
    public static string Length(LadderAnswer answer)
    {
        if (answer.Stop is not null)
            return "does not come to its end";
        if (answer.Visits.P50 == 0)
            return "goes in today";

        string visits = answer.Visits is { P50: 1, P90: 1 } ? "visit" : "visits";
        return $"{Range(answer.Visits)} {visits} after today, {Range(answer.TotalWeeks)} weeks";
    }

    /// <summary>"2", "2 (1 to 4)", "2 (1 to …)" where some patients do not get there.</summary>
    public static string Range(Percentiles range) => range.P10 == range.P90 ? Figure(range.P50)
        : $"{Figure(range.P50)} ({Figure(range.P10)} to {Figure(range.P90)})";

    /// <summary>What else to say of an answer.</summary>
    public static IEnumerable<string> Notes(LadderAnswer answer, ToothNotation notation)
    {
        string[] ties = [.. answer.TiesWith.Except(answer.SameAs).Select(kind => kind.Name())];
        if (ties.Length > 0)
            yield return $"= {string.Join(" and ", ties)}: no difference that could be relied on.";
        if (answer.Cost is { } cost)
            yield return $"Its new wires cost {cost.ToString("0.00", CultureInfo.InvariantCulture)}.";
        foreach (LadderStep step in answer.Steps)
        {
            if (!step.PartialTies.IsEmpty)
            {
                yield return $"{step.Wire.Id}: tied at a distance at "
                    + string.Join(", ", step.PartialTies.Select(tooth => tooth.Show(notation))) + ".";
            }

            if (step.Waited > 0)
            {
                string visits = step.Waited == 1 ? "one visit" : $"{Figure(step.Waited)} visits";
                yield return $"{step.Wire.Id}: might go in {visits} sooner; put off, since it is gentler then.";
            }

            if (!step.Twins.IsEmpty)
                yield return $"{step.Wire.Id}: {string.Join(", ", step.Twins.Select(wire => wire.Id))} would do alike.";
            foreach (var finding in step.Against)
                yield return $"! {step.Wire.Id}: {finding.Sentence}";
        }

        if (answer.Stop is { } stop)
            yield return $"It ends early: {stop}";
        if (!answer.IsProven)
            yield return "The search stopped before everything was looked at: a better one may exist.";
    }

    /// <summary>A whole figure, or dots for "not within the visits looked at".</summary>
    public static string Figure(double value) =>
        double.IsFinite(value) ? value.ToString("0", CultureInfo.InvariantCulture) : "…";
}
