using System.Collections.Immutable;
using Archwright.Mechanics.Engagement;

namespace Archwright.Dentition.Comparison;

/// <summary>How the force of a wire lasts as the teeth come in: force against remaining offset, along the unloading
/// branch. Immutable, shared among threads.</summary>
internal sealed class LastingForce(Arrangement arch, WireJudge judge, Engage engage)
{
    /// <summary>Shares of the offset that remain, at which the force is read after engagement; the first is the
    /// working state.</summary>
    public static ImmutableArray<double> OffsetsLeft { get; } = [1 - Engager.Relief, 0.75, 0.5, 0.25];

    /// <summary>The readings of a wire; empty for one that does not go in. A reading that is not found is left
    /// out.</summary>
    public ImmutableArray<RemainingForce> Of(
        ComparedWire compared, IEngagedWire? near, CancellationToken cancellation)
    {
        if (!compared.Engaged)
            return [];

        (IEngagedWire wire, _) = WorkingFigures.Engaged(arch, compared.Wire, near, engage, cancellation);
        using IEngagedWire given = wire;
        int most = compared.LargestForceSlot;
        var readings = ImmutableArray.CreateBuilder<RemainingForce>();
        readings.Add(Read(1, wire.Result, most));
        foreach (double left in OffsetsLeft)
        {
            EngagementResult result = wire.RelievedBy(1 - left, cancellation);
            if (result.Converged)
                readings.Add(Read(left, result, most));
        }

        return readings.ToImmutable();
    }

    private RemainingForce Read(double left, EngagementResult result, int slot)
    {
        ForceFigures figures = judge.Figures(result, WorkingFigures.Places(arch, 1 - left));
        return new RemainingForce(
            left, result.Slots[slot].OnTooth.Force.Length, figures.LargestForce, figures.LargestForceSlot);
    }
}
