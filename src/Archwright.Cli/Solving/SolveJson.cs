using Archwright.Exchange.Results;

namespace Archwright.Cli.Solving;

/// <summary>A solved case as <c>archwright-forces/1</c>.</summary>
internal static class SolveJson
{
    /// <summary>Writes the document.</summary>
    public static void Write(Stream stream, SolvedCase solved)
    {
        // Without an equilibrium there is nothing to go on from, and no warm time: then the single solve is reported.
        SolveTime time = solved.Repeated is { } repeated && double.IsFinite(repeated.WarmMilliseconds)
            ? new SolveTime.Repeated(repeated.ColdMilliseconds, repeated.WarmMilliseconds)
            : new SolveTime.Once(solved.ElapsedMilliseconds);
        ForcesJson.Write(
            new ForcesReport
            {
                Case = solved.Case,
                Engaged = solved.Engaged.Result,
                Steps = [.. solved.Steps.Select(step => step.Result)],
                Time = time,
                Working = solved.Working,
                Law = solved.Law.Code,
                WhyNotWholeLaw = solved.Law.WhyNotWhole,
            },
            stream);
        stream.Flush();
    }
}
