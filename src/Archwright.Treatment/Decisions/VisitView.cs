using System.Globalization;
using Archwright.Dentition.Catalogue;
using Archwright.Dentition.Comparison;
using Archwright.Treatment.Policies;

namespace Archwright.Treatment.Decisions;

/// <summary>What every rule may look at besides the wire it judges.</summary>
internal sealed class VisitView
{
    public VisitView(VisitQuestion question, VisitPolicy policy, SentenceStyle style, WireFigures? present)
    {
        Question = question;
        Policy = policy;
        Style = style;
        Present = present;
        Ceilings = Alerts(AlertAct.LowerCeilings).Any()
            ? policy.CeilingsTimes(policy.ReducedSupport) : policy.Ceilings;
        FarthestOff = question.Arch.Farthest;
    }

    public VisitQuestion Question { get; }

    public VisitPolicy Policy { get; }

    public SentenceStyle Style { get; }

    public WireFigures? Present { get; }

    /// <summary>Ceilings of this patient.</summary>
    public ForceCeilings Ceilings { get; }

    /// <summary>How far the crown is off that is farthest off [mm].</summary>
    public double FarthestOff { get; }

    public bool IsAligned => FarthestOff < Policy.AlignedWithin;

    /// <summary>Whether brief loads may be above their ceilings: not on roots at risk or with less bone.</summary>
    public bool LetsBriefLoadsPass =>
        !Question.Has(PatientAlert.Resorption) && !Alerts(AlertAct.LowerCeilings).Any();

    public bool IsSore => Question.Discomfort >= Policy.HighDiscomfort;

    /// <summary>Alerts of this patient that do something.</summary>
    public IEnumerable<PolicyAlert> Alerts(AlertAct act) =>
        Policy.Alerts.Where(alert => alert.Act == act && Question.Has(alert.Alert));

    /// <summary>"the upper right canine (13)".</summary>
    public string Tooth(int slot) =>
        $"the {Question.Tooth(slot).Name} ({Question.Tooth(slot).Show(Style.Notation)})";

    public string Load(LoadKind kind, double figure) =>
        kind.IsForce() ? Style.Force(figure) : Style.Moment(figure);

    public bool IsHeavierThanPresent(CatalogueWire wire) =>
        Present is { } present && WireSize.Compare(present.Wire, wire) > 0;

    /// <summary>A figure; what rounds to nothing has no sign.</summary>
    public static string Figure(double value, string format = "0.0")
    {
        string text = value.ToString(format, CultureInfo.InvariantCulture);
        return text.StartsWith('-') && !text.AsSpan().ContainsAnyInRange('1', '9') ? text[1..] : text;
    }

    public static string Percent(double share) => Figure(100 * share, "0") + " %";

    public static string Strain(double strain) => Figure(100 * strain, "0.00") + " %";
}
