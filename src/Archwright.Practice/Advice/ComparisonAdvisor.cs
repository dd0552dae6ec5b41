using System.Reflection;
using Archwright.Dentition.Catalogue;
using Archwright.Dentition.Comparison;
using Archwright.Dentition.Positions;
using Archwright.Practice.People;
using Archwright.Practice.Values;

namespace Archwright.Practice.Advice;

/// <summary>Advice from the comparison of wires on today's arch: what each would do at the moment of engagement. It
/// does not know of weeks to come, so it ranks and says nothing of staying or changing.</summary>
/// <param name="ceilings">What teeth may bear.</param>
/// <param name="clock">The time of the advice.</param>
public sealed class ComparisonAdvisor(ForceCeilings ceilings, TimeProvider clock) : IWireAdvisor
{
    /// <summary>Version of the program as it stands in the record.</summary>
    public static string ProgramVersion { get; } = typeof(ComparisonAdvisor).Assembly
        .GetCustomAttribute<AssemblyInformationalVersionAttribute>()?.InformationalVersion ?? "unknown";

    /// <inheritdoc/>
    public string PolicyVersion => "comparison-1";

    /// <inheritdoc/>
    public Recommendation Advise(
        AdviceInputs inputs, IProgress<AdviceProgress>? progress = null, CancellationToken cancellation = default)
    {
        IReadOnlyList<CatalogueWire> wires = Known(inputs.Stock);
        if (wires.Count == 0)
            return Answer(inputs, Listing<AdvisedWire>.Empty);

        ArchSetup arch = ArchModel.Build(inputs, wires[0].Id);
        IReadOnlyList<ComparedWire> ranked = WireComparison.Run(
            arch.Arrangement, arch.Axes, wires, ceilings, new Counting(progress, wires.Count), cancellation);
        IEnumerable<AdvisedWire> options = ranked.Select(wire => Option(inputs, arch, wire));
        return Answer(inputs, Listing<AdvisedWire>.Of(options.OrderBy(option => option.Fitness switch
        {
            WireFitness.AgainstAnAlert => 3,
            WireFitness.CannotGoIn => 2,
            WireFitness.Fits => 0,
            _ => 1,
        })));
    }

    private static AdvisedWire Option(AdviceInputs inputs, ArchSetup arch, ComparedWire wire)
    {
        bool allergic = inputs.Alerts.Contains(AlertKind.Nickel) && wire.Wire.Alloy.Nickel.Value > NickelOfSteel;
        return new AdvisedWire(
            wire.Wire.Id,
            allergic ? WireFitness.AgainstAnAlert : Fitness(wire.Verdict),
            wire.Engaged ? wire.LargestForce : null,
            wire.LargestForceSlot >= 0 ? arch.Teeth[wire.LargestForceSlot].ToIso() : "",
            allergic ? $"Holds nickel, and this patient reacts to it. {wire.Sentence}" : wire.Sentence);
    }

    // Steel binds its nickel in the lattice and is mostly borne by people who react to nickel (British Dental Journal
    // 2008, found in excerpt); a caution stands beside it. NiTi holds about half of its weight.
    private const double NickelOfSteel = 20;

    private static WireFitness Fitness(WireVerdict verdict) => verdict switch
    {
        WireVerdict.WithinLimits => WireFitness.Fits,
        WireVerdict.AboveCeiling => WireFitness.TooStrong,
        WireVerdict.BendsForGood => WireFitness.Bends,
        _ => WireFitness.CannotGoIn,
    };

    private Recommendation Answer(AdviceInputs inputs, Listing<AdvisedWire> options)
    {
        bool look = inputs.Alerts.Any(alert => alert is AlertKind.RootShortening or AlertKind.Medicine);
        AdvisedWire? best = options.FirstOrDefault(option => option.Fitness == WireFitness.Fits);
        return new Recommendation
        {
            Kind = look || best is null ? AdviceKind.LookFirst : AdviceKind.Ranking,
            WireId = best?.WireId ?? "",
            Options = options,
            Cautions = Listing<string>.Of(Cautions(inputs, best)),
            Inputs = inputs,
            PolicyVersion = PolicyVersion,
            ProgramVersion = ProgramVersion,
            GivenAt = clock.GetUtcNow(),
        };
    }

    private static IEnumerable<string> Cautions(AdviceInputs inputs, AdvisedWire? best)
    {
        if (best is null)
            yield return "No wire in stock goes in within the ceilings today.";
        if (inputs.Alerts.Contains(AlertKind.RootShortening))
            yield return "Roots have become shorter: decide on the films, not on this ranking.";
        if (inputs.Alerts.Contains(AlertKind.Medicine))
            yield return "A medicine that changes tooth movement: decide with the prescriber.";
        if (inputs.Alerts.Contains(AlertKind.ReducedSupport))
            yield return "Less bone than usual: the ceilings here are those of healthy support, so stay well below.";
        if (inputs.Alerts.Contains(AlertKind.Hygiene))
            yield return "Hygiene: a pause may be wiser than a step.";
        if (inputs.Alerts.Contains(AlertKind.Nickel))
            yield return "Reacts to nickel: steel holds some too, bound in its lattice; beta-titanium holds none.";
        yield return "Loads at the moment of engagement, on today's positions; friction is left out.";
    }

    private static IReadOnlyList<CatalogueWire> Known(Listing<string> ids) =>
        [.. ids.Distinct().Select(id => WireCatalogue.Default.TryFind(id, out CatalogueWire? wire) ? wire : null)
            .OfType<CatalogueWire>()];

    private sealed class Counting(IProgress<AdviceProgress>? outer, int of) : IProgress<int>
    {
        public void Report(int value) => outer?.Report(new AdviceProgress(value, of));
    }
}
