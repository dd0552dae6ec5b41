using System.Collections.Immutable;
using Archwright.Dentition.Catalogue;
using Archwright.Mechanics.Alloys;
using Archwright.Mechanics.Engagement;
using Archwright.Mechanics.Slots;

namespace Archwright.Dentition.Comparison;

/// <summary>Judges one wire after another with figures on engagement and working. Immutable, shared among
/// threads.</summary>
/// <remarks>The elastic answer is found first: it is quick, and it is the answer where the wire stays below its limit.
/// Beyond, the whole law is asked; where it finds no answer, the elastic one stands, which is too high and says
/// so.</remarks>
internal sealed class WorkingFigures(Arrangement arch, WireJudge judge, Engage engage)
{
    private readonly ImmutableArray<SlotFrame> relieved = Places(arch, Engager.Relief);

    /// <summary>The judgement of a wire.</summary>
    /// <param name="wire">Which.</param>
    /// <param name="near">As <see cref="Comparison.Engage"/> takes it.</param>
    /// <param name="cancellation">Gives up.</param>
    public ComparedWire Of(CatalogueWire wire, IEngagedWire? near, CancellationToken cancellation)
    {
        if (judge.TooThick(wire) is string reason)
            return WireJudge.NotTried(wire, reason);

        (IEngagedWire engaged, bool isWhole) = Engaged(arch, wire, near, engage, cancellation);
        using IEngagedWire _ = engaged;
        ComparedWire judged = judge.Tried(wire, engaged.Result);
        if (!judged.Engaged)
            return judged;

        EngagementResult working = engaged.RelievedBy(Engager.Relief, cancellation);
        return judge.WithSentence(judged with
        {
            IsWholeLaw = isWhole,
            Set = isWhole ? engaged.Result.Set : judged.BeyondElasticRange ? null : 0,
            Working = working.Converged ? judge.Figures(working, relieved) : null,
        });
    }

    /// <summary>The wire, engaged with as much of its law as its strain asks for; to be disposed of.</summary>
    internal static (IEngagedWire Wire, bool IsWhole) Engaged(
        Arrangement arch, CatalogueWire wire, IEngagedWire? near, Engage engage, CancellationToken cancellation)
    {
        IEngagedWire elastic = engage(arch with { Wire = wire.Wire }, near, cancellation);
        EngagementResult result = elastic.Result;
        if (!result.Converged || result.Obstacle is not null || !LeavesElastic(wire, result, arch.Temperature))
            return (elastic, false);

        IEngagedWire whole = engage(arch with { Wire = wire.WholeWire }, elastic, cancellation);
        (IEngagedWire kept, IEngagedWire other) = whole.Result.Converged ? (whole, elastic) : (elastic, whole);
        other.Dispose();
        return (kept, kept == whole);
    }

    /// <summary>Where the slots are once every displaced one has come a share of its way.</summary>
    internal static ImmutableArray<SlotFrame> Places(Arrangement arch, double share)
    {
        var places = ImmutableArray.CreateBuilder<SlotFrame>(arch.Slots.Length);
        places.AddRange(arch.Slots.Select(slot => slot.Actual));
        foreach ((int slot, SlotFrame frame) in Engager.Relieving(arch, share).Moves)
            places[slot] = frame;

        return places.MoveToImmutable();
    }

    private static bool LeavesElastic(CatalogueWire wire, EngagementResult elastic, double temperature) =>
        wire.Alloy.WholeLaw is not LinearElastic
        && (wire.InitialModulusOnly
            ? WireComparison.Transforms(wire, elastic.LargestStrain, temperature)
            : elastic.LargestStrain > wire.ElasticStrainLimit);
}
