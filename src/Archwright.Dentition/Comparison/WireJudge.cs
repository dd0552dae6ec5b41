using System.Collections.Immutable;
using Archwright.Dentition.Catalogue;
using Archwright.Dentition.Positions;
using Archwright.Dentition.Teeth;
using Archwright.Mechanics.Engagement;
using Archwright.Mechanics.Slots;

namespace Archwright.Dentition.Comparison;

/// <summary>Judges what a wire does on one arch. Immutable, shared among threads.</summary>
internal sealed class WireJudge
{
    private const double SizeTolerance = 1e-9;

    private readonly Arrangement arch;
    private readonly IReadOnlyList<ClinicalAxes> axes;
    private readonly ForceCeilings ceilings;
    private readonly WireSentences sentences;

    /// <exception cref="ArgumentException">Slots and axes are not as many.</exception>
    public WireJudge(Arrangement arch, IReadOnlyList<ClinicalAxes> axes, ForceCeilings ceilings)
    {
        if (axes.Count != arch.Slots.Length)
        {
            throw new ArgumentException(
                $"{axes.Count} axes were given for {arch.Slots.Length} slots.", nameof(axes));
        }

        this.arch = arch;
        this.axes = axes;
        this.ceilings = ceilings;
        sentences = new WireSentences(arch);
    }

    /// <summary>Why the wire does not fit a slot that is to hold it; null when it fits all.</summary>
    public string? TooThick(CatalogueWire wire)
    {
        for (int i = 0; i < arch.Slots.Length; i++)
        {
            if (!HasWalls(arch.Slots[i]))
                continue;
            if (wire.Section.Thickness > arch.Slots[i].Height + SizeTolerance)
                return sentences.TooThick(wire, i);
            if (wire.Section.Width > arch.Slots[i].Depth + SizeTolerance)
                return sentences.TooWide(wire, i);
        }

        return null;
    }

    /// <summary>The judgement of a wire that is too thick.</summary>
    public static ComparedWire NotTried(CatalogueWire wire, string reason) => new()
    {
        Wire = wire,
        Engaged = false,
        WhyNot = reason,
        Verdict = WireVerdict.NotEngaged,
        StrainLimit = wire.ElasticStrainLimit,
        TorquePlay = 0,
        Sentence = WireSentences.CannotGoIn(reason),
    };

    /// <summary>The judgement of a wire that was tried.</summary>
    public ComparedWire Tried(CatalogueWire wire, EngagementResult result)
    {
        if (!result.Converged || result.Obstacle is not null)
            return NotEngaged(wire, result);

        ForceFigures figures = Figures(result, [.. arch.Slots.Select(slot => slot.Actual)]);
        var judged = new ComparedWire
        {
            Wire = wire,
            Engaged = true,
            Verdict = Verdict(wire, result, figures.TeethAboveCeiling),
            LargestForce = figures.LargestForce,
            LargestForceSlot = figures.LargestForceSlot,
            LargestMoment = figures.LargestMoment,
            LargestMomentSlot = figures.LargestMomentSlot,
            TeethAboveCeiling = figures.TeethAboveCeiling,
            LargestShareOfCeiling = figures.LargestShareOfCeiling,
            MaxStrain = result.LargestStrain,
            MaxStrainNear = result.LargestStrainNear,
            StrainLimit = wire.ElasticStrainLimit,
            TorquePlay = LargestPlay(wire),
            Result = result,
            Sentence = "",
        };
        return WithSentence(judged);
    }

    /// <summary>The figures of a state.</summary>
    /// <param name="result">The loads.</param>
    /// <param name="places">Where the slots are, one a slot.</param>
    public ForceFigures Figures(EngagementResult result, ImmutableArray<SlotFrame> places)
    {
        ImmutableArray<ClinicalLoad> loads =
            [.. result.Slots.Select((slot, i) => axes[i].Resolve(places[i], slot.OnTooth))];
        (double share, ImmutableArray<ToothAboveCeiling> above) = AgainstCeilings(loads);
        int force = IndexOfLargest(loads, load => load.Force);
        int moment = IndexOfLargest(loads, load => load.Moment);
        return new ForceFigures(loads[force].Force, force, loads[moment].Moment, moment, above, share);
    }

    /// <summary>The same judgement with what was found besides: the sentence says it.</summary>
    public ComparedWire WithSentence(ComparedWire judged) => judged with { Sentence = sentences.Engaged(judged) };

    private ComparedWire NotEngaged(CatalogueWire wire, EngagementResult result)
    {
        string reason = result.Obstacle?.Reason
            ?? $"no equilibrium was found (out of balance by {WireSentences.Newtons(result.Residual)}).";
        return NotTried(wire, reason) with { Result = result, TorquePlay = LargestPlay(wire) };
    }

    private static WireVerdict Verdict(
        CatalogueWire wire, EngagementResult result, ImmutableArray<ToothAboveCeiling> above)
    {
        if (result.LargestStrain > wire.ElasticStrainLimit && !wire.InitialModulusOnly)
            return WireVerdict.BendsForGood;

        return above.IsEmpty ? WireVerdict.WithinLimits : WireVerdict.AboveCeiling;
    }

    private (double Share, ImmutableArray<ToothAboveCeiling> Above) AgainstCeilings(ImmutableArray<ClinicalLoad> loads)
    {
        double largest = 0;
        var above = ImmutableArray.CreateBuilder<ToothAboveCeiling>();
        for (int i = 0; i < loads.Length; i++)
        {
            if (!ToothNumber.TryParse(arch.Slots[i].Label, out ToothNumber tooth))
                continue;
            foreach (LoadKind kind in LoadKinds.All)
            {
                if (ceilings.Find(tooth, kind) is not { } ceiling)
                    continue;
                double figure = kind.Of(loads[i]);
                largest = Math.Max(largest, figure / ceiling.Limit.Value);
                if (figure > ceiling.Limit.Value)
                    above.Add(new ToothAboveCeiling(i, kind, figure, ceiling.Limit.Value));
            }
        }

        return (largest, above.ToImmutable());
    }

    private double LargestPlay(CatalogueWire wire)
    {
        double largest = 0;
        bool any = false;
        foreach (Slot slot in arch.Slots.Where(HasWalls))
        {
            any = true;
            // A slot given as exactly the wire's thickness may be a rounding error lower.
            largest = Math.Max(largest, wire.Section.TorquePlay(Math.Max(slot.Height, wire.Section.Thickness)));
        }

        return any ? largest : double.PositiveInfinity;
    }

    private static bool HasWalls(Slot slot) =>
        slot.Hold is Hold.Walls or Hold.EdgesOnly && slot.Tie.Kind is not (TieKind.None or TieKind.Partial);

    private static int IndexOfLargest(ImmutableArray<ClinicalLoad> loads, Func<ClinicalLoad, double> figure)
    {
        int largest = 0;
        for (int i = 1; i < loads.Length; i++)
        {
            if (figure(loads[i]) > figure(loads[largest]))
                largest = i;
        }

        return largest;
    }
}
