using System.Collections.Immutable;
using Archwright.Dentition.Comparison;
using Archwright.Dentition.Positions;
using Archwright.Dentition.Teeth;
using Archwright.Mechanics.Engagement;

namespace Archwright.Practice.Advice;

/// <summary>What a wire does to one tooth.</summary>
/// <param name="Tooth">Which.</param>
/// <param name="Load">Force and moment on the tooth at its slot.</param>
/// <param name="Above">The worst kind of load above its ceiling; null when none is.</param>
public sealed record ToothLoad(ToothNumber Tooth, ClinicalLoad Load, ToothAboveCeiling? Above);

/// <summary>One wire engaged on one arch: the arch, and what the wire does there, or why it does not go in.</summary>
public sealed record WireAtWork
{
    /// <summary>The arch with the wire.</summary>
    public required ArchSetup Arch { get; init; }

    /// <summary>The engagement.</summary>
    public required EngagementResult Result { get; init; }

    /// <summary>One a slot, in order; empty when the wire does not go in, so that no old figure can stay on a
    /// screen.</summary>
    public required ImmutableArray<ToothLoad> Loads { get; init; }

    /// <summary>Why it does not go in; null when it does.</summary>
    public string? WhyNot { get; init; }

    /// <summary>True when the loads are those of a wire at work: every displaced tooth has come
    /// <see cref="Engager.Relief"/> of its way, and a wire that transforms unloads along its lower line.</summary>
    public bool IsWorking { get; init; }

    /// <summary>Engages a wire.</summary>
    /// <param name="inputs">The arch.</param>
    /// <param name="wireId">A wire of the catalogue.</param>
    /// <param name="ceilings">What teeth may bear.</param>
    /// <param name="cancellation">Gives up.</param>
    /// <exception cref="ArgumentException">The inputs do not hold together; the message says how.</exception>
    public static WireAtWork Engage(
        AdviceInputs inputs, string wireId, ForceCeilings ceilings, CancellationToken cancellation = default)
    {
        ArchSetup arch = ArchModel.Build(inputs, wireId);
        ComparedWire compared = WireComparison.Run(
            arch.Arrangement, arch.Axes, [arch.Wire], ceilings, cancellation: cancellation)[0];
        bool engaged = compared is { Engaged: true, Result: not null };
        return new WireAtWork
        {
            Arch = arch,
            Result = compared.Result ?? NotTried,
            WhyNot = engaged ? null : compared.Sentence,
            Loads = engaged ? [.. arch.Teeth.Select((tooth, i) => Load(arch, compared, tooth, i))] : [],
        };
    }

    /// <summary>The same wire at work, see <see cref="IsWorking"/>. Ceilings are those of engagement and are not asked
    /// again: loads at work are lower.</summary>
    /// <param name="cancellation">Gives up.</param>
    /// <returns>Null where that state is not found, or the wire is not in.</returns>
    public WireAtWork? AtWork(CancellationToken cancellation = default)
    {
        if (WhyNot is not null)
            return null;

        using var engager = new Engager(Arch.Arrangement with { Wire = Arch.Wire.WholeWire });
        if (!engager.Engage(cancellation).Converged
            || engager.Working(cancellation) is not { Converged: true } working)
        {
            return null;
        }

        return this with
        {
            IsWorking = true,
            Result = working,
            Loads =
            [
                .. Loads.Select((load, i) => load with
                {
                    Load = Arch.Axes[i].Resolve(Arch.Slots[i].Actual, working.Slots[i].OnTooth),
                }),
            ],
        };
    }

    private static ToothLoad Load(ArchSetup arch, ComparedWire compared, ToothNumber tooth, int slot) => new(
        tooth,
        arch.Axes[slot].Resolve(arch.Slots[slot].Actual, compared.Result!.Slots[slot].OnTooth), // engaged: has a result
        compared.TeethAboveCeiling.Where(one => one.Slot == slot).MaxBy(one => one.Ratio));

    // A wire that is too thick for a slot is not tried; its result is that of a wire that found no rest.
    private static EngagementResult NotTried { get; } = new()
    {
        Converged = false,
        Residual = double.NaN,
        Slots = [],
        LargestStrain = 0,
        StoredEnergy = 0,
        CentreLine = [],
        Iterations = 0,
    };
}
