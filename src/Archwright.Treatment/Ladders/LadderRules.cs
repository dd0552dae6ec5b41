using System.Collections.Immutable;
using Archwright.Dentition.Catalogue;
using Archwright.Dentition.Comparison;
using Archwright.Treatment.Comfort;
using Archwright.Treatment.Decisions;
using Archwright.Treatment.Decisions.Rules;
using Archwright.Treatment.Policies;

namespace Archwright.Treatment.Ladders;

/// <summary>The rules of a visit, asked at every visit of a ladder.</summary>
/// <remarks>Pain and hygiene are known of today alone: they bar a step today, and are taken to be settled later; the
/// cautions say so. Every other fact of the patient holds throughout.</remarks>
internal sealed class LadderRules
{
    private readonly VisitQuestion _later;
    private readonly SentenceStyle _style;

    /// <param name="today">What is asked today.</param>
    /// <param name="policy">By what it is judged.</param>
    /// <param name="style">How forces and teeth read in sentences.</param>
    /// <param name="ceilings">Factor on the ceilings; 1 as they are.</param>
    public LadderRules(VisitQuestion today, VisitPolicy policy, SentenceStyle style, double ceilings = 1)
    {
        Today = today;
        _later = today with
        {
            Discomfort = null,
            Alerts = today.Alerts?.Where(alert => policy.Alert(alert).Act != AlertAct.NoStepUp).ToImmutableHashSet(),
        };
        _style = style;
        Ceilings = ceilings;
        Policy = ceilings == 1 ? policy : policy.WithCeilings(policy.CeilingsTimes(ceilings));
    }

    /// <summary>What is asked today.</summary>
    public VisitQuestion Today { get; }

    public VisitPolicy Policy { get; }

    public double Ceilings { get; }

    public VisitView View(ArchToday arch, LadderFit? present, bool isToday)
    {
        VisitQuestion question = (isToday ? Today : _later) with { Arch = arch };
        if (present is not null && !(isToday && present.Figures.IsPresent))
            question = question with { Present = new PresentWire(present.Wire, null) };
        return new VisitView(question, Policy, _style, present?.Figures);
    }

    /// <summary>What the rules say of figures.</summary>
    public LadderFit Judge(WireFigures figures, VisitView view)
    {
        ImmutableArray<Finding> against =
        [
            .. VisitRules.All.Select(rule => rule.Judge(figures, view)).OfType<Finding>()
                .Where(finding => finding.Kind == FindingKind.Against),
        ];
        return new LadderFit
        {
            Figures = figures, Against = against, IsRuledOut = VisitRules.IsRuledOut(figures, view),
            KeepsThickerOut = VisitRules.KeepsThickerOut(figures, view),
            ComfortIndex = figures is { Engaged: true, IsPresent: false } ? ComfortIndex.Of(figures, Policy) : 0,
        };
    }

    /// <summary>Whether the step from one wire to the next is upward, not past the working wire, and not too far: asked
    /// before any mechanics.</summary>
    public bool IsStep(CatalogueWire from, CatalogueWire to, CatalogueWire working) =>
        WireSize.Compare(from, to) > 0 && WireSize.Compare(working, to) <= 0
        && WireSize.Stiffness(to) <= Policy.LargestStep * WireSize.Stiffness(from);
}
