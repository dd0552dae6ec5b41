using Archwright.Cli.Running;
using Archwright.Dentition.Catalogue;
using Archwright.Treatment.Ladders;

namespace Archwright.Cli.Ladders;

/// <summary>Finds the ladders of a case, or says why that cannot be; for the verb and the API alike.</summary>
internal static class LadderCase
{
    /// <summary>The ladders.</summary>
    /// <exception cref="Refusal">The working wire is thicker than a slot, or the case cannot be set up.</exception>
    public static LadderAdvice Find(
        LadderQuestion question, LadderOptions options, IProgress<LadderProgress>? progress,
        CancellationToken cancellation)
    {
        CheckFits(question);
        try
        {
            return LadderAdvisor.Find(question, options, progress, cancellation);
        }
        catch (ArgumentException fault)
        {
            throw new Refusal("the case cannot be set up: " + Plainly.Message(fault), "Check the slots of the case.");
        }
    }

    private static void CheckFits(LadderQuestion question)
    {
        CatalogueWire working = question.Working.Wire;
        double smallest = question.Today.Arch.Arrangement.Slots.Min(slot => slot.Height);
        if (working.Section.Thickness > smallest)
        {
            throw new Refusal(
                FormattableString.Invariant(
                    $"{working.Id} is {working.Section.Thickness:0.000} mm thick, ")
                + FormattableString.Invariant($"the lowest slot {smallest:0.000} mm."),
                "Name a wire to end with that goes into the slots (to).");
        }
    }
}
