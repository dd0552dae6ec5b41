using System.Collections.Concurrent;
using System.Collections.Immutable;
using Archwright.Dentition.Catalogue;
using Archwright.Mechanics.Alloys;
using Archwright.Mechanics.Sections;
using Archwright.Mechanics.Slots;
using Archwright.Treatment.Decisions;
using Archwright.Treatment.Forecasts;

namespace Archwright.Treatment.Ladders;

/// <summary>An arch at one visit with everything that was found out about it: each wire is engaged here once and
/// followed from here once, whoever asks. May be shared by threads.</summary>
internal sealed class LadderArch : ILadderArch
{
    private readonly LadderRun _run;
    private readonly WireEvaluator _evaluator;
    private readonly ConcurrentDictionary<string, Lazy<WireFigures>> _fits = new(StringComparer.Ordinal);
    private readonly ConcurrentDictionary<(double, double, Section, double?, string), Lazy<LadderCourse>> _courses
        = new();

    public LadderArch(LadderRun run, ArchToday arch, bool isToday)
    {
        _run = run;
        _evaluator = new WireEvaluator(arch);
        Arch = arch;
        IsToday = isToday;
        Distances = arch.Distances;
    }

    public ArchToday Arch { get; }

    public bool IsToday { get; }

    public ImmutableArray<double> Distances { get; }

    public LadderFit Fit(CatalogueWire wire, LadderFit? present, LadderRules rules) =>
        Judge(Figures(wire), present, rules);

    public LadderFit Judge(WireFigures figures, LadderFit? present, LadderRules rules) =>
        rules.Judge(figures, rules.View(Arch, present, IsToday));

    /// <summary>Figures of a wire that is fitted here.</summary>
    public WireFigures Figures(CatalogueWire wire) => _fits.GetOrAdd(
        wire.Id, _ => new Lazy<WireFigures>(() => _evaluator.Fitted(wire, _run.Cancellation))).Value;

    // Wires that differ beyond their first modulus alone are followed alike, since ladders follow that.
    public ILadderCourse Wear(LadderFit fit)
    {
        Alloy alloy = fit.Wire.Wire.Alloy;
        string ties = fit.HasLooseTies || fit.Figures.IsPresent
            ? $"{fit.Figures.IsPresent} {fit.Figures.Pull:R} {string.Join(' ', fit.Figures.TiedAtDistance)}" : "";
        return _courses.GetOrAdd(
            (alloy.Young, alloy.Shear, fit.Wire.Section, Arch.FrictionOf(fit.Wire), ties),
            _ => new Lazy<LadderCourse>(() => new LadderCourse(_run, this, fit))).Value;
    }

    /// <summary>The arch when its teeth have come to other places.</summary>
    public LadderArch Moved(ForecastDay day) => new(
        _run,
        Arch with
        {
            // Lips do not get used to teeth that stand farther out: balance is where they stood today.
            SoftTissue = Arch.SoftTissue.BalancedOn(Arch.Arrangement),
            Arrangement = Arch.Arrangement with
            {
                Slots = [.. Arch.Arrangement.Slots.Select((slot, i) => At(slot, day.Teeth[i].Slot))],
            },
        },
        isToday: false);

    private static Slot At(Slot slot, SlotFrame place) => slot with { Actual = place };
}
